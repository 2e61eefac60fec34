using PushSim.Numerics;
using PushSim.Powertrain;

namespace PushSim.Tests.Measured;

/// <summary>
/// Two small 12 V gearmotors (ratio 29.861) with their wheels free or nearly so, on an integrated bridge with pulses: data sheet 1100 rpm and 0.08 A without load, 0.75 A stalled, so
/// 16 ohm and 3.12 mN m/A. Guessed: that the bridge coasts between its pulses, and that friction is that of the no-load current at any speed. One number is identified: inductance times
/// pulse frequency (only the product counts while L/R is far below the period), on every second row from 40 % command up; all else is judged on the other rows.
/// </summary>
internal static class MotorBench
{
    private const double Ratio = 29.861;
    private const double Resistance = 12.0 / 0.75;
    private const double NoLoadCurrent = 0.08;
    private const double Rpm = Math.PI / 30.0;
    private const double Constant = (12.0 - (NoLoadCurrent * Resistance)) / (1100.0 * Rpm * Ratio);

    // Rotor with its share of gears and wheel, from the full step of the same bench (given with the data) [kg m^2].
    private const double Inertia = 0.22e-7;

    private static readonly Lazy<(double Bus, double Duty, double Speed, bool IsJudged)[]> s_rows = new(Rows);

    private static readonly Lazy<double> s_product = new(Identify);

    /// <summary>Inductance times pulse frequency, identified [V/A].</summary>
    public static double Product => s_product.Value;

    /// <summary>Mean speed of both wheels and directions over the judged rows within 5 % of a command, and the model's [rpm].</summary>
    public static (double Measured, double Model) At(double command, BetweenPulses between = BetweenPulses.Coast)
    {
        (double Bus, double Duty, double Speed, bool IsJudged)[] bin = [.. s_rows.Value.Where(r => r.IsJudged && Math.Abs(r.Duty - command) <= 0.05)];
        return (bin.Average(r => r.Speed), bin.Average(r => Speed(r.Bus, r.Duty, Product, between)));
    }

    /// <summary>Time from the first count of the encoder to 63 % of the last speed [s].</summary>
    public static (double Measured, double Model) Start()
    {
        MeasuredData data = MeasuredData.Read("motor-step-3");
        double[] time = data["time_ms"];
        double[] count = [.. data["left_count"].Select(c => -c)];
        int first = Array.FindIndex(count, c => c > count[0]);
        const int half = 3;
        double SpeedAt(int i) => (count[i + half] - count[i - half]) / (time[i + half] - time[i - half]);
        double last = Enumerable.Range(count.Length - 200 - half, 200).Average(SpeedAt);
        int risen = Enumerable.Range(half, count.Length - (2 * half)).First(i => SpeedAt(i) > (1.0 - Math.Exp(-1.0)) * last);

        // 100 of 255 at the sweep's voltage
        const double bus = 7.93, duty = 100.0 / 255.0, step = 1e-5;
        double target = (1.0 - Math.Exp(-1.0)) * Speed(bus, duty, Product, BetweenPulses.Coast) * Rpm * Ratio;
        double t = 0.0;
        for (double omega = 0.0; omega < target; t += step)
        {
            omega += step * Constant * (Current(bus, duty, omega, Product, BetweenPulses.Coast) - NoLoadCurrent) / Inertia;
        }

        return ((time[risen] - time[first]) / 1000.0, t);
    }

    private static double Identify()
    {
        double best = 0.0, least = double.PositiveInfinity;
        foreach (int n in Enumerable.Range(0, 25))
        {
            double product = 0.01 * Math.Pow(10.0, n / 12.0);
            double sum = s_rows.Value.Where((r, i) => !r.IsJudged && r.Duty > 0.4 && i % 7 == 0).Sum(r => Math.Pow(Speed(r.Bus, r.Duty, product, BetweenPulses.Coast) - r.Speed, 2.0));
            (best, least) = sum < least ? (product, sum) : (best, least);
        }

        return best;
    }

    private static (double Bus, double Duty, double Speed, bool IsJudged)[] Rows()
    {
        MeasuredData data = MeasuredData.Read("motor-sweep-3");
        return [.. Enumerable.Range(0, data.Rows).Select(i => (
            data["battery_mV"][i] / 1000.0, Math.Abs(data["command_of_255"][i]) / 255.0, Math.Sign(data["command_of_255"][i]) * 0.5 * (data["left_rpm"][i] + data["right_rpm"][i]), i % 2 == 1))];
    }

    // Speed of the gearbox at which the current is that of the friction [rpm].
    private static double Speed(double bus, double duty, double product, BetweenPulses between)
    {
        double low = 0.0, high = bus / Constant;
        for (int n = 0; n < 40; n++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Current(bus, duty, middle, product, between) > NoLoadCurrent ? (middle, high) : (low, middle);
        }

        return low / Rpm / Ratio;
    }

    private static double Current(double bus, double duty, double speed, double product, BetweenPulses between)
    {
        ControllerWork<R1>[] work = [new ControllerWork<R1> { Duty = duty }];
        var motorWork = new MotorWork<R1>[1];
        MotorParameters<R1>[] motor = [new() { Constant = Constant, Resistance = Resistance }];
        MotorShape[] motorShape = [new() { HeatIndex = -1 }];
        ControllerParameters<R1>[] controller = [new() { CurrentLimit = 100.0, PulseTimeOverInductance = 1.0 / product }];
        ControllerShape[] shape = [new() { BetweenPulses = between, HasPulses = true, Regeneration = true, HeatIndex = -1, MotorCount = 1 }];
        PowertrainEquations.Gather<R1>(motor, motorShape, controller, shape, [speed], [], motorWork, work);
        PowertrainEquations.Settle<R1>(motor, controller, shape, bus, motorWork, work);
        return work[0].Current.Value;
    }
}
