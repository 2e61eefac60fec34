using System.Globalization;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Oracle;

/// <summary>
/// The engine's shoves and wall pushes against the plain implementation. Engine: relative tolerance 1e-7, no cap on the tread
/// ring. Oracle: 10 microseconds. Bounds as for one robot: forces, places, headings and times 1 %. The opponent's own history
/// is compared by swapping the two, since a run's history is the first robot's.
/// </summary>
public class TwoRobotTests(ITestOutputHelper output)
{
    private const double Bound = 0.01;

    /// <summary>Set to true once the engine runs an opponent and walls.</summary>
    public static bool EngineHandlesContact => true;

    public static TheoryData<string> Names =>
    [
        nameof(TwoRobotScenarios.EqualShove), nameof(TwoRobotScenarios.UnequalShove), nameof(TwoRobotScenarios.Ramp),
        nameof(TwoRobotScenarios.RampAgainstRamp), nameof(TwoRobotScenarios.OffCentre), nameof(TwoRobotScenarios.Askew),
        nameof(TwoRobotScenarios.LiftedWheel), nameof(TwoRobotScenarios.ParallelWiring), nameof(TwoRobotScenarios.SeriesWiring),
        nameof(TwoRobotScenarios.PushedBrake), nameof(TwoRobotScenarios.WallPush), nameof(TwoRobotScenarios.WallAskew),
    ];

    internal static ScenarioSettings Named(string name) => (ScenarioSettings)typeof(TwoRobotScenarios).GetProperty(name)!.GetValue(null)!;

    [Theory(Skip = "the engine runs one robot without contact", SkipUnless = nameof(EngineHandlesContact))]
    [MemberData(nameof(Names))]
    public void Engine_agrees(string name)
    {
        ScenarioSettings scenario = Named(name);
        Hold(scenario);
        if (scenario.Opponent is not null)
        {
            Hold(TwoRobotScenarios.Swapped(scenario));
        }
    }

    private void Hold(ScenarioSettings scenario)
    {
        RunResult engine = Simulator.Run(scenario);
        OracleComparison c = OracleComparison.Of(engine, OracleRun.All(scenario, 10e-6)[0]);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"forces {c.Forces:p3} ({c.WorstForce}), places {c.Places:p3}, headings {c.Headings:p3}, times {c.Times:p3}"));
        Assert.InRange(c.Forces, 0.0, Bound);
        Assert.InRange(c.Places, 0.0, Bound);
        Assert.InRange(c.Headings, 0.0, Bound);
        Assert.InRange(c.Times, 0.0, Bound);
    }
}
