using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Powertrain;

/// <summary>The closed form of a pulsed motor's current against the same circuit in many small steps, and against its limits. Every number is computed here.</summary>
public class PulseLawTests
{
    private const double Bus = 12.0;
    private const double Resistance = 2.0;

    // Steps of the plain reference over one pulse, and pulses until its current repeats [1].
    private const int Steps = 20_000;

    private static (ControllerParameters<R1> Numbers, ControllerShape Shape) Controller(BetweenPulses between, double period, double limit = 1e4, bool hasPulses = true, bool endsEach = false) => (
        new() { CurrentLimit = limit, PulseTimeOverInductance = period / Resistance },
        new() { Wiring = Wiring.Single, BetweenPulses = between, HasPulses = hasPulses, LimitsEachPulse = endsEach, Regeneration = true, HeatIndex = -1, MotorCount = 1 });

    private static ControllerWork<R1> Settle((ControllerParameters<R1> Numbers, ControllerShape Shape) p, double duty, double emf, double drop = 0.0)
    {
        ControllerWork<R1>[] work = [new ControllerWork<R1> { Duty = duty }];
        var motorWork = new MotorWork<R1>[1];
        MotorParameters<R1>[] motor = [new() { Constant = 0.1, Resistance = Resistance, BrushDrop = drop }];
        PowertrainEquations.Gather<R1>(motor, [new MotorShape { HeatIndex = -1 }], [p.Numbers], [p.Shape], [emf / 0.1], [], motorWork, work);
        PowertrainEquations.Settle<R1>(motor, [p.Numbers], [p.Shape], Bus, motorWork, work);
        return work[0];
    }

    // The circuit itself: while off a current meets a diode's way, at zero it stays zero as far as the diodes block. Exact within a step; the period's means once it repeats.
    private static (double Mean, double Square, double Taken) Reference(BetweenPulses between, double duty, double emf, double period)
    {
        const double d = PulseEquations.DiodeDrop;
        double against = between switch { BetweenPulses.Coast => Bus + (2.0 * d), BetweenPulses.Diode => d, _ => 0.0 };
        double along = between switch { BetweenPulses.Coast => Bus + (2.0 * d), BetweenPulses.Diode => Bus + d, _ => 0.0 };
        int on = (int)Math.Round(duty * Steps);
        double decay = Math.Exp(-period / Steps);
        double i = 0.0;
        double mean = 0.0, square = 0.0, taken = 0.0;
        int pulses = 3 + (int)(30.0 / period);
        for (int n = 0; n < pulses; n++)
        {
            (mean, square, taken) = (0.0, 0.0, 0.0);
            for (int k = 0; k < Steps; k++)
            {
                double voltage = k < on ? Bus : i > 0.0 || (i == 0.0 && emf < -against) ? -against : i < 0.0 || emf > along ? along : emf;
                double target = (voltage - emf) / Resistance;
                double next = target + ((i - target) * decay);
                if (k >= on && between != BetweenPulses.Brake && next * i < 0.0)
                {
                    next = 0.0;
                }

                double middle = 0.5 * (i + next);
                mean += middle / Steps;
                square += middle * middle / Steps;
                taken += (k < on ? middle : between == BetweenPulses.Coast || (between == BetweenPulses.Diode && middle < 0.0) ? -Math.Abs(middle) : 0.0) / Steps;
                i = next;
            }
        }

        return (mean, square, taken);
    }

