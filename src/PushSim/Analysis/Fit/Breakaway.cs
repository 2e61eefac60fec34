using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>The breakaway force of one pull. The ramp is a straight line; the tyre let go somewhere between the last reading on the line and the
/// next one, each moment as likely:
/// <code>
/// F_s = L(t*),  t* uniform in (t_j, t_j+1),  L with the regression's error, tare's and steps' error on top
/// </code>
/// Where the last readings lie below the line by more than noise, the ramp bent before the tyre let go: then the greatest reading is
/// the value and the line the upper end. With five readings or fewer on the ramp no line is trusted, and the greatest reading is a lower bound. Limits: a cell's own filter
/// makes the ramp late and the peak low by slope times its time constant; the mass of the robot adds what it takes to set it moving.
/// A slow pull makes both small.</summary>
internal static class Breakaway
{
    /// <summary>With this many readings on the ramp or fewer, breakaway is a lower bound [1].</summary>
    public const int FewRampSamples = 5;

    // The line is laid through readings above this share of the peak, or the lower one if they are too few [1].
    private const double Upper = 0.6;
    private const double Lower = 0.3;
    private const int FewestOnLine = 4;

    // More readings than this see the ramp's curvature instead of helping [1].
    private const int MostOnLine = 40;

    // A reading this many spreads below the line has left it [1].
    private const double Left = 3.0;

    // The last two readings this many of the cell's noise, and this share of the peak, below the line: the ramp bent [1].
    private const double Bent = 4.0;
    private const double BendThatMatters = 0.01;

    public static FoundPull Measure(FoundPull pull, double[] time, double[] clean, int foot, TareLine tare, double noise, double step)
    {
        var ramp = new Readings(time, clean, tare);
        double greatest = ramp.At(pull.Peak);
        if (pull.RampSamples <= FewRampSamples || pull.Peak + 1 >= time.Length || StartOfLine(ramp, foot, pull.Peak) is not int from)
        {
            return pull with { Breakaway = Bound(greatest), Quality = BreakawayQuality.FewSamples };
        }

        double floor = Math.Sqrt((noise * noise) + (step * step / 12.0));
        int last = LastOnLine(ramp, from, pull.Peak, floor);
        LineFit line = ramp.Line(from, last);
        double gap = time[last + 1] - time[last];
        double middle = 0.5 * (time[last] + time[last + 1]);
        (double tareNoise, double tareSteps) = tare.VarianceAt(middle);
        double value = line.At(middle);
        double half = HalfWidth(line, middle, gap, step, tareNoise, tareSteps);
        if (value > greatest && HasBent(ramp, line, from, last, greatest, floor, step))
        {
            double error = UniformPlusNormal.HalfWidth(0.95, 0.0, Math.Sqrt((floor * floor) + tareNoise + tareSteps));
            return pull with
            {
                Breakaway = new Interval(greatest, greatest - error, value + half),
                Quality = BreakawayQuality.Seen,
                RampBends = true,
                Ramp = [(time[from], line.At(time[from])), (time[from] + ((greatest - line.At(time[from])) / line.Slope), greatest)],
            };
        }

        return pull with
        {
            Breakaway = new Interval(value, value - half, value + half),
            Quality = BreakawayQuality.Seen,
            Ramp = [(time[from], line.At(time[from])), (middle, value)],
        };
    }

    /// <summary>A lower bound, without an upper end [N].</summary>
    public static Interval Bound(double value) => new(value, value, double.NaN);

    // The first reading of the line; null where too few are left for one
    private static int? StartOfLine(Readings ramp, int foot, int peak)
    {
        int from = First(foot, peak, i => ramp.At(i) >= Upper * ramp.At(peak));
        from = peak - from < FewestOnLine ? First(foot, peak, i => ramp.At(i) >= Lower * ramp.At(peak)) : from;
        from = Math.Max(from, peak - MostOnLine);
        return peak - from < FewestOnLine - 1 ? null : from;
    }

    // Up to the peak first, then with what still lies on that line
    private static int LastOnLine(Readings ramp, int from, int peak, double floor)
    {
        int last = Math.Max(from + 2, peak - 1);
        LineFit line = ramp.Line(from, last);
        double s = Math.Max(line.ResidualDeviation, floor);
        for (int i = last + 1; i <= Math.Min(peak + 2, ramp.Time.Length - 2); i++)
        {
            if (ramp.At(i) < line.At(ramp.Time[i]) - (Left * s * Math.Sqrt(1.0 + line.LeverageAt(ramp.Time[i]))))
            {
                break;
            }

            last = i;
        }

        return last;
    }

    // Half of the 95 % interval of the line where the tyre let go, a moment uniform within the gap
    private static double HalfWidth(LineFit line, double middle, double gap, double step, double tareNoise, double tareSteps)
    {
        double s2 = Math.Max(line.ResidualDeviation * line.ResidualDeviation, step * step / 12.0);
        double spread = s2 * line.LeverageAt(middle);
        double inflation = StudentT.Factor(0.95, Math.Max(1, line.Freedom)) / StudentT.Factor(0.95, double.PositiveInfinity);
        return UniformPlusNormal.HalfWidth(0.95, 0.5 * Math.Abs(line.Slope) * gap, Math.Sqrt((inflation * inflation * spread) + tareNoise + tareSteps));
    }

    // Whether the last two readings lie below the line by more than noise
    private static bool HasBent(Readings ramp, LineFit line, int from, int last, double greatest, double floor, double step)
    {
        double below = 0.5 * (line.At(ramp.Time[last]) - ramp.At(last) + line.At(ramp.Time[last - 1]) - ramp.At(last - 1));

        // the cell's noise as the ramp shows it: over the whole log the sliding's own roughness would hide a bend
        double[] off = [.. Enumerable.Range(from, last - from + 1).Select(i => ramp.At(i) - line.At(ramp.Time[i]))];
        double reading = Math.Min(floor, Math.Sqrt((Sample.NoiseOf(off) * Sample.NoiseOf(off)) + (step * step / 12.0)));
        return below > Math.Max(Bent * reading / Math.Sqrt(2.0), BendThatMatters * greatest);
    }

    private static int First(int from, int to, Func<int, bool> isThere)
    {
        int i = from;
        while (i < to && !isThere(i))
        {
            i++;
        }

        return i;
    }

    // The log's force less its tare
    private sealed class Readings(double[] time, double[] clean, TareLine tare)
    {
        public double[] Time => time;

        public double At(int i) => clean[i] - tare.At(time[i]);

        public LineFit Line(int from, int last)
        {
            double[] x = [.. Enumerable.Range(from, last - from + 1).Select(i => time[i])];
            double[] y = [.. Enumerable.Range(from, last - from + 1).Select(At)];
            return LineFit.Of(x, y);
        }
    }
}
