using PushSim.Analysis.Chance;
using PushSim.Analysis.Statistics;
using PushSim.Words.Tables;

namespace PushSim.Words.Matches;

/// <summary>Drawn matches of two robots in tables: who wins, what decided, which inputs matter.</summary>
public static class OddsTables
{
    /// <summary>The tables, the outcome first.</summary>
    /// <param name="robot">Name of the robot.</param>
    /// <param name="opponent">Name of its opponent.</param>
    /// <param name="tally">The matches.</param>
    /// <param name="inputs">Which inputs matter by themselves, named in plain words [1].</param>
    /// <param name="effects">What each input does together with others, largest first; empty if not asked.</param>
    /// <param name="start">The matches in the three orders of starts; null for none.</param>
    /// <param name="pairs">Plausible pairs; null for none.</param>
    /// <param name="throttles">The throttle at which each pushes hardest; null for none.</param>
    public static IReadOnlyList<AnswerTable> Of(string robot, string opponent, Tally tally, InputShares inputs, IReadOnlyList<InputEffect> effects, StartOdds? start = null, PairOdds? pairs = null, IReadOnlyList<BestThrottle?>? throttles = null) =>
        [Remarked(start is null ? Shares(robot, opponent, tally) : Shares(robot, opponent, tally).AddRemark(StartWords.Of(start, robot)), throttles ?? [], [robot, opponent]), .. pairs is null ? Array.Empty<AnswerTable>() : [PairWords.Table(pairs, robot, tally)], Decisions(robot, opponent, tally), .. inputs.Told.Count > 0 ? [Mattering(inputs, effects.Count > 0)] : Array.Empty<AnswerTable>(), .. effects.Count > 0 ? [Together(effects)] : Array.Empty<AnswerTable>()];

    private static AnswerTable Remarked(AnswerTable table, IReadOnlyList<BestThrottle?> throttles, string[] names) => table.AddRemarks(throttles.Select((t, k) => ThrottleWords.Best(t, names[k])).Where(t => t.Length > 0));

    /// <summary>Designs side by side on the same draws, the first one first.</summary>
    /// <param name="designs">Label and matches of each.</param>
    /// <param name="comparisons">The first compared with each of the others.</param>
    public static AnswerTable Designs(IReadOnlyList<(string Label, Tally Tally)> designs, IReadOnlyList<OddsDifference> comparisons)
    {
        AnswerTable table = new AnswerTable("Side by side").AddColumn("Design").AddNumberColumn("wins").AddNumberColumn("losses").AddNumberColumn("stalemates").AddNumberColumn("wins more").AddColumn("95 % interval");
        for (int k = 0; k < designs.Count; k++)
        {
            (string label, Tally t) = designs[k];
            string more = "";
            string sure = "";
            if (k > 0)
            {
                // a comparison tells how much more the first wins
                OddsDifference c = comparisons[k - 1];
                string worth = c.Bounds.Holds(0.0) ? "may be chance" : c.Difference < 0.0 ? "better" : "worse";
                more = Text($"{-100.0 * c.Difference:+0.0;-0.0;0.0} %");
                sure = Text($"{-100.0 * c.Bounds.High:+0.0;-0.0;0.0} to {-100.0 * c.Bounds.Low:+0.0;-0.0;0.0} %, {worth}");
            }

            table.AddRow(label, Percent(t.Share(t.Wins)), Percent(t.Share(t.Losses)), Percent(t.Share(t.Stalemates)), more, sure);
        }

        return table.AddRemark($"wins more: than {designs[0].Label}, in percentage points on the same draws", isAside: true);
    }

    private static AnswerTable Mattering(InputShares inputs, bool hasEffects)
    {
        AnswerTable table = new AnswerTable("What matters most by itself").AddColumn("Input").AddNumberColumn("Of the ground").AddColumn("95 %").AddNumberColumn("Of winning").AddColumn("95 %");
        foreach (InputShare i in inputs.Told.Append(new InputShare(OddsWords.Rest, inputs.Rest) { OfWinning = inputs.RestOfWinning }))
        {
            table.AddRow(i.Name, Percent(i.Share.Value), Ends(i.Share), Percent(i.OfWinning.Value), Ends(i.OfWinning));
        }

        if (inputs.Tied > 1)
        {
            table.AddRemark($"the first {inputs.Tied} are not told apart: any of them may matter most");
        }

        return table.AddRemark(
            "by itself: how much less the ground gained, and who wins, would vary if this one input were known" + (hasEffects ? "" : "; what an input does only together with others, --effects tells"), isAside: true);
    }

