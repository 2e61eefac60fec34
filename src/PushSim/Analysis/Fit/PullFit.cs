using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>Friction of a tyre from its pulls. One pull: the interval of its own noise, tare and steps. Several: Student's interval over the
/// pulls, which holds their own errors and the scatter from pull to pull.</summary>
public static class PullFit
{
    // Share of the friction from which on it is told that skids leave it open [1].
    private const double TellingSkid = 0.05;

    // Share by which a breakaway above every reading is told of [1].
    private const double AboveReadings = 0.001;

    /// <summary>From logs.</summary>
    /// <param name="name">Name of the tyre.</param>
    /// <param name="traces">Logs with at least one pull.</param>
    /// <param name="load">Load on the tyres under test.</param>
    /// <param name="stall">The motors' force; null without a robot file.</param>
    /// <param name="isDrag">Whether the robot was dragged with its wheels locked.</param>
    public static TyreFit OfTraces(string name, IReadOnlyList<FoundTrace> traces, GripLoad load, StallForce? stall, bool isDrag)
    {
        List<FoundPull> pulls = [.. traces.SelectMany(t => t.Pulls)];
        List<FoundPull> slid = [.. pulls.Where(p => p.Plateau is not null)];
        List<FoundPull> seen = [.. pulls.Where(p => p.Quality == BreakawayQuality.Seen)];
        Interval? force = slid.Count == 0 ? null : slid.Count == 1 ? slid[0].Plateau : Interval.OfMean([.. slid.Select(p => p.Plateau!.Value.Value)]);
        Interval breakaway = seen.Count == 0
            ? Unseen([.. pulls.Select(p => p.Breakaway.Value)], force)
            : seen.Count == 1 ? seen[0].Breakaway : Interval.OfMean([.. seen.Select(p => p.Breakaway.Value)]);
        bool hasPeak = seen.Count > 0 && force is Interval f && seen.Average(p => p.Breakaway.Value) > 1.05 * f.Value;
        return new TyreFit
        {
            Name = name,
            AtRest = Friction(load, breakaway),
            IsBreakawayUnseen = seen.Count == 0,
            Sliding = force is Interval k ? Friction(load, k) : null,
            Cause = PullCauseJudge.Judge(force ?? breakaway, stall, isLog: true, hasPeak, isDrag, PlateauEvidence.Of(traces)),
            Forces = [.. slid.Select(p => p.Plateau!.Value.Value)],
            Frictions = [.. slid.Select(p => load.Friction(p.Plateau!.Value.Value))],
            Load = load.LoadAt((force ?? breakaway).Value),
            CommonOff = load.Off,
            Pulls = pulls.Count,
            Warnings = [.. Warnings(traces, pulls, slid, seen), .. OfSkids(load, force)],
            Above = OfBreakaways(seen),
            Traces = traces,
        };
    }

    /// <summary>From readings that may each have a load of their own: they are brought to their mean load by the load's share, or by the exponent that they show.</summary>
    /// <param name="name">Name of the tyre.</param>
    /// <param name="readings">One reading or more; one may have a peak alone.</param>
    /// <param name="load">Load on the tyres under test of readings without their own.</param>
    /// <param name="stall">The motors' force; null without a robot file.</param>
    /// <param name="isDrag">Whether the robot was dragged with its wheels locked.</param>
    public static TyreFit OfReadings(string name, IReadOnlyList<PullReading> readings, GripLoad load, StallForce? stall, bool isDrag)
    {
        if (!readings.Any(r => r.Load > 0.0))
        {
            return OfReadings(name, Values(readings, r => r.Force), Values(readings, r => r.Peak), load, stall, isDrag);
        }

        readings = [.. readings.Select(r => r.Load > 0.0 ? r : r with { Load = load.LoadAt(r.Force ?? r.Peak!.Value) })];
        PullReading[] steady = [.. readings.Where(r => r.Force is not null)];
        double mean = readings.Average(r => r.Load!.Value);
        LoadDependence? law = LoadDependence.Fit([.. steady.Select(r => r.Load!.Value)], [.. steady.Select(r => r.Force!.Value)], mean);
        double p = law?.Exponent.Value ?? 0.0;
        double? At(double? value, double n) => value * Math.Pow(mean / n, 1.0 - p);
        TyreFit fit = OfReadings(name, Values(readings, r => At(r.Force, r.Load!.Value)), Values(readings, r => At(r.Peak, r.Load!.Value)), GripLoad.Fixed(mean, load.Off), stall, isDrag);
        return fit with { LoadExponent = law?.Exponent, Sliding = law?.Friction is Interval told ? Wider(told, load.Off) : fit.Sliding };
    }

