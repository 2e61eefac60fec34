using PushSim.Analysis.Statistics;
using Spectre.Console;

namespace PushSim.Cli.Advise;

/// <summary>Advice as text for a person.</summary>
internal static class AdviseText
{
    private const int Shown = 6;
    private const int MostNotes = 2;

    // A change that adds no grams, or costs nothing, is weighed as if it were this much, so that the larger gain goes first [g], [1].
    private const double LeastGrams = 1.0, LeastPrice = 0.5;

    /// <summary>The changes in the order that was asked for: surely good ones first, by gain per gram or price, then the rest by gain.</summary>
    public static IReadOnlyList<(AdviceChange Change, Interval Gain, long Matches)> Ranked(AdviceResult r, string per) =>
        [.. r.Changes.OrderByDescending(c => c.Gain.Low > 0.0).ThenByDescending(c => c.Gain.Low > 0.0 ? Worth(c.Change, c.Gain.Value, per) : c.Gain.Value)];

    public static string Verdict(AdviceResult r, string per)
    {
        string now = FormattableString.Invariant($"{r.Robot} wins {100.0 * r.WinShare.Value:0} of 100 against {string.Join(", ", r.Opponents)}");
        return Ranked(r, per) is [var first, ..] && first.Gain.Low > 0.0
            ? FormattableString.Invariant($"{now}; change first: {first.Change.Name}, {Points(first.Gain)} points of win share{Cost(first.Change)}.")
            : $"{now}; no change is shown to make that better.";
    }

    public static void Write(TextWriter output, AdviceResult r, string per, bool details)
    {
        IAnsiConsole console = CommandText.Console(output);
        CommandText.Wrapped(console, Verdict(r, per), Decoration.Bold);
        console.WriteLine();
        if (details)
        {
            CommandText.Write(console, Table(r, per));
        }
        else
        {
            (AdviceChange Change, Interval Gain, long Matches)[] few = [.. Ranked(r, per).Take(Shown)];
            int name = Math.Min(38, few.Select(c => c.Change.Name.Length).DefaultIfEmpty(0).Max());
            foreach ((AdviceChange change, Interval gain, _) in few)
            {
                CommandText.Line(console, Cut($"  {Cut(change.Name, name).PadRight(name)}  {Points(gain),4} ({100.0 * gain.Low:+0;-0;0} to {100.0 * gain.High:+0;-0;0})  {Short(change)}", WrappedText.Width));
            }
        }

        console.WriteLine();
        foreach ((AdviceChange a, AdviceChange b, Interval together, Interval beyond) in r.Pairs.Take(details ? int.MaxValue : 2))
        {
            CommandText.Wrapped(console, FormattableString.Invariant($"Together {a.Name} and {b.Name} bring {Points(together)} points, {Math.Abs(100.0 * beyond.Value):0} {(beyond.Value > 0.0 ? "more" : "less")} than their sum."));
        }

        if (r.Measurements.Count > 0)
        {
            CommandText.Wrapped(console, "Measure next: " + string.Join("; ", r.Measurements.Take(details ? int.MaxValue : 2).Select(m => FormattableString.Invariant($"{m.What} (moves the share by {100.0 * m.Narrows:0.#} points, {m.Minutes:0} min)"))) + ".");
        }
        else
        {
            CommandText.Wrapped(console, "Measure next: no single value stands out of the doubt at this many matches.");
        }

        foreach (string note in r.Notes.Take(details ? int.MaxValue : MostNotes))
        {
            CommandText.Wrapped(console, "note: " + note);
        }

        CommandText.Line(console, details ? Cautions.OfPredictions : "All changes: --details. Predictions are estimates; points are of 100 matches.", Decoration.Dim);
    }

    /// <summary>All changes.</summary>
    public static AnswerTable Table(AdviceResult r, string per)
    {
        AnswerTable table = new AnswerTable("Changes").AddColumn("change").AddNumberColumn("points").AddNumberColumn("95 % interval").AddNumberColumn("grams").AddNumberColumn("price").AddNumberColumn("matches");
        foreach ((AdviceChange change, Interval gain, long matches) in Ranked(r, per))
        {
            table.AddRow(change.Name, Points(gain), FormattableString.Invariant($"{100.0 * gain.Low:+0.0;-0.0;0.0} to {100.0 * gain.High:+0.0;-0.0;0.0}"), change.Grams?.ToString("0", CultureInfo.InvariantCulture) ?? "?", change.Price?.ToString("0.##", CultureInfo.InvariantCulture) ?? "?", matches.ToString(CultureInfo.InvariantCulture));
        }

        return table;
    }

    // what costs an unknown sum goes behind what costs a known one
    private static double Worth(AdviceChange c, double gain, string per) => per switch
    {
        "gram" => c.Grams is double g ? gain / Math.Max(LeastGrams, g) : gain * 1e-6,
        "price" => c.Price is double p ? gain / Math.Max(LeastPrice, p) : gain * 1e-6,
        _ => gain,
    };

    private static string Points(Interval gain) => (100.0 * gain.Value).ToString("+0;-0;0", CultureInfo.InvariantCulture);

    private static string Cost(AdviceChange c) => c.Grams is double g && Math.Abs(g) >= 0.5 ? FormattableString.Invariant($" for {g:0} g") : "";

    private static string Short(AdviceChange c) => $"{(c.Grams is double g ? g.ToString("+0;-0;0", CultureInfo.InvariantCulture) : "?")} g, price {(c.Price is double p ? p.ToString("0.##", CultureInfo.InvariantCulture) : "?")}";

    private static string Cut(string text, int most) => text.Length <= most ? text : text[..(most - 1)] + "…";
}
