using PushSim.Simulation;

namespace PushSim.Tests;

/// <summary>Matches of one structure whose numbers differ: what a builder is unsure of, drawn by the match's number.</summary>
internal static class RandomMatches
{
    private static readonly DriverSettings s_driver = new() { HeadingHold = 1.0, Steering = 3.0, SteeringRate = 4.0, DeadTime = 0.03, EaseTo = 0.6, EaseAfter = 0.06, EaseRate = 5.0 };

    /// <summary>Two robots with damped tyres, the second a little lighter, as the fast lanes are measured on.</summary>
    public static ScenarioSettings Damped(double end = 3.0)
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalDamping = 8.0 });
        return TestRobots.Shove(robot, robot.WithMass(1.3), end, gap: 0.05);
    }

    /// <summary>A shove of two random robots of their own structures.</summary>
    public static ScenarioSettings Of(int structure, double end)
    {
        ScenarioSettings a = RandomRobots.Scenario(structure);
        ScenarioSettings b = RandomRobots.Scenario(structure + 500);
        ScenarioSettings s = TestRobots.Shove(a.Robot, b.Robot, end, gap: 0.02);
        return s with
        {
            Floor = a.Floor with { Patches = structure % 3 == 0 ? [new(-0.3, 0.05, -0.2, 0.2, 0.7)] : [] },
            Manoeuvre = s.Manoeuvre with { Commands = structure % 2 == 0 ? [new(0.03, 1.0, 0.1), new(0.3, 0.0, 0.0), new(0.4, 0.8, 0.0, true)] : [new(0.03, 1.0, 0.1)], Driver = structure % 4 == 1 ? s_driver : new() },
            Opponent = s.Opponent! with { Manoeuvre = s.Opponent!.Manoeuvre with { Driver = structure % 4 == 3 ? s_driver with { EaseTo = 1.0 } : new() } },
            Walls = structure % 5 == 0 ? [new(0.3, -0.5, 0.3, 0.5)] : [],
        };
    }

    /// <summary>The match of a number.</summary>
    public static ScenarioSettings Draw(ScenarioSettings s, long number)
    {
        var r = new Random((int)number * 7919);
        ManoeuvreSettings own = s.Manoeuvre with { InitialHeading = Spread(r, 0.05), Driver = s.Manoeuvre.Driver with { ReactionDelay = 0.05 * r.NextDouble() } };
        return s with
        {
            Robot = Draw(s.Robot, r),
            Manoeuvre = own,
            Opponent = new OpponentSettings(Draw(s.Opponent!.Robot, r), s.Opponent.Manoeuvre with
            {
                InitialHeading = Spread(r, 0.05), Driver = s.Opponent.Manoeuvre.Driver with { ReactionDelay = 0.05 * r.NextDouble() },
            }),
            Shove = s.Shove with { Offset = Spread(r, 0.01), Gap = s.Shove.Gap + Spread(r, 0.005) },
            Floor = s.Floor with { FrictionScale = s.Floor.FrictionScale * (1.0 + Spread(r, 0.1)) },
        };
    }

    private static double Spread(Random r, double half) => half * ((2.0 * r.NextDouble()) - 1.0);

    private static RobotSettings Draw(RobotSettings robot, Random r)
    {
        double grip = 1.0 + Spread(r, 0.1);
        double resistance = 1.0 + Spread(r, 0.1);
        double charge = Math.Min(1.0, robot.Battery!.InitialCharge * (1.0 + Spread(r, 0.05)));
        double mass = 1.0 + Spread(r, 0.05);
        double forward = Spread(r, 0.003);
        return robot with
        {
            Chassis = robot.Chassis with { Mass = mass * robot.Chassis.Mass, CentreOfMassX = robot.Chassis.CentreOfMassX + forward },
            Wheels = [.. robot.Wheels.Select(w => w with { Tyre = w.Tyre with { StaticFriction = grip * w.Tyre.StaticFriction, KineticFriction = grip * w.Tyre.KineticFriction } })],
            Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (m.Motor with { Resistance = resistance * m.Motor.Resistance }, m.Ratio))] })],
            Battery = robot.Battery with { InitialCharge = charge },
        };
    }
}
