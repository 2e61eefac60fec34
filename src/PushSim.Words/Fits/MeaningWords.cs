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

    /// <summary>One sentence for the verdict: who wins most shoves, or what limits, and what stronger motors would add where that is asked; empty if nothing was run.</summary>
    public static string Verdict(RobotMeaning r)
    {
        TyreMeaning[] own = [.. r.Tyres.Where(t => !t.IsStronger)];
        if (own.Length == 0)
        {
            return "";
        }

        TyreMeaning? best = own.Where(t => t.WinShare is not null).MaxBy(t => t.Shoves!.Share(t.Shoves.Wins));
        string shoves = best is null ? "" : Text($" With {best.Tyre.Name} {r.Robot} wins {(best.Tyre.IsAtLeast ? "at least " : "")}{100.0 * best.Shoves!.Share(best.Shoves.Wins):0} % of the shoves against {r.Opponent}{NotSure(own, best)}.");
        return shoves + " " + Limits(own, r.Robot) + (r.Stronger is not null && own.Any(t => t.IsOpen) ? " " + Gain(r) : "");
    }

    /// <summary>What binds, and what therefore changes nothing.</summary>
    public static string Limits(TyreMeaning[] tyres, string robot)
    {
        TyreMeaning[] known = [.. tyres.Where(t => t.Bound.Count > 0)];
        if (known.Length == 0)
        {
            return $"What limits {robot} is not known.";
        }

        TyreMeaning[] open = [.. known.Where(t => t.IsOpen)];
        TyreMeaning[] sure = [.. known.Except(open)];
        return (sure.Length > 0 ? Sure(sure, robot, known.Length == sure.Length) : "") + (sure.Length > 0 && open.Length > 0 ? " " : "") + Open(open, robot);
    }

    // Of tyres of which the friction is known, or known to be enough
    private static string Sure(TyreMeaning[] known, string robot, bool isAll)
    {
        TyreMeaning[] slide = [.. known.Where(t => t.IsHeldByTyres && t.Bound.Count == 1)];
        TyreMeaning[] hold = [.. known.Where(t => !t.IsHeldByTyres)];
        TyreMeaning[] both = [.. known.Where(t => t.IsHeldByTyres && t.Bound.Count > 1)];
        string every = known.Length == 1 || !isAll ? "on " + Names(known) : "on every one of these tyres";
        if (hold.Length == known.Length)
        {
            return Text($"The {Who(hold, "limits", "limit")} {robot} {every} ({Newton(hold.Max(t => t.MotorForce))}, the tyres hold {Newton(hold.Min(t => t.TyreForce))}{(known.Length > 1 || hold.Any(t => t.Tyre.IsAtLeast) ? " or more" : "")}): better tyres change nothing in its push.");
        }

        if (slide.Length == known.Length)
        {
            return Text($"The tyres limit {robot} {every} ({Newton(slide.Max(t => t.TyreForce))}{(known.Length > 1 ? " at most" : "")}, the motors could give {Newton(slide.Min(t => t.MotorForce))}): a stronger motor changes nothing in its standing push.");
        }

        List<string> parts = slide.Length > 0 ? [$"the tyres limit {robot} on {Names(slide)}"] : [];
        parts.AddRange(both.GroupBy(t => string.Join(", then the ", t.Bound.Select(b => BindingTable.Words(b.Kind)))).Select(g => $"on {Names(g)} the {g.Key} do"));
        parts.AddRange(hold.Length > 0 ? [$"on {Names(hold)} the {Who(hold, "does", "do")}: more grip than that of {hold.MinBy(t => t.TyreForce)!.Tyre.Name} changes nothing in its push"] : []);
        string all = string.Join("; ", parts);
        return $"{(slide.Length > 0 ? "" : $"What limits {robot}: ")}{(slide.Length > 0 ? char.ToUpperInvariant(all[0]) : all[0])}{all[1..]}.";
    }

    // "12.9 N or 1315 gf", inside brackets
    private static string Newton(double force) => Text($"{force:0.0} N or {ForceWords.Scale(force)}");

    // Of tyres that bind at a friction which is only a lower bound
    private static string Open(TyreMeaning[] open, string robot) => open.Length == 0 ? ""
        : $"What limits {robot} on {Names(open)} is not known: it pushes {string.Join("; ", open.Select(t => Between(t, open.Length > 1)))}.";

    private static string Between(TyreMeaning t, bool isNamed) =>
        Text($"at least {t.Push.Low:0.0} N{(isNamed ? " on " + t.Tyre.Name : "")}, at most what a drag test would show (the motors could give {t.Push.High:0.0} N)");

    /// <summary>What stronger motors add, and what takes over.</summary>
    public static string Gain(RobotMeaning r)
    {
        List<string> more = [];
        List<string> nothing = [];
        List<TyreMeaning> open = [];
        List<TyreMeaning> held = [];
        foreach (TyreMeaning own in r.Tyres.Where(t => !t.IsStronger))
        {
            TyreMeaning strong = r.Tyres.First(t => t.IsStronger && t.Tyre == own.Tyre);
            double gain = strong.Push.Low - own.Push.Low;
            bool hasMore = strong.MotorForce - own.MotorForce >= LeastGain;
            if (hasMore && strong.IsOpen)
            {
                open.Add(strong);
            }
            else if (double.IsFinite(gain))
            {
                (Math.Abs(gain) < LeastGain ? nothing : more).Add(Math.Abs(gain) < LeastGain ? own.Tyre.Name : Text($"{gain:+0.0;-0.0} N on {own.Tyre.Name}{(!own.IsHeldByTyres && strong.IsHeldByTyres ? ", where now the tyres limit" : "")}"));
                held.AddRange(hasMore ? [] : [strong]);
            }
        }

        string limit = held.Count == 0 ? "" : Text($" The controllers or the battery hold the stronger motors to the same {held[0].MotorForce:0.0} N.");
        string adds = more.Count == 0 ? open.Count == 0 ? "nothing on any tyre" : "nothing on " + string.Join(", ", nothing) : string.Join("; ", more) + (nothing.Count > 0 ? "; nothing on " + string.Join(", ", nothing) : "");
        string sure = more.Count + nothing.Count > 0 || open.Count == 0 ? Text($"Motors of {r.Stronger:0.##} times the stall torque add to the standing push: {adds}.{limit}") : "";
        return open.Count == 0 ? sure
            : Text($"With motors of {r.Stronger:0.##} times the stall torque the standing push is {string.Join("; ", open.Select(t => Between(t, isNamed: r.Tyres.Count > 2)))}.{(sure.Length > 0 ? " " : "")}") + sure;
    }

    private static string NotSure(TyreMeaning[] tyres, TyreMeaning best)
    {
        Tally first = best.Shoves!;
        bool IsClose(TyreMeaning t) => t.Tyre.IsAtLeast || (t.Shoves is { Matches: > 0 } s && ShareInterval.OfTwo(first.Wins, first.Matches, s.Wins, s.Matches).Low <= 0.0);
        string[] close = [.. tyres.Where(t => t != best && t.WinShare is not null && IsClose(t)).Select(t => t.Tyre.Name)];
        return close.Length == 0 ? "" : $", no surer than with {string.Join(", ", close)}";
    }

    private static string Who(TyreMeaning[] tyres, string one, string many)
    {
        BindingKind[] kinds = [.. tyres.SelectMany(t => t.Bound).Select(b => b.Kind).Distinct()];
        return $"{string.Join(" and ", kinds.Select(BindingTable.Words))} {(kinds is [BindingKind.Battery or BindingKind.Series] ? one : many)}";
    }

    private static string Names(IEnumerable<TyreMeaning> tyres) => string.Join(", ", tyres.Select(t => t.Tyre.Name));
}
