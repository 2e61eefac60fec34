using PushSim.Contact;

namespace PushSim.Simulation;

/// <summary>What two scenes must have in common to run side by side in lanes: everything of the equations that is no number. Written
/// out as whole numbers, one after the other.</summary>
internal static class SceneStructure
{
    /// <summary>Writes the structure of a scene into a list, which is emptied first.</summary>
    public static void Describe(SceneSystem system, AdditiveTableau tableau, List<int> list)
    {
        SceneEquations<R1> scene = system.Equations;
        list.Clear();
        list.Add(tableau.Stages);
        list.Add(tableau.Order);
        list.Add(scene.Robots.Length);
        foreach (RobotEquations<R1> robot in scene.Robots)
        {
            Robot(robot, list);
        }

        foreach (RobotSystem robot in system.Robots)
        {
            foreach (Powertrain.DriveSettings drive in robot.Scenario.Robot.Drives)
            {
                list.Add(drive.Motors.Count);
                list.Add(drive.Wheels.Count);
            }
        }

        list.Add(scene.Contacts.Length);
        foreach (SceneContact<R1> contact in scene.Contacts)
        {
            list.Add(contact.First);
            list.Add(contact.Second);
            foreach (PartShape<R1> shape in contact.Pair.ShapesA.Concat(contact.Pair.ShapesB))
            {
                shape.Describe(list);
            }
        }
    }

    /// <summary>Whether two lists are alike.</summary>
    public static bool AreAlike(List<int> a, List<int> b) =>
        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(a).SequenceEqual(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(b));

    private static void Robot(RobotEquations<R1> eq, List<int> list)
    {
        list.Add(eq.Layout.Count);
        list.Add(eq.Layout.ExplicitCount);
        list.Add(eq.Layout.Charge);
        list.Add(eq.Layout.SlowVoltage);
        list.Add(eq.Layout.BatteryHeat);
        list.Add(eq.Layout.Anchor);
        list.Add(eq.Layout.HeadingHold);
        list.Add(eq.Layout.Steering);
        list.Add(eq.Layout.Easing);
        foreach (PartShape<R1> shape in eq.Underside.Shapes)
        {
            shape.Describe(list);
        }

        list.Add(eq.Wheels.Length);
        for (int i = 0; i < eq.Wheels.Length; i++)
        {
            ref Tyres.WheelParameters<R1> w = ref eq.Wheels[i];
            list.Add(w.Drive);
            list.Add(w.FoulingIndex);
            list.Add(w.WearIndex);
            list.Add(w.SpinIndex);
            list.Add(w.Shape);
        }

        list.Add(eq.Drives.Length);
        for (int i = 0; i < eq.Drives.Length; i++)
        {
            list.Add(eq.Drives[i].BristleIndex);
        }

        list.Add(eq.Motors.Length);
        for (int i = 0; i < eq.Motors.Length; i++)
        {
            list.Add(eq.Motors[i].Drive);
            list.Add(eq.Motors[i].HeatIndex);
            list.Add(Flags(eq.Motors[i].IsSensorless));
        }

        list.Add(eq.Controllers.Length);
        for (int i = 0; i < eq.Controllers.Length; i++)
        {
            ref Powertrain.ControllerParameters<R1> c = ref eq.Controllers[i];
            list.Add((int)c.Wiring);
            list.Add(Flags(c.Regeneration, c.HasBrushDrop));
            list.Add(Flags(c.HasPulses, c.LimitsEachPulse));
            list.Add((int)c.BetweenPulses);
            list.Add(c.HeatIndex);
            list.Add(c.FirstMotor);
            list.Add(c.MotorCount);
        }

        list.Add(eq.Battery?.Slope.Length ?? -1);
        list.Add(Flags(eq.Battery?.Varies ?? false));
        list.Add(eq.Patches.Length);
        foreach (bool isGiven in eq.IsGiven ?? [])
        {
            list.Add(Flags(true, isGiven));
        }

        list.Add(Flags(eq.Tether is not null));
    }

    private static int Flags(bool a, bool b = false) => (a ? 1 : 0) | (b ? 2 : 0);
}
