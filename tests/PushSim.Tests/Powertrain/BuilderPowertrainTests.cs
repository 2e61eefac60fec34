using PushSim.Powertrain;
using PushSim.Scenarios.Estimates;
using Xunit;

namespace PushSim.Tests.Powertrain;

/// <summary>Battery resistance from two loads, gear efficiency from its stages, a motor from a held and a free shaft.</summary>
public class BuilderPowertrainTests
{
    // 12.0 V at 1 A, 11.4 V at 5 A: 0.15 ohm, 12.15 V at rest (by hand)
    [Fact]
    public void Two_loads_give_resistance_and_rest_voltage()
    {
        BatteryFromLoads b = BatteryFromLoads.Solve(1.0, 12.0, 5.0, 11.4);
        Assert.Equal(0.15, b.Resistance, 1e-12);
        Assert.Equal(12.15, b.RestVoltage, 1e-12);
        BatteryFromLoads swapped = BatteryFromLoads.Solve(5.0, 11.4, 1.0, 12.0);
        Assert.Equal(0.15, swapped.Resistance, 1e-12);
        Assert.Equal(12.15, swapped.RestVoltage, 1e-12);
    }

    [Fact]
    public void Contradicting_loads_give_no_positive_resistance()
    {
        Assert.True(BatteryFromLoads.Solve(1.0, 11.0, 5.0, 11.4).Resistance < 0.0);
        Assert.True(double.IsNaN(BatteryFromLoads.Solve(2.0, 11.0, 2.0, 11.4).Resistance));
    }

    // Spur: 10 % loss per engagement, Faulhaber, Machine Design, 20 June 2002; planetary: 0.90, 0.81, 0.729, a maker's page
    // (greensky-power.com); worm: common practice, no source
    [Theory]
    [InlineData(GearKind.Spur, 1, 0.9)]
    [InlineData(GearKind.Spur, 4, 0.6561)]
    [InlineData(GearKind.Planetary, 2, 0.81)]
    [InlineData(GearKind.Planetary, 3, 0.729)]
    [InlineData(GearKind.Worm, 1, 0.5)]
    public void Efficiency_by_stages(GearKind kind, int stages, double efficiency) => Assert.Equal(efficiency, GearStages.Efficiency(kind, stages), 1e-12);

    // the same article: a 16 mm spur box is about 40 % at 10 683:1, 0.9^8.7; nine stages come near
    [Fact]
    public void A_long_spur_box_is_about_forty_per_cent() => Assert.Equal(0.40, GearStages.Efficiency(GearKind.Spur, 9), 0.02);

    // 2 V at 1 A held: 2 ohm; Kv alone or a free run completes it (by hand: (12 - 0.2 2)/1000 = 11.6 mN m/A)
    [Fact]
    public void A_held_shaft_and_a_free_run_or_a_speed_constant_make_a_motor()
    {
        var held = new MotorData { Name = "m", LockedRotorVoltage = 2.0, LockedRotorCurrent = 1.0 };
        MotorSettings free = MotorFromData.Convert(held with { Voltage = 12.0, NoLoadSpeed = 1000.0, NoLoadCurrent = 0.2 }).Settings!;
        Assert.Equal(2.0, free.Resistance, 1e-12);
        Assert.Equal(11.6e-3, free.TorqueConstant, 1e-12);
        MotorSettings byKv = MotorFromData.Convert(held with { SpeedConstant = 100.0 }).Settings!;
        Assert.Equal(2.0, byKv.Resistance, 1e-12);
        Assert.Equal(0.01, byKv.TorqueConstant, 1e-12);
        Assert.Contains("torque constant", MotorFromData.Convert(held).Missing);
    }
}
