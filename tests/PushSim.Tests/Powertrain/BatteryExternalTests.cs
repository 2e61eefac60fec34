using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Tests.Simulation;
using Xunit;

namespace PushSim.Tests.Powertrain;

/// <summary>Cell curves and sag against published values.</summary>
public class BatteryExternalTests
{
    internal static double FromTable(IReadOnlyList<(double Charge, double Voltage)> table, double charge)
    {
        var battery = new BatteryEquations<R1>(new BatterySettings { Cells = 1, CellVoltage = table, Resistance = 0.0, Capacity = 1.0, InitialCharge = charge });
        return battery.OpenCircuitVoltage(0.0).Value;
    }

    // Chen and Rincon-Mora, IEEE Trans. Energy Conversion 21(2), 2006, eq. 2, read second-hand; digits computed here
    [Theory]
    [InlineData(1.0, 4.1029000)]
    [InlineData(0.8, 3.9459792)]
    [InlineData(0.5, 3.8033625)]
    [InlineData(0.2, 3.7250286)]
    [InlineData(0.1, 3.6745686)]
    [InlineData(0.05, 3.5163646)]
    public void Polymer_cell_follows_the_published_formula(double charge, double expected)
    {
        Assert.Equal(expected, CellCurves.PolymerCellVoltage(charge), 5.1e-8);
        Assert.Equal(expected, FromTable(CellCurves.PolymerCell, charge), 0.003);
    }

    // our own bound on the table, not an outside value
    [Fact]
    public void Table_of_the_polymer_cell_stays_within_3_mV_of_its_formula()
    {
        Assert.InRange(CellCurves.PolymerCell.Count, 2, 24);
        double worst = Enumerable.Range(0, 10001).Max(i => Math.Abs(FromTable(CellCurves.PolymerCell, i / 1e4) - CellCurves.PolymerCellVoltage(i / 1e4)));
        Assert.True(worst < 0.003, $"{worst} V");
    }

    // Hobby chart in steps of 5 % from full to empty, read second-hand; no standard, no measurement conditions
    [Fact]
    public void Hobby_chart_is_the_one_handed_around()
    {
        double[] fromFull =
        [
            4.20, 4.15, 4.11, 4.08, 4.02, 3.98, 3.95, 3.91, 3.87, 3.85, 3.84, 3.82, 3.80, 3.79, 3.77, 3.75, 3.73, 3.71, 3.69, 3.61, 3.27,
        ];
        for (int i = 0; i < fromFull.Length; i++)
        {
            Assert.Equal(fromFull[i], FromTable(CellCurves.HobbyChart, 1.0 - (0.05 * i)), 1e-12);
        }
    }

    // a stalled motor is a resistor: bus voltage and current at the first moment
    internal static (double Voltage, double Current) Stall(double load)
    {
        var motor = new MotorSettings { Name = "m", TorqueConstant = 1e-3, Resistance = load };
        var drive = new DriveSettings { Name = "shaft", Wheels = [], Motors = [(motor, 1.0)] };
        RunResult run = ExternalRobots.Run(ExternalRobots.Scenario(ExternalRobots.Bench(drive, 1.0, 12.6, 0.18), 0.01, throttle: 1.0));
        return (run.At(t => t.Battery!.Voltage, 0.0), run.At(t => t.Battery!.Current, 0.0));
    }

    // Three cells of 4.2 V and 60 mohm; computed here
    [Fact]
    public void Pack_sags_by_current_times_resistance()
    {
        (double v1, double i1) = Stall(1.08);
        Assert.Equal(10.8, v1, 1e-9);
        Assert.Equal(10.0, i1, 1e-9);
        (double v2, double i2) = Stall(2.34);
        Assert.Equal(0.18, (v2 - v1) / (i1 - i2), 1e-9);
    }

    // Greatest power at half the open-circuit voltage, 220.5 W; computed here
    [Fact]
    public void Greatest_power_is_at_half_the_voltage()
    {
        (double v, double i) = Stall(0.18);
        Assert.Equal(6.3, v, 1e-9);
        Assert.Equal(220.5, v * i, 1e-6);
        (double above, double lower) = Stall(0.20);
        Assert.True(above * lower < v * i);
        Assert.Equal(12.6 * 12.6 * 0.20 / (0.38 * 0.38), above * lower, 1e-6);
    }
}
