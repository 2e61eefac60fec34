using PushSim.Analysis.Ladder;
using PushSim.Analysis.Statistics;
using PushSim.Words.Tables;

namespace PushSim.Words.Matches;

/// <summary>The answer card of a ladder.</summary>
public static class LadderCard
{
    /// <summary>The card.</summary>
    /// <param name="names">Names of the robots.</param>
    /// <param name="table">Who beats whom.</param>
    /// <param name="setting">What all matches share, in a sentence.</param>
    /// <param name="matches">Finished matches [1].</param>
    public static AnswerCard Of(IReadOnlyList<string> names, LadderTable table, string setting, long matches)
    {
        if (table.Ranking.Count == 0)
        {
            return new AnswerCard(LadderWords.Verdict(names, table));
        }

        string order = string.Join(", ", table.Ranking.Select(r => names[r.Robot]));
        return new AnswerCard($"{names[table.Ranking[0].Robot]} leads the ladder.")
        {
            Facts = $"The order is {order}.{LadderWords.Circle(names, table)}",
            Numbers = [.. table.Ranking.Take(AnswerCard.MostNumbers).Select((r, i) => new CardNumber($"{i + 1}. {names[r.Robot]}", Text($"{r.Score:0}"), "points", "95 % sure: " + IntervalWords.Of(new Interval(r.Score, r.Low, r.High), "0")))],
            Sure = $"{matches} matches. {(table.IsLeadSure ? $"The lead over {names[table.Ranking[1].Robot]} is more than chance." : $"The lead over {names[table.Ranking[1].Robot]} may be chance.")}",
            Next = table.IsLeadSure ? "" : "more --matches tell them apart; what is played is kept.",
        };
    }
}
