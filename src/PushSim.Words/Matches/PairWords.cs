using PushSim.Analysis.Chance;
using PushSim.Analysis.Statistics;
using PushSim.Words.Tables;

namespace PushSim.Words.Matches;

/// <summary>What is unknown once and what varies each time, in words: how often plausible pairs of robots win, and bouts of several matches.</summary>
public static class PairWords
{
    /// <summary>Bouts that are told, as far as each pair has so many matches [1].</summary>
    public static IReadOnlyList<int> Bouts { get; } = [3, 5, 7];

    /// <summary>One sentence for the verdict.</summary>
    /// <param name="pairs">The pairs.</param>
    public static string Verdict(PairOdds pairs) => Text($"{pairs.Always + pairs.Never} of {pairs.Pairs.Count} plausible pairs of robots give one winner in all {pairs.Tries} matches.");

    /// <summary>The table.</summary>
    /// <param name="pairs">The pairs.</param>
    /// <param name="robot">Name of the robot.</param>
    /// <param name="tally">All matches that were drawn.</param>
    public static AnswerTable Table(PairOdds pairs, string robot, Tally tally)
    {
        AnswerTable table = new AnswerTable("Unknown once, or another each time").AddColumn("What").AddNumberColumn("Share").AddColumn("Counting error, 95 %");
        Count($"pairs in which {robot} wins all {pairs.Tries}", pairs.Always);
        Count("pairs in which it wins some", pairs.Pairs.Count - pairs.Always - pairs.Never);
        Count("pairs in which it wins none", pairs.Never);
        foreach (int n in Bouts.Where(n => n <= pairs.Tries))
        {
            Statistics(Text($"{robot} wins best of {n}"), pairs.BestOf(n, tally));
        }

        return table.AddRow("of a win, what is unknown once", Percent(pairs.UnknownShare), "").AddRemark(
            Text($"{pairs.Pairs.Count} plausible pairs, each with the values that are unknown once (grip, mass, motors), fought {pairs.Tries} times with what varies each time (start, sticks, charge, dust). best of 3: more wins than losses in three matches, and so on"),
            isAside: true);

        void Count(string what, int count)
        {
            Bounds b = ShareInterval.Wilson(count, pairs.Pairs.Count);
            table.AddRow(what, Percent((double)count / pairs.Pairs.Count), Ends(b.Low, b.High));
        }

        void Statistics(string what, Interval share) => table.AddRow(what, Percent(share.Value), Ends(share.Low, share.High));
    }

    private static string Ends(double low, double high) => Text($"{100.0 * low:0.0} to {100.0 * high:0.0} %");

    private static string Percent(double share) => Text($"{100.0 * share:0.0} %");
}
