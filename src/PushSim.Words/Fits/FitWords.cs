using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;

namespace PushSim.Words.Fits;

/// <summary>What fitted tyres answer, in a sentence.</summary>
public static class FitWords
{
    /// <summary>The answer as one sentence.</summary>
    /// <param name="fits">The tyres.</param>
    /// <param name="compared">How they compare; null: not said.</param>
    public static string Verdict(IReadOnlyList<TyreFit> fits, TyreComparison? compared = null)
    {
        if (fits.Count == 1)
        {
            return Sentence(fits[0]) + Tests(fits);
        }

        List<TyreFit> sure = [.. fits.Where(f => !f.Cause.IsInconsistent)];
        List<TyreFit> slid = [.. sure.Where(f => f.KineticFriction is not null)];
        TyreFit? best = slid.MaxBy(f => f.ForModel.Kinetic) ?? sure.MaxBy(f => f.ForModel.Static);
        string most = slid.Count == 0 ? "most grip before breaking away (none was seen sliding)" : slid.Count < sure.Count ? "most grip of those seen sliding" : "most grip";
        int motors = fits.Count(f => f.Cause.IsOfMotors);
        int inconsistent = fits.Count - sure.Count;
        int unknown = sure.Count(f => f.Cause.By is null);
        string rest = (motors > 0 ? $" {motors} set by the motors (lower bounds)." : "") + (unknown > 0 ? $" {unknown} set by tyre or motors, which is not known (lower bounds)." : "") + Tests(fits) + (inconsistent > 0 ? $" {inconsistent} inconsistent with the robot file." : "");
        return best is null
            ? $"{fits.Count} tyres fitted, all inconsistent with the robot file."
            : Text($"{fits.Count} tyres fitted; {most}: {best.Name}, friction {Word(best)}{best.ForModel.Kinetic:0.00}.") + (compared is null ? "" : Apart(compared, best.Name)) + rest;
    }

    // Whether the best tyre is told apart from the others; empty if it is in no pair.
    private static string Apart(TyreComparison c, string best)
    {
        List<string> close = [.. c.Pairs.Where(p => !p.IsToldApart && (p.First == best || p.Second == best)).Select(p => p.First == best ? p.Second : p.First)];
        bool isIn = c.Pairs.Any(p => p.First == best || p.Second == best);
        return !isIn ? "" : close.Count == 0 ? " It is told apart from all others compared." : $" It is not told apart from {string.Join(", ", close)}.";
    }

    /// <summary>Whence the frictions of a tyre come whose test was simulated.</summary>
    public static string Method(TyreFit f) => f.IsStaticSimulated && f.IsKineticSimulated ? "sliding friction and breakaway are those of the simulated test"
        : f.IsStaticSimulated ? "breakaway is that of the simulated test, sliding friction that of the pulls"
        : f.IsKineticSimulated ? "sliding friction is that of the simulated test, breakaway that of the pulls" : "sliding friction and breakaway are those of the pulls";

    private static string Sentence(TyreFit f)
    {
        string kinetic = f.KineticFriction is Interval k ? $"sliding friction {Word(f)}{Ranged(k)}" : "no sliding seen";
        string atRest = $"breakaway {(f.IsStaticLowerBound ? "at least " : "")}{Ranged(f.StaticFriction)}";
        string by = f.Cause.IsInconsistent ? "inconsistent with the robot file" : f.Cause.By switch
        {
            BindingKind.Tyre => "the tyre set it",
            BindingKind.Motor => "the motors set it, the tyre grips at least that well",
            _ => "whether tyre or motors set it is unknown",
        };
        return $"{f.Name}: {kinetic}, {atRest}; {by}.";
    }

    // What would close the lower bounds, each kind once
    private static string Tests(IReadOnlyList<TyreFit> fits) =>
        string.Concat(fits.Where(f => f.Cause is { IsLowerBound: true, IsInconsistent: false }).Select(f => " " + PullWords.Test(f.Cause)).Distinct());

    private static string Word(TyreFit f) => f.Cause is { IsLowerBound: true, IsInconsistent: false } ? "at least " : "";

    private static string Ranged(Interval i) => IntervalWords.Of(i) is { Length: > 0 } ends ? Text($"{i.Value:0.000} ({ends})") : Text($"{i.Value:0.000}");
}