    [Theory]
    [InlineData(BetweenPulses.Coast, 0.3, 0.0, 3.0)]
    [InlineData(BetweenPulses.Coast, 0.3, 6.0, 3.0)]
    [InlineData(BetweenPulses.Coast, 0.8, 2.0, 0.4)]
    [InlineData(BetweenPulses.Coast, 0.5, -8.0, 0.5)]
    [InlineData(BetweenPulses.Coast, 0.5, -15.0, 1.0)]
    [InlineData(BetweenPulses.Coast, 0.5, 12.8, 1.0)]
    [InlineData(BetweenPulses.Coast, 0.5, 16.0, 2.0)]
    [InlineData(BetweenPulses.Diode, 0.3, 3.0, 0.2)]
    [InlineData(BetweenPulses.Diode, 0.2, 8.0, 1.0)]
    [InlineData(BetweenPulses.Diode, 0.6, 0.0, 5.0)]
    [InlineData(BetweenPulses.Diode, 0.4, -5.0, 0.8)]
    [InlineData(BetweenPulses.Diode, 0.4, 12.4, 0.8)]
    [InlineData(BetweenPulses.Diode, 0.4, 14.0, 0.8)]
    [InlineData(BetweenPulses.Brake, 0.4, 2.0, 0.8)]
    [InlineData(BetweenPulses.Brake, 0.3, 9.0, 4.0)]
    public void Means_are_those_of_the_circuit(BetweenPulses between, double duty, double emf, double period)
    {
        (double mean, double square, double taken) = Reference(between, duty, emf, period);
        ControllerWork<R1> c = Settle(Controller(between, period), duty, emf);
        double scale = (Bus + Math.Abs(emf)) / Resistance * 2e-4;
        Assert.Equal(mean, c.Current.Value, scale);
        Assert.Equal(square, c.Ripple.Value + (c.Current.Value * c.Current.Value), scale * (Bus + Math.Abs(emf)) / Resistance);
        Assert.Equal(taken * Bus, c.BusPower.Value, scale * Bus);

        // bus = copper + back-EMF + diodes, and the last are the controller's loss
        Assert.Equal(c.BusPower.Value, (square * Resistance) + (emf * mean) + c.Loss.Value, 40.0 * scale);
        Assert.True(c.Loss.Value > -1e-9);
    }

    /// <summary>Mirrored command and speed give the mirrored current, to the bit.</summary>
    [Theory]
    [InlineData(BetweenPulses.Coast, 0.35, 4.0)]
    [InlineData(BetweenPulses.Diode, 0.35, -4.0)]
    [InlineData(BetweenPulses.Brake, 0.35, 13.0)]
    public void Backwards_is_the_mirror_image(BetweenPulses between, double duty, double emf)
    {
        ControllerWork<R1> a = Settle(Controller(between, 0.7), duty, emf, 0.3);
        ControllerWork<R1> b = Settle(Controller(between, 0.7), -duty, -emf, 0.3);
        Assert.Equal(a.Current.Value, -b.Current.Value);
        Assert.Equal(a.BusPower.Value, b.BusPower.Value);
        Assert.Equal(a.Ripple.Value, b.Ripple.Value);
    }

    /// <summary>Without inductance a coasting motor has current only while its pulse is on: d (V_b - E)/R.</summary>
    [Fact]
    public void Without_inductance_current_flows_while_on() =>
        Assert.Equal(0.3 * (Bus - 4.0) / Resistance, Settle(Controller(BetweenPulses.Coast, 250.0), 0.3, 4.0).Current.Value, 0.02);

    /// <summary>Braking keeps the mean voltage d V_b whatever the pulse, as a controller without pulses.</summary>
    [Theory]
    [InlineData(0.001)]
    [InlineData(1.0)]
    [InlineData(100.0)]
    public void Braking_keeps_the_mean_voltage(double period) =>
        Assert.Equal(((0.3 * Bus) - 7.0) / Resistance, Settle(Controller(BetweenPulses.Brake, period), 0.3, 7.0).Current.Value, 1e-9);

    /// <summary>Without load a coasting motor comes to V_b/K_e at any command: no current flows back below it, and some flows on.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public void Without_load_a_coasting_motor_comes_to_full_speed(double duty)
    {
        Assert.True(Settle(Controller(BetweenPulses.Coast, 2.0), duty, 0.99 * Bus).Current.Value > 0.0);
        Assert.Equal(0.0, Settle(Controller(BetweenPulses.Coast, 2.0), duty, Bus).Current.Value, 1e-12);
    }

    /// <summary>Means are continuous where the current just reaches zero as the next pulse comes.</summary>
    [Theory]
    [InlineData(BetweenPulses.Coast, 0.4)]
    [InlineData(BetweenPulses.Diode, 0.4)]
    public void Ending_and_lasting_current_meet(BetweenPulses between, double duty)
    {
        double low = -5.0, high = Bus;
        for (int n = 0; n < 200 && high - low > 1e-13; n++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Ends(between, duty, middle) ? (low, middle) : (middle, high);
        }

        ControllerWork<R1> a = Settle(Controller(between, 1.5), duty, low - 1e-10);
        ControllerWork<R1> b = Settle(Controller(between, 1.5), duty, high + 1e-10);
        Assert.Equal(a.Current.Value, b.Current.Value, 1e-8);
        Assert.Equal(a.Ripple.Value, b.Ripple.Value, 1e-8);
        Assert.Equal(a.BusPower.Value, b.BusPower.Value, 1e-7);
    }