    /// <summary>From readings off a display.</summary>
    /// <param name="name">Name of the tyre.</param>
    /// <param name="forces">Steady readings [N].</param>
    /// <param name="peaks">Peak readings [N]; may be empty.</param>
    /// <param name="load">Load on the tyres under test.</param>
    /// <param name="stall">The motors' force; null without a robot file.</param>
    /// <param name="isDrag">Whether the robot was dragged with its wheels locked.</param>
    public static TyreFit OfReadings(string name, IReadOnlyList<double> forces, IReadOnlyList<double> peaks, GripLoad load, StallForce? stall, bool isDrag)
    {
        Interval? force = forces.Count > 0 ? Interval.OfMean(forces) : null;
        bool hasPeaks = peaks.Count > 0;
        Interval bound = hasPeaks ? Interval.OfMean(peaks) : new Interval(force!.Value.Value, force.Value.IsBounded ? force.Value.Low : double.NaN, double.NaN);
        List<PullWarning> warnings = [];
        if (forces.Count == 1 || peaks.Count == 1)
        {
            warnings.Add(new PullWarning.Single(forces.Count, peaks.Count));
        }

        if (!hasPeaks)
        {
            warnings.Add(new PullWarning.LowerBound(LowerBoundCause.SteadyReadings));
        }

        return new TyreFit
        {
            Name = name,
            AtRest = Friction(load, bound),
            IsBreakawayUnseen = !hasPeaks,
            Sliding = force is Interval k ? Friction(load, k) : null,
            Cause = PullCauseJudge.Judge(force ?? bound, stall, isLog: false, hasPeak: false, isDrag, new PlateauEvidence()),
            Forces = [.. forces.Count > 0 ? forces : peaks],
            Frictions = [.. forces.Select(load.Friction)],
            Load = load.LoadAt((force ?? bound).Value),
            CommonOff = load.Off,
            Pulls = Math.Max(forces.Count, peaks.Count),
            Warnings = [.. warnings, .. OfSkids(load, force)],
        };
    }

    // What was held at least: the mean of the pulls, and for sure no more than the lower end of what it slid at
    private static Interval Unseen(double[] held, Interval? sliding)
    {
        double mean = Sample.Mean(held);
        double low = held.Length > 1 ? Interval.OfMean(held).Low : mean;
        return new Interval(mean, sliding is { } s && double.IsFinite(s.Low) ? Math.Min(low, s.Low) : low, double.NaN);
    }

    private static double[] Values(IReadOnlyList<PullReading> readings, Func<PullReading, double?> of) => [.. readings.Select(of).OfType<double>()];

    private static PullWarning[] OfSkids(GripLoad load, Interval? force)
    {
        double creeping = force is Interval f ? load.Friction(f.Value) : double.NaN;
        return force is Interval g && load.FrictionDrawnBack(g.Value) is double back && creeping - back > TellingSkid * creeping
            ? [new PullWarning.Skids(creeping, back)]
            : [];
    }

    // What keeps the numbers of these pulls from being better; slid: those with a plateau, seen: those with a breakaway peak.
    private static List<PullWarning> Warnings(IReadOnlyList<FoundTrace> traces, List<FoundPull> pulls, List<FoundPull> slid, List<FoundPull> seen)
    {
        List<PullWarning> warnings = [];
        if (slid.Count == 0)
        {
            warnings.Add(new PullWarning.NoSliding());
        }
        else if (slid.Count == 1)
        {
            warnings.Add(new PullWarning.OnePull());
        }

        if (seen.Count == 0)
        {
            warnings.Add(new PullWarning.LowerBound(pulls.Any(p => p.Quality == BreakawayQuality.FewSamples) ? LowerBoundCause.FewSamples : LowerBoundCause.NoPeak));
        }

        if (seen.Count(p => p.RampBends) is int bent and > 0)
        {
            warnings.Add(new PullWarning.RampBends(bent, seen.Count));
        }

        if (pulls.Any(p => !p.SeesDrift))
        {
            warnings.Add(new PullWarning.NoDrift());
        }

        int spikes = traces.Sum(t => t.Spikes.Count);
        if (spikes > 0)
        {
            warnings.Add(new PullWarning.Spikes(spikes));
        }

        return warnings;
    }

    // A breakaway that no reading of its pull reaches.
    private static BreakawayAbove? OfBreakaways(List<FoundPull> seen)
    {
        double[] above = [.. seen.Select(p => (p.Breakaway.Value / p.HighestReading) - 1.0).Where(a => a > AboveReadings)];
        return above.Length == 0 ? null : new BreakawayAbove(above.Length, seen.Count, above.Max());
    }

    private static Interval Friction(GripLoad load, Interval force) =>
        Wider(new(load.Friction(force.Value), double.IsFinite(force.Low) ? load.Friction(force.Low) : double.NaN, double.IsFinite(force.High) ? load.Friction(force.High) : double.NaN), load.Off);

    // what all pulls have in common adds as the root of squares, to each end by itself
    private static Interval Wider(Interval i, double off) => off == 0.0 ? i :
        new(i.Value, i.Value - double.Hypot(i.Value - i.Low, off * i.Value), i.Value + double.Hypot(i.High - i.Value, off * i.Value));
}
