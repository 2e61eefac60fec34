namespace PushSim.Simulation;

/// <summary>The part whose stiffness or damping sets the fastest mode.</summary>
internal enum FastPart
{
    /// <summary>Tread ring on body and bristles of a tyre.</summary>
    Tyre,

    /// <summary>Friction and back-EMF of a drive.</summary>
    Drive,

    /// <summary>The robot on its tyres' vertical springs.</summary>
    Springs,

    /// <summary>The tether.</summary>
    Tether,

    /// <summary>Contact of bodies.</summary>
    Contact,
}

/// <summary>The fastest mode of a robot.</summary>
/// <param name="Rate">Its rate [1/s].</param>
/// <param name="Part">What it hangs on.</param>
/// <param name="Index">Wheel or drive [1].</param>
internal readonly record struct FastMode(double Rate, FastPart Part, int Index)
{
    /// <summary>This one, or another if that is faster.</summary>
    public FastMode Or(double rate, FastPart part, int index) => rate > Rate ? new FastMode(rate, part, index) : this;

    /// <summary>Names the part of a scene that asks for the shortest steps, and the keys to change.</summary>
    public static string Words(ScenarioSettings scenario, SceneSystem scene)
    {
        RobotSystem slowest = scene.Robots[0];
        FastMode fastest = default;
        foreach (RobotSystem robot in scene.Robots)
        {
            FastMode own = StableStep.FastestOf(robot.Equations, robot.Static.Loads);
            if (scene.Contacts.Count > 0)
            {
                Chassis.ChassisSettings c = robot.Scenario.Robot.Chassis;
                own = own.Or(Math.Sqrt(scenario.Contact.Stiffness * Math.Max(c.Length, c.Width) / c.Mass), FastPart.Contact, 0);
            }

            if (own.Rate > fastest.Rate)
            {
                (fastest, slowest) = (own, robot);
            }
        }

        return $"the fastest part is {fastest.Name(slowest.Scenario.Robot)}";
    }

    private string Name(RobotSettings robot) => Part switch
    {
        FastPart.Tyre => $"the tyre of wheel {robot.Wheels[Index].Name} of {robot.Name}: lower its body_stiffness or body_damping, or raise its tread_mass or breakaway_deflection",
        FastPart.Drive => $"drive {robot.Drives[Index].Name} of {robot.Name}: lower its friction or hold torque, or raise the rotor inertia of its motors",
        FastPart.Springs => $"{robot.Name} on its tyres: lower their vertical_stiffness",
        FastPart.Tether => "the tether: lower its stiffness",
        _ => $"the contact of {robot.Name}: lower the stiffness in [contact]",
    };
}
