using PushSim.Tests.Measured;

namespace PushSim.Tests.Accuracy;

/// <summary>Open measurements: motors, a cell, turning robots, slides. What was identified on which part stands with each bench in tests/PushSim.Tests/Measured.</summary>
internal static class MeasuredRows
{
    private const string Motors = "opatiny/micromouse at fb04095, measured; one number (inductance times frequency) identified on every second row";
    private const string Cell = "ARTS-Laboratory, electrothermal characterization dataset at 4e9effd, measured, CC BY-SA 4.0; shelf cell, fitted to C/10, 1C and 2C";
    private const string Turning = "norlab-ulaval/DRIVE at e158a19, measured";
    private const string Slides = "DAIRLab/contact-nets at c3dc21c, measured";

    private static readonly Lazy<(double Measured, double Model)> s_start = new(MotorBench.Start);
    private static readonly Lazy<(double Measured, double Model)> s_stop = new(SlideBench.StoppingDistance);

    private static AccuracyRow Sweep(double command, double bound)
    {
        (double measured, double model) = MotorBench.At(command);
        return new(FormattableString.Invariant($"gearmotors on a pulsing bridge, free, {100.0 * command:0} % command: mean speed"), "rpm", measured, bound * measured, Motors, () => model) { Floor = 1e-4 };
    }

    private static AccuracyRow Discharge(string rate, double bound)
    {
        Lazy<double> rms = new(() => CellBench.Discharge(rate).Rms);
        return new($"round cell at {rate}, 2 to 90 % discharged: rms of the voltage against none", "V", 0.0, bound, Cell, () => rms.Value) { Floor = 1e-6 };
    }

    private static AccuracyRow Hard(double from, double to, double bound, string what)
    {
        Lazy<(double Measured, double Model)> v = new(() => TurningBench.OfHard(from, to));
        return new($"300 kg robot on hard ground, {what}: track ratio, median", "1", v.Value.Measured, bound * v.Value.Measured, Turning + "; yaw rate by gyro; friction and height identified on q 1 to 2.5", () => v.Value.Model) { Floor = 1e-4 };
    }

    private static AccuracyRow Soft(double from, double to, double bound, string what)
    {
        Lazy<(double Measured, double Model)> v = new(() => TurningBench.OfSoft(from, to));
        return new($"46 kg robot on soft ground, {what}: track ratio, median", "1", v.Value.Measured, bound * v.Value.Measured, Turning + "; yaw rate by gyro; lateral ratio and friction identified on every second window", () => v.Value.Model) { Floor = 1e-4 };
    }

    public static AccuracyRow[] All { get; } =
    [
        Sweep(0.3, 0.10), Sweep(0.4, 0.05), Sweep(0.5, 0.05), Sweep(0.75, 0.05), Sweep(0.98, 0.05),
        new("the same, start at 39 % command: time to 63 % of the speed", "s", s_start.Value.Measured, 0.25 * s_start.Value.Measured, Motors + "; inertia from the full step", () => s_start.Value.Model) { Floor = 1e-4 },
        Discharge("1C", 0.020), Discharge("2C", 0.020), Discharge("3C", 0.025),
        Hard(0.0, 0.15, 0.03, "spot"), Hard(0.15, 1.0, 0.05, "q 0.15 to 1"), Hard(1.0, 2.5, 0.05, "q 1 to 2.5"), Hard(2.5, 3.5, 0.05, "q 2.5 to 3.5"),
        Soft(0.0, 0.15, 0.05, "spot"), Soft(0.15, 1.0, 0.12, "q 0.15 to 1"), Soft(1.0, 2.0, 0.12, "q 1 to 2"), Soft(2.0, 4.0, 0.12, "q 2 to 4"), Soft(4.0, 8.0, 0.12, "q 4 to 8"),
        new("cube on a board: mean way to the stop of the faster half", "m", s_stop.Value.Measured, 0.05 * s_stop.Value.Measured, Slides + "; friction of the slower half", () => s_stop.Value.Model) { Floor = 1e-4 },
    ];
}
