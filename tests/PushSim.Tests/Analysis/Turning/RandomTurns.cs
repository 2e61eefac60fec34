using PushSim.Analysis.Turning;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Tests.Analysis.Turning;

/// <summary>Random spot turns of an invented four-wheel robot, from damped to lively tyres; the same seed gives the same turn.</summary>
internal static class RandomTurns
{
    public static ScenarioSettings Scenario(int seed)
    {
        var r = new Random(seed);
        double still = Between(0.6, 1.2);
        double kc = Log(800.0, 5000.0);
        double mt = Between(0.002, 0.006);
        var tyre = new TyreSettings
        {
            Name = "random", StaticFriction = still, KineticFriction = still * Between(0.5, 0.95), SlipSpeed = Log(0.1, 1.5),
            BreakawayDeflection = Between(0.2e-3, 0.6e-3), BodyStiffness = kc, BodyDamping = Log(0.01, 0.8) * Math.Sqrt(kc * mt), TreadMass = mt,
            VerticalStiffness = Log(3000.0, 20000.0), VerticalDamping = Log(1.0, 8.0), RollingRenewal = Between(60.0, 200.0),
        };
        RobotSettings robot = TestRobots.FourWheels(
            tyre, wheelbase: Between(0.08, 0.14), track: Between(0.12, 0.18), height: Between(0.015, 0.04), forward: Between(-0.015, 0.015), limit: 8.0);
        double side = r.Next(2) == 0 ? 1.0 : -1.0;
        return TestRobots.Spot(robot, side * Between(0.35, 1.0));

        double Between(double low, double high) => low + (r.NextDouble() * (high - low));
        double Log(double low, double high) => low * Math.Pow(high / low, r.NextDouble());
    }

    public static SteadyTurn? Turn(ScenarioSettings scenario) =>
        TurnModel.Create(scenario, out _) is TurnModel model ? SteadyTurn.Find(model) : null;
}