    private static bool Ends(BetweenPulses between, double duty, double emf)
    {
        double towards = (Bus - emf) / Resistance;
        double away = ((between == BetweenPulses.Coast ? Bus + 1.4 : 0.7) + emf) / Resistance;
        return away > 0.0 && Math.Log(1.0 + (towards * (1.0 - Math.Exp(-duty * 1.5)) / away)) / 1.5 < 1.0 - duty;
    }

    /// <summary>A limit holds the mean current or the peak of each pulse: 0.9 A of mean, and a peak of 2 A that the reference finds at the shortened pulse.</summary>
    [Theory]
    [InlineData(BetweenPulses.Coast, 0.2)]
    [InlineData(BetweenPulses.Coast, 3.0)]
    [InlineData(BetweenPulses.Diode, 0.2)]
    [InlineData(BetweenPulses.Diode, 3.0)]
    [InlineData(BetweenPulses.Brake, 3.0)]
    public void A_limit_holds_the_mean(BetweenPulses between, double period)
    {
        ControllerWork<R1> c = Settle(Controller(between, period, 0.9), 0.9, 1.0);
        Assert.Equal(0.9, c.Current.Value, 1e-9);
        Assert.Equal(1.0, c.IsLimiting.Value);
        double duty = 0.9;
        for (double low = 0.0, high = 0.9; high - low > 1e-4;)
        {
            duty = 0.5 * (low + high);
            (low, high) = Reference(between, duty, 1.0, period).Mean < 0.9 ? (duty, high) : (low, duty);
        }

        Assert.Equal(Reference(between, duty, 1.0, period).Square, c.Ripple.Value + 0.81, 0.01);
    }

    /// <summary>From zero to 2 A through 2 ohm at 11 V the pulse lasts -ln(1 - 2/5.5) time constants; so does the mean of that triangle.</summary>
    [Fact]
    public void A_limit_of_each_pulse_ends_it()
    {
        ControllerWork<R1> c = Settle(Controller(BetweenPulses.Coast, 6.0, 2.0, endsEach: true), 0.9, 1.0);
        double share = -Math.Log(1.0 - (2.0 / 5.5)) / 6.0;
        Assert.Equal(Reference(BetweenPulses.Coast, share, 1.0, 6.0).Mean, c.Current.Value, 2e-3);
        Assert.Equal(1.0, c.IsLimiting.Value);
    }

    /// <summary>At full command nothing is off, and the current is that of a controller without pulses.</summary>
    [Theory]
    [InlineData(BetweenPulses.Coast, 3.0)]
    [InlineData(BetweenPulses.Diode, 13.0)]
    public void Full_command_has_no_pulses(BetweenPulses between, double emf)
    {
        ControllerWork<R1> pulsed = Settle(Controller(between, 1.0), 1.0, emf, 0.2);
        ControllerWork<R1> plain = Settle(Controller(between, 1.0, hasPulses: false), 1.0, emf, 0.2);
        Assert.Equal(plain.Current.Value, pulsed.Current.Value, 1e-12);
        Assert.Equal(plain.BusPower.Value, pulsed.BusPower.Value, 1e-11);
        Assert.Equal(0.0, pulsed.Ripple.Value);
    }

    /// <summary>The ledger of a robot at part command closes, and it runs faster than one that brakes between its pulses.</summary>
    [Theory]
    [InlineData(BetweenPulses.Coast)]
    [InlineData(BetweenPulses.Diode)]
    public void The_ledger_closes(BetweenPulses between)
    {
        RobotSettings robot = TestRobots.FourWheels();
        RobotSettings pulsed = robot with { Controllers = [.. robot.Controllers.Select(c => c with { BetweenPulses = between, PulseFrequency = 2000.0 })] };
        RunResult run = Simulator.Run(TestRobots.Scenario(pulsed, ManoeuvreKind.Launch, 0.4, 0.0, 1.0, 0.1));
        RunResult plain = Simulator.Run(TestRobots.Scenario(robot, ManoeuvreKind.Launch, 0.4, 0.0, 1.0, 0.1));
        Assert.Equal(RunStatus.Finished, run.Status);
        Assert.True(run.EnergyResidualRatio < 1e-5, $"{run.EnergyResidualRatio:E2}");
        Assert.True(run.Trace.Body.Speed[^1] > plain.Trace.Body.Speed[^1]);
    }
}
