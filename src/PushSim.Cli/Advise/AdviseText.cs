using PushSim.Analysis.Statistics;

namespace PushSim.Cli.Advise;

/// <summary>Advice in words, as a card and in tables; all in the one order that was asked for.</summary>
internal static class AdviseText
{
    private const int MostOfName = 34;
    private const int MostNotes = 2;
    private const int MostMeasured = 2;

    /// <summary>How the intervals are meant.</summary>
    private const string Intervals = "Intervals: 95 % sure for all changes together, on the same draws, match by match; of a measurement 95 % for itself.";

    /// <summary>How often it wins now, and what to change first.</summary>
    public static string Verdict(AdviceResult r, AdviceOrder order)
    {
        string ends = $"{Of100(r.WinShare.Low)} to {Of100(r.WinShare.High)}";
        string played = FormattableString.Invariant($"{r.Matches} matches{(r.Opponents.Count > 1 ? " each" : "")}");
        string others = string.Join(", ", r.Opponents);
        string now = $"{r.Robot} wins {Of100(r.WinShare.Value)} of 100 ({ends}, {played}) against {others}";
        return order.Of(r) is [var first, ..] && AdviceOrder.IsSure(first.Gain)
            ? $"{now}; change first: {first.Change.Name}, {Points(first.Gain)} points {Ends(first.Gain)}{Cost(first.Change)}."
            : r.WinShare.Value >= 1.0 ? $"{now}; there is nothing to gain: try a harder opponent."
            : $"{now}; no change is shown to make that better.";
    }

    /// <summary>The card.</summary>
    /// <param name="r">The advice.</param>
    /// <param name="order">Its order.</param>
    /// <param name="more">The command that plays more matches.</param>
    public static AnswerCard Card(AdviceResult r, AdviceOrder order, Suggestion more)
    {
        IReadOnlyList<(AdviceChange Change, Interval Gain, long Matches)> ranked = order.Of(r);
        bool isSure = ranked.Count > 0 && AdviceOrder.IsSure(ranked[0].Gain);
        return new AnswerCard(Verdict(r, order))
        {
            Facts = string.Join(' ', Facts(r, ranked)),
            Numbers =
            [
                .. ranked.Take(AnswerCard.MostNumbers)
                    .Select(c => new CardNumber(Cut(c.Change.Name), $"{Points(c.Gain)} {Ends(c.Gain)}", Short(c.Change))),
            ],
            Sure = "95 % for all changes together, on the same draws; points are of 100 matches. " + order.Words,
            Next = Measure(r, MostMeasured),
            Suggestions = isSure || r.WinShare.Value >= 1.0 ? [] : [more],
        };
    }

    public static void Write(
        TextWriter output, AdviceResult r, AdviceOrder order, Suggestion more, IReadOnlyList<string> files, bool isDetailed) =>
        new CommandAnswer(Card(r, order, more), Verdict(r, order))
        {
            Tables = Tables(r, order),
            Files = files,
            Notes = [.. r.Notes.Select(n => "note: " + n)],
            Warnings = isDetailed ? [] : [.. r.Notes.Take(MostNotes)],
        }.Write(output, isDetailed);

    /// <summary>Changes, pairs and measurements.</summary>
    public static IReadOnlyList<AnswerTable> Tables(AdviceResult r, AdviceOrder order) => [Changes(r, order), Pairs(r), Measurements(r)];

    private static AnswerTable Changes(AdviceResult r, AdviceOrder order)
    {
        AnswerTable table = new AnswerTable("Changes").AddColumn("change").AddNumberColumn("points").AddNumberColumn("interval")
            .AddNumberColumn("grams").AddNumberColumn("price").AddNumberColumn("matches");
        if (order != AdviceOrder.Points)
        {
            table.AddNumberColumn(order == AdviceOrder.Gram ? "points a gram" : "points for the price");
        }

        foreach ((AdviceChange change, Interval gain, long matches) in order.Of(r))
        {
            string[] worth = order == AdviceOrder.Points ? [] : [Known(100.0 * order.Worth(change, gain), "0.##")];
            table.AddRow([change.Name, Points(gain), Bounds(gain), Known(change.Grams, "0"), Known(change.Price, "0.##"), Known(matches, "0"), .. worth]);
        }

        return table.AddRemark(order.Words).AddRemark(Intervals, isAside: true);
    }

    private static AnswerTable Pairs(AdviceResult r)
    {
        AnswerTable table = new AnswerTable("Pairs that interact") { IsFolded = true }.AddColumn("pair").AddNumberColumn("together").AddNumberColumn("interval")
            .AddNumberColumn("beyond the first").AddNumberColumn("interval").AddNumberColumn("beyond the sum").AddNumberColumn("interval");
        foreach (AdvicePair p in r.Pairs)
        {
            string pair = $"{p.First.Name} + {p.Second.Name}";
            table.AddRow(pair, Points(p.Together), Bounds(p.Together), Points(p.BeyondFirst), Bounds(p.BeyondFirst), Points(p.Beyond), Bounds(p.Beyond));
        }

        return table.AddRemarks(Told(r));
    }