    private static AnswerTable Together(IReadOnlyList<InputEffect> effects)
    {
        AnswerTable table = new AnswerTable("What matters together with others").AddColumn("Input").AddNumberColumn("Of the ground").AddColumn("95 %").AddNumberColumn("Of winning").AddColumn("95 %");
        foreach (InputEffect e in effects)
        {
            table.AddRow(e.Key, Percent(e.Share), Ends(new Interval(e.Share, e.Bounds.Low, e.Bounds.High)), Percent(e.OfWinning.Value), Ends(e.OfWinning));
        }

        return table.AddRemark(
            "what it has a hand in: how much the ground gained, and who wins, would still vary if all inputs but this one were known. Little by itself and much here: what it does depends on the others, as when it takes two small errors to tip a robot. Shared effects count for each input that has a hand in them, so these shares may add up to more than 100 %",
            isAside: true);
    }

    private static string Ends(Interval i) => Text($"{100.0 * i.Low:0.0} to {100.0 * i.High:0.0} %");

    private static AnswerTable Shares(string robot, string opponent, Tally t)
    {
        AnswerTable table = new AnswerTable("Outcome").AddColumn("Who").AddNumberColumn("Matches").AddNumberColumn("Share").AddColumn("Counting error, 95 %");
        Row($"{robot} wins", t.Wins, t.WinInterval);
        Row($"{opponent} wins", t.Losses, t.LossInterval);
        Row("stalemate", t.Stalemates, t.StalemateInterval);
        Bounds lead = t.LeadInterval;
        table.AddRow("wins less losses", "", Text($"{100.0 * (t.Share(t.Wins) - t.Share(t.Losses)):+0.0;-0.0;0.0} %"), Text($"{100.0 * lead.Low:+0.0;-0.0;0.0} to {100.0 * lead.High:+0.0;-0.0;0.0} %"));
        return table;

        void Row(string name, long count, Bounds i) =>
            table.AddRow(name, count.ToString(CultureInfo.InvariantCulture), Percent(t.Share(count)), Text($"{100.0 * i.Low:0.0} to {100.0 * i.High:0.0} %"));
    }

    private static AnswerTable Decisions(string robot, string opponent, Tally t)
    {
        AnswerTable table = new AnswerTable("What decided").AddColumn("Ending").AddColumn("Held back").AddNumberColumn("Matches").AddNumberColumn("Share");
        foreach ((Decision d, long count) in t.Decisions)
        {
            (string won, string lost) = d.Winner == 1 ? (opponent, robot) : (robot, opponent);
            string words = d.Ending switch
            {
                ShoveEnding.Line => $"{won} pushes {lost} over the line",
                ShoveEnding.Ground => $"{won} has gained ground when time is up",
                ShoveEnding.Tips => d.Winner < 0 ? "both tip over or lose the floor" : $"{lost} tips over or loses the floor",
                _ => "nobody gains ground",
            };
            table.AddRow(words, string.Join("; ", new[] { Held(robot, d.Limit), Held(opponent, d.OpponentLimit) }.OfType<string>()), count.ToString(CultureInfo.InvariantCulture), Percent(t.Share(count)));
        }

        return t.Decisions.Any(d => d.Decision.Ending == ShoveEnding.Tips)
            ? table.AddRemark("tilted or lifted: decides whatever ground was gained, so the loser may have gained some", isAside: true)
            : table;
    }

    private static string? Held(string robot, BindingKind? limit) => limit is BindingKind l ? $"{robot} by its {BindingTable.Words(l)}" : null;

    private static string Percent(double share) => Text($"{100.0 * share:0.0} %");
}
