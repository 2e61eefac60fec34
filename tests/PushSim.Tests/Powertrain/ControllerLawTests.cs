using PushSim.Numerics;
using PushSim.Powertrain;
using Xunit;

namespace PushSim.Tests.Powertrain;

/// <summary>One controller and its motors by hand: 0.1 V s/rad, 2 ohm and 0.5 ohm of switches. Every number is computed here.</summary>
public class ControllerLawTests
{
    private static readonly MotorParameters<R1> s_motor = new() { Constant = 0.1, Resistance = 2.0 };

    private static readonly ControllerParameters<R1> s_usual = new() { CurrentLimit = 1000.0, OnResistance = 0.5 };

    private static readonly MotorShape s_motorShape = new() { HeatIndex = -1 };

    private static readonly ControllerShape s_shape = new() { Wiring = Wiring.Single, Regeneration = true, HeatIndex = -1, MotorCount = 1 };

    private static ControllerWork<R1> Settle(ControllerParameters<R1> p, double duty, double speed, double bus, double[]? state = null, MotorParameters<R1>? motor = null, ControllerShape? shape = null, MotorShape? motorShape = null)
    {
        ControllerWork<R1>[] work = [new ControllerWork<R1> { Duty = duty, IsZero = duty == 0.0 ? 1.0 : 0.0 }];
        var motorWork = new MotorWork<R1>[1];
        R1[] y = [.. (state ?? []).Select(v => (R1)v)];
        PowertrainEquations.Gather<R1>([motor ?? s_motor], [motorShape ?? s_motorShape], [p], [shape ?? s_shape], [speed], y, motorWork, work);
        PowertrainEquations.Settle<R1>([motor ?? s_motor], [p], [shape ?? s_shape], bus, motorWork, work);
        return work[0];
    }

    // (0.5 12 V - 0.1 20 V)/2.5 ohm = 1.6 A at 6 V
    [Fact]
    public void Part_throttle()
    {
        ControllerWork<R1> c = Settle(s_usual, 0.5, 20.0, 12.0);
        Assert.Equal(1.6, c.Current.Value, 1e-12);
        Assert.Equal(6.0, c.Voltage.Value, 1e-12);
        Assert.Equal(9.6, c.BusPower.Value, 1e-12);
        Assert.Equal(0.5 * 1.6 * 1.6, c.Loss.Value, 1e-12);
    }

    // from 80 degrees on the limit of 4 A falls, to nothing at 120
    [Theory]
    [InlineData(60.0, 4.0)]
    [InlineData(80.0, 4.0)]
    [InlineData(90.0, 3.0)]
    [InlineData(110.0, 1.0)]
    [InlineData(130.0, 0.0)]
    public void A_hot_controller_lowers_its_limit(double temperature, double limit)
    {
        ControllerParameters<R1> p = s_usual with { CurrentLimit = 4.0, FoldBackTemperature = 80.0, InverseFoldBackSpan = 1.0 / 40.0 };
        ControllerWork<R1> c = Settle(p, 1.0, 0.0, 12.0, [temperature], shape: s_shape with { HeatIndex = 0 });
        Assert.Equal(limit, c.Limit.Value, 1e-12);
        Assert.Equal(limit, c.Current.Value, 1e-12);
        Assert.Equal(1.0, c.IsLimiting.Value);
    }

    // 0.25 12 V against 10 V of back-EMF: -2.8 A at 3 V comes back, or is burnt
    [Theory]
    [InlineData(true, -8.4)]
    [InlineData(false, 0.0)]
    public void What_comes_back_is_taken_or_burnt(bool regenerates, double power)
    {
        ControllerWork<R1> c = Settle(s_usual, 0.25, 100.0, 12.0, shape: s_shape with { Regeneration = regenerates });
        Assert.Equal(-2.8, c.Current.Value, 1e-12);
        Assert.Equal(power, c.BusPower.Value, 1e-12);
        Assert.Equal(power + (2.8 * (3.0 + (2.8 * 0.5))), c.Loss.Value, 1e-12);
    }

    // 0.4 % a kelvin over 50 kelvin: 2.4 ohm
    [Fact]
    public void A_hot_winding_has_more_resistance() =>
        Assert.Equal(12.0 / 2.9, Settle(s_usual, 1.0, 0.0, 12.0, [70.0], s_motor with { ResistanceRise = 0.004, ReferenceTemperature = 20.0 }, motorShape: s_motorShape with { HeatIndex = 0 }).Current.Value, 1e-12);

    // Two unequal motors on one drive at 20 rad/s: 2 V behind 2 ohm and 6 V behind 4 ohm. In parallel 10/3 V behind 4/3 ohm, in series 8 V behind 6 ohm
    [Theory]
    [InlineData(Wiring.Parallel, 10.0 / 3.0, 4.0 / 3.0)]
    [InlineData(Wiring.Series, 8.0, 6.0)]
    public void Unequal_motors_are_one_source(Wiring wiring, double source, double resistance)
    {
        MotorParameters<R1>[] motors = [s_motor, s_motor with { Constant = 0.3, Resistance = 4.0 }];
        ControllerShape[] shape = [s_shape with { Wiring = wiring, MotorCount = 2 }];
        ControllerWork<R1>[] work = [new ControllerWork<R1> { Duty = 1.0 }];
        var each = new MotorWork<R1>[2];
        PowertrainEquations.Gather<R1>(motors, [s_motorShape, s_motorShape], [s_usual], shape, [20.0], [], each, work);
        PowertrainEquations.Settle<R1>(motors, [s_usual], shape, 12.0, each, work);
        Assert.Equal(source, work[0].Source.Value, 1e-12);
        Assert.Equal(resistance, work[0].Resistance.Value, 1e-12);
        double current = (12.0 - source) / (resistance + 0.5);
        Assert.Equal(current, work[0].Current.Value, 1e-12);
        double terminal = 12.0 - (0.5 * current);
        Assert.Equal(wiring == Wiring.Parallel ? (terminal - 2.0) / 2.0 : current, each[0].Current.Value, 1e-12);
        Assert.Equal(wiring == Wiring.Parallel ? (terminal - 6.0) / 4.0 : current, each[1].Current.Value, 1e-12);
    }

    // 40 % of its torque at standstill, all of it from 50 rad/s on, either way round
    [Theory]
    [InlineData(0.0, 0.4)]
    [InlineData(25.0, 0.7)]
    [InlineData(-25.0, 0.7)]
    [InlineData(50.0, 1.0)]
    [InlineData(80.0, 1.0)]
    public void A_sensorless_motor_starts_with_part_of_its_torque(double speed, double share)
    {
        MotorParameters<R1> motor = s_motor with { StandstillShare = 0.4, InverseFullTorqueSpeed = 1.0 / 50.0 };
        Assert.Equal(share * (12.0 - (0.1 * speed)) / 2.5, Settle(s_usual, 1.0, speed, 12.0, motor: motor, motorShape: s_motorShape with { IsSensorless = true }).Current.Value, 1e-12);
    }

    // mirrored: the same current backward
    [Theory]
    [InlineData(0.7, 15.0)]
    [InlineData(0.3, 90.0)]
    public void Backward_is_forward_mirrored(double duty, double speed)
    {
        ControllerParameters<R1> p = s_usual with { CurrentLimit = 2.0 };
        Assert.Equal(Settle(p, duty, speed, 12.0).Current.Value, -Settle(p, -duty, -speed, 12.0).Current.Value);
        Assert.Equal(Settle(p, duty, speed, 12.0).BusPower.Value, Settle(p, -duty, -speed, 12.0).BusPower.Value);
    }
}
