using System.Globalization;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Oracle;

/// <summary>
/// The engine's shoves and wall pushes against the plain implementation. Engine: relative tolerance 1e-7, no cap on the tread
/// ring. Oracle: the step of <see cref="StepOf"/>. Bounds as for one robot: forces, places, headings and times 1 %, of both robots.
/// </summary>
public class TwoRobotTests(ITestOutputHelper output)
{
    private const double Bound = 0.01;

    public static TheoryData<string> Names =>
    [
        nameof(TwoRobotScenarios.EqualShove), nameof(TwoRobotScenarios.UnequalShove), nameof(TwoRobotScenarios.Ramp),
        nameof(TwoRobotScenarios.RampAgainstRamp), nameof(TwoRobotScenarios.OffCentre), nameof(TwoRobotScenarios.Askew),
        nameof(TwoRobotScenarios.LiftedWheel), nameof(TwoRobotScenarios.ParallelWiring), nameof(TwoRobotScenarios.SeriesWiring),
        nameof(TwoRobotScenarios.PushedBrake), nameof(TwoRobotScenarios.WallPush), nameof(TwoRobotScenarios.WallAskew),
        nameof(TwoRobotScenarios.Steered), nameof(TwoRobotScenarios.TallFacesSlick), nameof(TwoRobotScenarios.TallFaces), nameof(TwoRobotScenarios.LowUnderHigh), nameof(TwoRobotScenarios.WheelOnWheel),
    ];

    /// <summary>The finer step at which the oracle has converged [s]: what turns, lifts or rides moves more with it.</summary>
    internal static double StepOf(string name) => name is nameof(TwoRobotScenarios.Ramp) or nameof(TwoRobotScenarios.LiftedWheel) or nameof(TwoRobotScenarios.LowUnderHigh)
        or nameof(TwoRobotScenarios.OffCentre) or nameof(TwoRobotScenarios.Askew) or nameof(TwoRobotScenarios.WallAskew) or nameof(TwoRobotScenarios.Steered)
        ? OracleRuns.Narrow : name is nameof(TwoRobotScenarios.WheelOnWheel) ? OracleRuns.Finest : OracleRuns.Wide;

    internal static ScenarioSettings Named(string name) => (ScenarioSettings)typeof(TwoRobotScenarios).GetProperty(name)!.GetValue(null)!;

    [Theory]
    [MemberData(nameof(Names))]
    public void Engine_agrees(string name)
    {
        ScenarioSettings scenario = Named(name);
        RunResult engine = Simulator.Run(scenario);
        OracleRecord[] oracle = OracleRuns.At(scenario, StepOf(name));
        Hold("first", OracleComparison.Of(engine, oracle[0]));
        if (scenario.Opponent is not null)
        {
            Hold("opponent", OracleComparison.OfOpponent(engine, oracle[1]));
        }
    }

    private void Hold(string who, OracleComparison c)
    {
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{who}: forces {c.Forces:p3} ({c.WorstForce}), places {c.Places:p3}, headings {c.Headings:p3}, times {c.Times:p3}, currents {c.Currents:p3}"));
        Assert.InRange(c.Forces, 0.0, Bound);
        Assert.InRange(c.Places, 0.0, Bound);
        Assert.InRange(c.Headings, 0.0, Bound);
        Assert.InRange(c.Times, 0.0, Bound);
    }
}
