using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Measured;

/// <summary>The shelf's round cell against a measured one (data/SOURCES.md), from 2 to 90 % discharged; and what a pack's slow resistance and heat do in a run.</summary>
public class CellBenchTests
{
    // the first three are what it was fitted to, the last is judged
    [Theory]
    [InlineData("C10", 0.012)]
    [InlineData("1C", 0.020)]
    [InlineData("2C", 0.020)]
    [InlineData("3C", 0.025)]
    public void The_voltage_is_met(string rate, double bound)
    {
        (double rms, double _, double _) = CellBench.Discharge(rate);
        Assert.True(rms < bound, FormattableString.Invariant($"{rate}: rms {1e3 * rms:0.0} mV"));
    }

    [Theory]
    [InlineData("2C", 3.0)]
    [InlineData("3C", 3.0)]
    public void The_case_warms_as_much(string rate, double bound)
    {
        (double _, double model, double measured) = CellBench.Discharge(rate);
        Assert.Equal(measured, model, bound);
    }

    /// <summary>Under a held current the slow branch has come to 63 % after its time, and all that the pack loses stands in the ledger.</summary>
    [Fact]
    public void A_run_with_a_slow_warm_pack_keeps_its_ledger()
    {
        RobotSettings robot = TestRobots.FourWheels();
        BatterySettings pack = robot.Battery! with { SlowResistance = robot.Battery.Resistance, SlowTime = 0.3, ResistanceFall = 0.02, EmptyResistance = 1.0, HeatCapacity = 2.0, ThermalResistance = 20.0 };
        RunResult run = Simulator.Run(TestRobots.Scenario(robot with { Battery = pack }, ManoeuvreKind.Launch, 1.0, 0.0, 1.0, 0.1));
        RunResult plain = Simulator.Run(TestRobots.Scenario(robot, ManoeuvreKind.Launch, 1.0, 0.0, 1.0, 0.1));
        Assert.True(run.EnergyResidualRatio < 1e-5, $"{run.EnergyResidualRatio:E2}");
        Assert.True(run.Answers.LowestBatteryVoltage < plain.Answers.LowestBatteryVoltage);
        Assert.True(run.Answers.PeakBatteryTemperature > 20.01);
        Assert.Null(plain.Answers.PeakBatteryTemperature);
    }

    /// <summary>f (T, s) by hand: 2 % a kelvin over 10 kelvin, and e times as much at empty.</summary>
    [Fact]
    public void Resistances_follow_temperature_and_charge()
    {
        var cell = new BatteryEquations<R1>(new BatterySettings { Cells = 1, CellVoltage = [(0.0, 3.7)], Resistance = 0.05, Capacity = 100.0, ResistanceFall = 0.02, EmptyResistance = 3.0, EmptyShare = 0.1 });
        Assert.Equal(Math.Exp(-0.2) * (1.0 + (3.0 * Math.Exp(-5.0))), cell.ResistanceFactor(50.0, 35.0).Value, 1e-12);
        Assert.Equal(4.0, cell.ResistanceFactor(120.0, 25.0).Value, 1e-12);
    }
}
