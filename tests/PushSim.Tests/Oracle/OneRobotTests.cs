using System.Globalization;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Oracle;

/// <summary>
/// The engine against a second, plain implementation of the same equations (computed here, fixed steps). Engine: relative
/// tolerance 1e-7, no cap on the tread ring. Oracle: steps of 1/128 of a millisecond (1/64 where it has converged at that), and twice as long ones to show that it has.
/// Bounds: forces 1 % of each wheel's peak at every sample, places 1 % of the way, headings 1 % of the turn, times 1 %.
/// </summary>
public class OneRobotTests(ITestOutputHelper output)
{
    private const double Bound = 0.01;

    /// <summary>The oracle's own change from one to the other: a fifth of the bound.</summary>
    private const double OwnBound = 0.002;

    private static readonly Lazy<RunResult> s_arc = new(() => Simulator.Run(OracleScenarios.Arc));

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
        RunResult engine = name == nameof(OracleScenarios.Arc) ? s_arc.Value : Simulator.Run(scenario);
        Assert.Equal(RunStatus.Finished, engine.Status);
        (OracleRecord[] coarses, OracleRecord[] fines) = OracleRuns.Both(scenario, StepOf(name));
        (OracleRecord coarse, OracleRecord fine) = (coarses[0], fines[0]);
        OracleComparison own = OracleComparison.Of(coarse, fine, scenario.Robot);
        Print("oracle, coarse against fine", own);
        Assert.InRange(own.Forces, 0.0, OwnBound);
        Assert.InRange(own.Places, 0.0, OwnBound);
        Hold(OracleComparison.Of(engine, fine));
        OracleComparison usual = OracleComparison.Of(Simulator.Run(scenario with { Numerics = new NumericsSettings() }), fine);
        Print("engine as it comes (tolerance 1e-4) against oracle", usual);
        Assert.InRange(usual.Places, 0.0, Bound);
    }

    /// <summary>
    /// With the usual damping of the gear friction the model as written leaves 1.8 % in the first milliseconds of a moving
    /// start: the engine limits tau_s as it limits sigma1 of the tyre. With the same limit they agree.
    /// </summary>
    [Fact]
    public void Reversal_agrees_with_limited_gear_damping()
    {
        RunResult engine = Simulator.Run(OracleScenarios.Reversal);
        Print("as written", OracleComparison.Of(engine, OracleRuns.At(OracleScenarios.Reversal, OracleRuns.Wide)[0]));
        Hold(OracleComparison.Of(engine, OracleRun.One(OracleScenarios.Reversal, OracleRuns.Narrow, limitedGearDamping: true)));
    }

    /// <summary>The comparison is sharp enough: an oracle with one number off by a few per cent fails it.</summary>
    [Theory]
    [InlineData("kinetic friction, 3 %")]
    [InlineData("gear efficiency, 3 %")]
    [InlineData("battery resistance, 20 %")]
    [InlineData("carcass stiffness, 10 %")]
    [InlineData("height of the centre of mass, 3 %")]
    public void Small_change_is_seen(string change)
    {
        ScenarioSettings scenario = OracleScenarios.Arc;
        OracleComparison c = OracleComparison.Of(s_arc.Value, OracleRun.One(scenario with { Robot = Changed(scenario.Robot, change) }, OracleRuns.Wide));
        Print(change, c);
        Assert.True(Math.Max(Math.Max(c.Forces, c.Places), c.Currents) > Bound, "must be out of bounds");
    }

    /// <summary>Forces differ for the millimetres over which the engine blends the edge; where the robot goes does not.</summary>
    [Fact]
    public void Patch_turns_the_robot_alike()
    {
        RunResult engine = Simulator.Run(OracleScenarios.Patch);
        OracleComparison c = OracleComparison.Of(engine, OracleRun.One(OracleScenarios.Patch, OracleRuns.Wide));
        Print("engine against oracle", c);
        Assert.True(Math.Abs(engine.Trace.Body.Heading[^1]) > 0.05, "the patch must turn the robot");
        Assert.InRange(c.Places, 0.0, Bound);
        Assert.InRange(c.Headings, 0.0, Bound);
        Assert.InRange(c.Times, 0.0, Bound);
    }

    [Fact]
    public void Slope_hold_agrees_and_stays()
    {
        RunResult engine = Simulator.Run(OracleScenarios.SlopeHold);
        OracleRecord oracle = OracleRun.One(OracleScenarios.SlopeHold, OracleRuns.Wide);
        OracleComparison c = OracleComparison.Of(engine, oracle);
        Print("engine against oracle", c);
        Assert.InRange(c.Forces, 0.0, Bound);
        Assert.InRange(engine.Trace.Body.X.Max(Math.Abs), 0.0, 1e-6);
        Assert.InRange(oracle["x"].Max(Math.Abs), 0.0, 1e-6);
        Assert.InRange(oracle["y"].Max(Math.Abs), 0.0, 1e-6);
    }

    [Fact]
    public void Winding_temperature_agrees()
    {
        RunResult engine = Simulator.Run(OracleScenarios.Pull);
        OracleRecord oracle = OracleRuns.At(OracleScenarios.Pull, OracleRuns.Wide)[0];
        double peak = Enumerable.Range(0, 4).Max(d => oracle[$"winding {d} 0"].Max());
        output.WriteLine(FormattableString.Invariant($"winding {engine.Answers.PeakWindingTemperature} {peak} degC"));
        double air = OracleScenarios.Pull.Floor.AirTemperature;
        Assert.InRange((engine.Answers.PeakWindingTemperature!.Value - air) / (peak - air), 1.0 - Bound, 1.0 + Bound);
    }

    [Fact]
    public void Wear_agrees()
    {
        RunResult engine = Simulator.Run(OracleScenarios.TyreOptions);
        OracleRecord oracle = OracleRuns.At(OracleScenarios.TyreOptions, OracleRuns.Wide)[0];
        double worn = oracle["worn"][^1];
        output.WriteLine(FormattableString.Invariant($"worn {engine.Answers.Wear} {worn} m^3"));
        Assert.InRange(engine.Answers.Wear!.Value / worn, 1.0 - Bound, 1.0 + Bound);
    }

    // what halving the step from 1/64 ms changed by at most 0.085 % of forces halves from 1/32 ms within the bound, too
    private static double StepOf(string name) => name is nameof(OracleScenarios.Brake) or nameof(OracleScenarios.SharedWiring)
        or nameof(OracleScenarios.TyreOptions) or nameof(OracleScenarios.UndampedReversal)
        ? OracleRuns.Narrow : OracleRuns.Wide;

    private static RobotSettings Changed(RobotSettings robot, string change) => change.Split(',')[0] switch
    {
        "kinetic friction" => WithTyre(robot, t => t with { KineticFriction = 1.03 * t.KineticFriction }),
        "carcass stiffness" => WithTyre(robot, t => t with { BodyStiffness = 1.1 * t.BodyStiffness }),
        "gear efficiency" => robot with { Drives = [.. robot.Drives.Select(d => d with { GearEfficiency = 1.03 * d.GearEfficiency })] },
        "battery resistance" => robot with { Battery = robot.Battery! with { Resistance = 1.2 * robot.Battery.Resistance } },
        _ => robot with { Chassis = robot.Chassis with { CentreOfMassHeight = 1.03 * robot.Chassis.CentreOfMassHeight } },
    };

    private static RobotSettings WithTyre(RobotSettings robot, Func<TyreSettings, TyreSettings> change) => robot with
    {
        Wheels = [.. robot.Wheels.Select(w => w with { Tyre = change(w.Tyre) })],
    };

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
