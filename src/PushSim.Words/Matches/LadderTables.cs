using PushSim.Analysis.Ladder;
using PushSim.Analysis.Statistics;
using PushSim.Words.Tables;

namespace PushSim.Words.Matches;

/// <summary>A ladder in tables.</summary>
public static class LadderTables
{
    /// <summary>The tables, for screen and page: the square and the ranking, with the cycles and what all matches share under it.</summary>
    /// <param name="robots">Names of the robots.</param>
    /// <param name="ladder">Who beats whom.</param>
    /// <param name="setting">What all matches share, in a sentence.</param>
    public static IReadOnlyList<AnswerTable> Of(IReadOnlyList<string> robots, LadderTable ladder, string setting)
    {
        IReadOnlyList<int> order = Order(ladder);
        AnswerTable square = new AnswerTable("Wins against").AddColumn("Robot");
        foreach (int column in order)
        {
            square.AddNumberColumn(robots[column]);
        }

        foreach (int row in order)
        {
            square.AddRow([robots[row], .. order.Select(c => ladder.WinShares[row][c] is double s ? Text($"{100.0 * s:0} %") : "")]);
        }

        AnswerTable ranking = new AnswerTable("Rank").AddColumn("Rank").AddColumn("Robot").AddNumberColumn("Score").AddColumn("95 % interval").AddNumberColumn("Group").AddNumberColumn("Chance of this rank");
        foreach (((int robot, double score, double low, double high), int i) in ladder.Ranking.Select((x, i) => (x, i)))
        {
            ranking.AddRow(Text($"{i + 1}"), robots[robot], Text($"{score:0}"), IntervalWords.Of(new Interval(score, low, high), "0"), Text($"{ladder.Groups[i]}"), Text($"{100.0 * ladder.RankChances[i]:0} %"));
        }

        if (ladder.Ranking.Count > 0)
        {
            ranking.AddRemark("group: robots of one group are not told apart, all pairs at once at 95 %; chance: as far as the count of matches tells", isAside: true);
        }

        foreach (Cycle c in ladder.Cycles)
        {
            ranking.AddRemark($"{(c.IsSure ? "cycle" : "perhaps a cycle (a lead may be chance)")}: {robots[c.First]} beats {robots[c.Second]} beats {robots[c.Third]} beats {robots[c.First]}");
        }

        return [square, ranking.AddRemark(setting)];
    }

    /// <summary>Places of the robots as they are shown: by rank where there is one [1].</summary>
    public static IReadOnlyList<int> Order(LadderTable ladder) => ladder.Ranking.Count > 0 ? [.. ladder.Ranking.Select(x => x.Robot)] : [.. Enumerable.Range(0, ladder.WinShares.Length)];
}
