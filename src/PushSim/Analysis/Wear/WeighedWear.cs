using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Wear;

/// <summary>How abrasive a floor is, from tyres weighed before and after driving as a run does. Wear is in proportion to the floor's abrasiveness, so the run tells its rate for one value and the scale the ratio:
/// <code>a = a_0 (sum of losses)/(m' sum of times)      sd^2 = n/(n - 1) sum (loss - a m'/a_0 time)^2 + n step^2/6</code>
/// over n weighings; the last term is two readings of a scale that shows steps. 95 %, by Student where rows repeat each other.</summary>
public sealed record WeighedWear
{
    private const double Confidence = 0.95;

    /// <summary>Abrasiveness of the floor against the sheet of the standard wear test [1].</summary>
    public required Interval Abrasiveness { get; init; }

    /// <summary>The value that the run had [1].</summary>
    public required double Assumed { get; init; }

    /// <summary>Worn per energy that treads lost on the floor, as weighed [m^3/J].</summary>
    public required double PerWork { get; init; }

    /// <summary>Mass lost in all [kg].</summary>
    public required double Loss { get; init; }

    /// <summary>Time driven in all [s].</summary>
    public required double Time { get; init; }

    /// <summary>Number of weighings [1].</summary>
    public required int Count { get; init; }

    /// <summary>Whether the loss stands out from what the scale and the rows scatter.</summary>
    public bool IsSeen => Abrasiveness.Low > 0.0;

    /// <summary>The weighings against a run; null where the run wears nothing, or a tyre's wear or density is not known.</summary>
    /// <param name="weighings">At least one, each with a time above zero.</param>
    /// <param name="report">Wear of the run.</param>
    /// <param name="assumed">Abrasiveness of the run's floor [1].</param>
    public static WeighedWear? Of(IReadOnlyList<Weighing> weighings, WearResult report, double assumed)
    {
        double rate = report.Wheels.Sum(w => w.VolumeRate * w.Density ?? double.NaN), work = report.Wheels.Sum(w => w.FrictionWork), volume = report.Wheels.Sum(w => w.Volume);
        if (report.UnknownWheels.Count > 0 || !(rate > 0.0) || !(work > 0.0) || !(assumed > 0.0))
        {
            return null;
        }

        int n = weighings.Count;
        double loss = weighings.Sum(w => w.Loss), time = weighings.Sum(w => w.Time), mean = loss / time;
        double rows = n > 1 ? weighings.Sum(w => Math.Pow(w.Loss - (mean * w.Time), 2.0)) * n / (n - 1.0) : 0.0;
        double scale = weighings.Sum(w => w.Step * w.Step) / 6.0;
        double half = Math.Sqrt(Math.Pow(StudentT.Factor(Confidence, Math.Max(1, n - 1)), 2.0) * rows + Math.Pow(StudentT.Factor(Confidence, double.PositiveInfinity), 2.0) * scale);
        double ratio = loss / (rate * time);
        double share = half / (rate * time);
        return new WeighedWear
        {
            Abrasiveness = new Interval(assumed * ratio, assumed * (ratio - share), assumed * (ratio + share)),
            Assumed = assumed,
            PerWork = ratio * volume / work,
            Loss = loss,
            Time = time,
            Count = n,
        };
    }
}
