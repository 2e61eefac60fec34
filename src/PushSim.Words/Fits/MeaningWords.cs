using PushSim.Analysis.Meaning;

namespace PushSim.Words.Fits;

/// <summary>What fitted tyres make of a robot.</summary>
public static class MeaningWords
{
    /// <summary>How well it turns; its key for scripts as well.</summary>
    /// <param name="ease">How well.</param>
    public static string Of(TurnEase ease) => ease switch { TurnEase.Freely => "easily", TurnEase.AtTheLimit => "at the limit", _ => "cannot" };

    /// <summary>What binds, and what therefore changes nothing.</summary>
    /// <param name="tyres">The robot on each tyre.</param>
    /// <param name="robot">Its name.</param>
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

    private static string Who(TyreMeaning[] tyres, string one, string many)
    {
        BindingKind[] kinds = [.. tyres.SelectMany(t => t.Bound).Select(b => b.Kind).Distinct()];
        return $"{string.Join(" and ", kinds.Select(BindingTable.Words))} {(kinds is [BindingKind.Battery or BindingKind.Series] ? one : many)}";
    }

    private static string Names(IEnumerable<TyreMeaning> tyres) => string.Join(", ", tyres.Select(t => t.Tyre.Name));
}
