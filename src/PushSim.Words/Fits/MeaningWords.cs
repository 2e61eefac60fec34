using PushSim.Analysis.Chance;
using PushSim.Analysis.Meaning;

namespace PushSim.Words.Fits;

/// <summary>What fitted tyres make of a robot.</summary>
public static class MeaningWords
{
    // A smaller change of force is none [N].
    private const double LeastGain = 0.05;

    /// <summary>How well it turns; its key for scripts as well.</summary>
    public static string Of(TurnEase ease) => ease switch { TurnEase.Freely => "easily", TurnEase.AtTheLimit => "at the limit", _ => "cannot" };

    /// <summary>One sentence for the verdict: who wins most shoves, or what limits; empty if nothing was run.</summary>
    public static string Verdict(RobotMeaning r)
    {
        TyreMeaning[] own = [.. r.Tyres.Where(t => !t.IsStronger)];
        if (own.Length == 0)
        {
            return "";
        }

        TyreMeaning? best = own.Where(t => t.WinShare is not null).MaxBy(t => t.Shoves!.Share(t.Shoves.Wins));
        string shoves = best is null ? "" : Text($" With {best.Tyre.Name} {r.Robot} wins {100.0 * best.Shoves!.Share(best.Shoves.Wins):0} % of the shoves against {r.Opponent}{NotSure(own, best)}.");
        return shoves + " " + Limits(own, r.Robot);
    }

    /// <summary>What binds, and what therefore changes nothing.</summary>
    public static string Limits(TyreMeaning[] tyres, string robot)
    {
        TyreMeaning[] known = [.. tyres.Where(t => t.Bound.Count > 0)];
        TyreMeaning[] slide = [.. known.Where(t => t.IsHeldByTyres && t.Bound.Count == 1)];
        TyreMeaning[] hold = [.. known.Where(t => !t.IsHeldByTyres)];
        TyreMeaning[] both = [.. known.Where(t => t.IsHeldByTyres && t.Bound.Count > 1)];
        if (known.Length == 0)
        {
            return $"What limits {robot} is not known.";
        }

        string every = known.Length == 1 ? "on " + known[0].Tyre.Name : "on every one of these tyres";
        if (hold.Length == known.Length)
        {
            return Text($"The {Who(hold, "limits", "limit")} {robot} {every} ({hold.Max(t => t.MotorForce):0.0} N, the tyres hold {hold.Min(t => t.TyreForce):0.0} N{(known.Length > 1 ? " or more" : "")}): better tyres change nothing in its push.");
        }

        if (slide.Length == known.Length)
        {
            return Text($"The tyres limit {robot} {every} ({slide.Max(t => t.TyreForce):0.0} N{(known.Length > 1 ? " at most" : "")}, the motors could give {slide.Min(t => t.MotorForce):0.0} N): a stronger motor changes nothing in its standing push.");
        }

        List<string> parts = slide.Length > 0 ? [$"the tyres limit {robot} on {Names(slide)}"] : [];
        parts.AddRange(both.GroupBy(t => string.Join(", then the ", t.Bound.Select(b => BindingTable.Words(b.Kind)))).Select(g => $"on {Names(g)} the {g.Key} do"));
        parts.AddRange(hold.Length > 0 ? [$"on {Names(hold)} the {Who(hold, "does", "do")}: more grip than that of {hold.MinBy(t => t.TyreForce)!.Tyre.Name} changes nothing in its push"] : []);
        string all = string.Join("; ", parts);
        return $"{(slide.Length > 0 ? "" : $"What limits {robot}: ")}{(slide.Length > 0 ? char.ToUpperInvariant(all[0]) : all[0])}{all[1..]}.";
    }

    /// <summary>What stronger motors add, and what takes over.</summary>
    public static string Gain(RobotMeaning r)
    {
        List<string> more = [];
        List<string> nothing = [];
        List<TyreMeaning> held = [];
        foreach (TyreMeaning own in r.Tyres.Where(t => !t.IsStronger))
        {
            TyreMeaning strong = r.Tyres.First(t => t.IsStronger && t.Tyre == own.Tyre);
            double gain = Math.Min(strong.MotorForce, strong.TyreForce) - Math.Min(own.MotorForce, own.TyreForce);
            if (double.IsFinite(gain))
            {
                (Math.Abs(gain) < LeastGain ? nothing : more).Add(Math.Abs(gain) < LeastGain ? own.Tyre.Name : Text($"{gain:+0.0;-0.0} N on {own.Tyre.Name}{(!own.IsHeldByTyres && strong.IsHeldByTyres ? ", where now the tyres limit" : "")}"));
                held.AddRange(strong.MotorForce - own.MotorForce < LeastGain ? [strong] : []);
            }
        }

        string adds = more.Count == 0 ? "nothing on any tyre" : string.Join("; ", more) + (nothing.Count > 0 ? "; nothing on " + string.Join(", ", nothing) : "");
        string limit = held.Count == 0 ? "" : Text($" The controllers or the battery hold the stronger motors to the same {held[0].MotorForce:0.0} N.");
        return Text($"Motors of {r.Stronger:0.##} times the stall torque add to the standing push: {adds}.{limit}");
    }

    private static string NotSure(TyreMeaning[] tyres, TyreMeaning best)
    {
        Tally first = best.Shoves!;
        string[] close = [.. tyres.Where(t => t != best && t.Shoves is { Matches: > 0 } s && ShareInterval.OfTwo(first.Wins, first.Matches, s.Wins, s.Matches).Low <= 0.0).Select(t => t.Tyre.Name)];
        return close.Length == 0 ? "" : $", no surer than with {string.Join(", ", close)}";
    }

    private static string Who(TyreMeaning[] tyres, string one, string many)
    {
        BindingKind[] kinds = [.. tyres.SelectMany(t => t.Bound).Select(b => b.Kind).Distinct()];
        return $"{string.Join(" and ", kinds.Select(BindingTable.Words))} {(kinds is [BindingKind.Battery or BindingKind.Series] ? one : many)}";
    }

    private static string Names(IEnumerable<TyreMeaning> tyres) => string.Join(", ", tyres.Select(t => t.Tyre.Name));
}
