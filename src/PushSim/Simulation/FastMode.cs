namespace PushSim.Simulation;

/// <summary>The part whose stiffness or damping sets the fastest mode.</summary>
public enum FastPart
{
    /// <summary>Rim and body on a tyre, its body and bristles in series.</summary>
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
public readonly record struct FastMode(double Rate, FastPart Part, int Index)
{
    /// <summary>This one, or another if that is faster.</summary>
    internal FastMode Or(double rate, FastPart part, int index) => rate > Rate ? new FastMode(rate, part, index) : this;

    /// <summary>What asks for the shortest steps in a scene, and of which robot.</summary>
    internal static (FastMode Mode, RobotSettings Robot) Of(ScenarioSettings scenario, SceneSystem scene)
    {
        (FastMode Mode, RobotSettings Robot) fastest = (default, scene.Robots[0].Scenario.Robot);
        foreach (RobotSystem robot in scene.Robots)
        {
            FastMode own = StableStep.FastestOf(robot.Equations, robot.Static.Loads);
            if (scene.Contacts.Count > 0)
            {
                Chassis.ChassisSettings c = robot.Scenario.Robot.Chassis;
                own = own.Or(Math.Sqrt(scenario.Contact.Stiffness * Math.Max(c.Length, c.Width) / c.Mass), FastPart.Contact, 0);
            }

            fastest = own.Rate > fastest.Mode.Rate ? (own, robot.Scenario.Robot) : fastest;
        }

        return fastest;
    }
}