    private static AnswerTable Measurements(AdviceResult r)
    {
        AnswerTable table = new AnswerTable("What to measure, most for a minute first") { IsFolded = true }
            .AddColumn("measurement").AddNumberColumn("moves the share by, points").AddNumberColumn("interval").AddNumberColumn("minutes");
        foreach ((string what, Interval narrows, double minutes) in r.Measurements)
        {
            table.AddRow(what, Number(narrows.Value), $"{Number(narrows.Low)} to {Number(narrows.High)}", minutes.ToString("0", CultureInfo.InvariantCulture));
        }

        return r.Measurements.Count > 0 ? table : table.AddRemark(Measure(r, MostMeasured));
    }

    private static IEnumerable<string> Facts(AdviceResult r, IReadOnlyList<(AdviceChange Change, Interval Gain, long Matches)> ranked)
    {
        (AdviceChange? Change, Interval Gain, long Matches) most = ranked.Where(c => AdviceOrder.IsSure(c.Gain)).OrderByDescending(c => c.Gain.Value).FirstOrDefault();
        if (most.Change is not null && most.Change != ranked[0].Change)
        {
            yield return $"The largest sure gain: {most.Change.Name}, {Points(most.Gain)} {Ends(most.Gain)}{Cost(most.Change)}.";
        }

        foreach (string pair in Told(r).Take(1))
        {
            yield return Clauses.Sentence(pair);
        }
    }

    // each pair as a sentence, or that gains add up
    private static IEnumerable<string> Told(AdviceResult r)
    {
        foreach (AdvicePair p in r.Pairs)
        {
            string first = p.BeyondFirst.Low > 0.0 ? $"{Points(p.BeyondFirst)} {Ends(p.BeyondFirst)} beyond {p.First.Name} alone"
                : p.BeyondFirst.High < 0.0 ? $"{Points(p.BeyondFirst)} {Ends(p.BeyondFirst)} against {p.First.Name} alone: do not do both"
                : $"no more than {p.First.Name} alone ({Bounds(p.BeyondFirst)})";
            yield return $"{p.First.Name} with {p.Second.Name}: {Points(p.Together)} {Ends(p.Together)} together, {first}.";
        }

        if (r.PairsTried > r.Pairs.Count)
        {
            int rest = r.PairsTried - r.Pairs.Count;
            string which = r.Pairs.Count > 0 ? FormattableString.Invariant($"{rest} other {(rest == 1 ? "pair is" : "pairs are")}")
                : rest == 1 ? "The pair of the best changes is" : FormattableString.Invariant($"The {rest} pairs of the best changes are");
            yield return which + " not shown to bring more or less than the sum.";
        }
    }

    private static string Measure(AdviceResult r, int most) => r.Measurements.Count == 0
        ? "no single value to measure stands out of the doubt at this many matches."
        : string.Join("; ", r.Measurements.Take(most).Select(Measure)) + ".";

    private static string Measure((string What, Interval Narrows, double Minutes) m) => FormattableString.Invariant(
        $"{m.What} (moves the share by {Number(m.Narrows.Value)} points, {Number(m.Narrows.Low)} to {Number(m.Narrows.High)}; {m.Minutes:0} min)");

    private static string Known(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "?";

    private static string Of100(double share) => (100.0 * share).ToString("0", CultureInfo.InvariantCulture);

    private static string Number(double share) => (100.0 * share).ToString("0.#", CultureInfo.InvariantCulture);

    private static string Points(Interval gain) => (100.0 * gain.Value).ToString("+0;-0;0", CultureInfo.InvariantCulture);

    private static string Ends(Interval gain) => $"({Bounds(gain)})";

    private static string Bounds(Interval gain) => FormattableString.Invariant($"{100.0 * gain.Low:+0;-0;0} to {100.0 * gain.High:+0;-0;0}");

    private static string Cost(AdviceChange c) =>
        c.Grams is double g ? Math.Abs(g) >= 0.5 ? FormattableString.Invariant($" for {g:0} g") : "" : ", mass not known";

    private static string Short(AdviceChange c) =>
        $"{(c.Grams is double g ? g.ToString("0 g;-0 g;0 g", CultureInfo.InvariantCulture) : "mass ?")}, price {Known(c.Price, "0.##")}";

    private static string Cut(string text) => text.Length <= MostOfName ? text : text[..(MostOfName - 1)] + "…";
}
