using PushSim.Tyres;

namespace PushSim.Simulation;

/// <content>Its numbers and its shape.</content>
internal sealed partial class RobotEquations<T>
{
    /// <summary>Everything of it that is no number.</summary>
    public RobotShape Shape => new(
        Layout,
        new ShapeList<WheelShape>([.. Kinds.Select(k => k.Shape)]),
        new(DriveShapes),
        new(MotorShapes),
        new(ControllerShapes),
        Battery?.Shape,
        Tether is not null,
        Patches.Length,
        Underside.Shape);

    public void Show(NumberWalk<T> walk)
    {
        walk.Take(ref Body);
        Commands.Show(walk);
        Driver.Show(walk);
        Underside.Show(walk);
        walk.Take(Wheels);
        walk.Take(Drives);
        walk.Take(Motors);
        walk.Take(Controllers);
        walk.Take(Patches);
        foreach (WheelKind<T> kind in Kinds)
        {
            kind.Table?.Show(walk);
        }

        Battery?.Show(walk);
        Tether?.Show(walk);
    }
}
