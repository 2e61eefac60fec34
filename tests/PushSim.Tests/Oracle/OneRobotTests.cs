using System.Globalization;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Oracle;

/// <summary>
/// The engine against a second, plain implementation of the same equations (computed here, fixed steps). Engine: relative
/// tolerance 1e-7, no cap on the tread ring. Oracle: steps of 10 microseconds, and 20 to show that it has converged.
/// Bounds: forces 1 % of each wheel's peak at every sample, places 1 % of the way, headings 1 % of the turn, times 1 %.
/// </summary>
public class OneRobotTests(ITestOutputHelper output)
{
    private const double Bound = 0.01;

    /// <summary>The oracle's own change from 20 to 10 microseconds: a fifth of the bound.</summary>
    private const double OwnBound = 0.002;

    [Theory]
    [InlineData(nameof(OracleScenarios.Launch))]
    [InlineData(nameof(OracleScenarios.UndampedReversal))]
    [InlineData(nameof(OracleScenarios.Pull))]
    [InlineData(nameof(OracleScenarios.Drag))]
    [InlineData(nameof(OracleScenarios.Spot))]
    [InlineData(nameof(OracleScenarios.Arc))]
    [InlineData(nameof(OracleScenarios.SlopeBrake))]
    [InlineData(nameof(OracleScenarios.SlopeCoast))]
    [InlineData(nameof(OracleScenarios.Brake))]
    [InlineData(nameof(OracleScenarios.CoastDown))]
    [InlineData(nameof(OracleScenarios.SharedWiring))]
    [InlineData(nameof(OracleScenarios.ParallelCoast))]
    [InlineData(nameof(OracleScenarios.Options))]
    [InlineData(nameof(OracleScenarios.TyreOptions))]
    [InlineData(nameof(OracleScenarios.FreeWheels))]
    public void Engine_agrees(string name)
    {
        ScenarioSettings scenario = Named(name);
        RunResult engine = Simulator.Run(scenario);
        Assert.Equal(RunStatus.Finished, engine.Status);
        OracleRecord coarse = OracleRun.One(scenario, 20e-6);
        OracleRecord fine = OracleRun.One(scenario, 10e-6);
        OracleComparison own = OracleComparison.Of(coarse, fine, scenario.Robot);
        Print("oracle 20 against 10 us", own);
        Assert.InRange(own.Forces, 0.0, OwnBound);
        Assert.InRange(own.Places, 0.0, OwnBound);
        Hold(OracleComparison.Of(engine, fine));
    }

    /// <summary>
    /// With the usual damping of the gear friction the document as written leaves 1.8 % in the first milliseconds of a moving
    /// start: the engine limits tau_s as the document limits sigma1 of the tyre. With the same limit they agree.
    /// </summary>
    [Fact]
    public void Reversal_agrees_with_limited_gear_damping()
    {
        RunResult engine = Simulator.Run(OracleScenarios.Reversal);
        Print("as written", OracleComparison.Of(engine, OracleRun.One(OracleScenarios.Reversal, 10e-6)));
        Hold(OracleComparison.Of(engine, OracleRun.One(OracleScenarios.Reversal, 10e-6, limitedGearDamping: true)));
    }

    [Fact]
    public void Slope_hold_agrees_and_stays()
    {
        RunResult engine = Simulator.Run(OracleScenarios.SlopeHold);
        OracleRecord oracle = OracleRun.One(OracleScenarios.SlopeHold, 10e-6);
        OracleComparison c = OracleComparison.Of(engine, oracle);
        Print("engine against oracle", c);
        Assert.InRange(c.Forces, 0.0, Bound);
        Assert.InRange(engine["x_m"].Values.Max(Math.Abs), 0.0, 1e-6);
        Assert.InRange(oracle["x"].Max(Math.Abs), 0.0, 1e-6);
        Assert.InRange(oracle["y"].Max(Math.Abs), 0.0, 1e-6);
    }

    [Fact]
    public void Winding_temperature_agrees()
    {
        RunResult engine = Simulator.Run(OracleScenarios.Pull);
        OracleRecord oracle = OracleRun.One(OracleScenarios.Pull, 20e-6);
        double peak = Enumerable.Range(0, 4).Max(d => oracle[$"winding {d} 0"].Max());
        output.WriteLine(FormattableString.Invariant($"winding {engine.Answers.PeakWindingTemperature} {peak} degC"));
        double air = OracleScenarios.Pull.Floor.AirTemperature;
        Assert.InRange((engine.Answers.PeakWindingTemperature!.Value - air) / (peak - air), 1.0 - Bound, 1.0 + Bound);
    }

    [Fact]
    public void Wear_agrees()
    {
        RunResult engine = Simulator.Run(OracleScenarios.TyreOptions);
        OracleRecord oracle = OracleRun.One(OracleScenarios.TyreOptions, 20e-6);
        double worn = oracle["worn"][^1];
        output.WriteLine(FormattableString.Invariant($"worn {engine.Answers.Wear} {worn} m^3"));
        Assert.InRange(engine.Answers.Wear!.Value / worn, 1.0 - Bound, 1.0 + Bound);
    }

    private static ScenarioSettings Named(string name) => (ScenarioSettings)typeof(OracleScenarios).GetProperty(name)!.GetValue(null)!;

    private void Hold(OracleComparison c)
    {
        Print("engine against oracle", c);
        Assert.InRange(c.Forces, 0.0, Bound);
        Assert.InRange(c.Places, 0.0, Bound);
        Assert.InRange(c.Headings, 0.0, Bound);
        Assert.InRange(c.Times, 0.0, Bound);
        Assert.InRange(c.Currents, 0.0, Bound);
    }

    private void Print(string what, OracleComparison c) => output.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{what}: forces {c.Forces:p3} ({c.WorstForce}), places {c.Places:p3}, headings {c.Headings:p3}, times {c.Times:p3}, currents {c.Currents:p3}"));
}
