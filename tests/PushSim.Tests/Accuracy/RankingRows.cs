using PushSim.Analysis.Ladder;
using PushSim.Tests.Analysis;

namespace PushSim.Tests.Accuracy;

/// <summary>Strengths from wins, ties, cycles.</summary>
internal static class RankingRows
{
    private const string Agresti = "Agresti, Categorical Data Analysis, 2nd ed., Table 10.11, data from memory; printed with two digits, more computed here";

    private static readonly Lazy<Ranking> s_east = new(RankingTests.East);

    private static AccuracyRow Strength(string team, int index, double strength) => new(
        $"Bradley-Terry, American League East 1987: log strength of {team} against Baltimore", "1", strength, 5e-8, Agresti, () => s_east.Value.LogStrengths[index] - s_east.Value.LogStrengths[6]);

    public static readonly AccuracyRow[] All =
    [
        Strength("Milwaukee", 0, 1.58135588),
        Strength("Toronto", 2, 1.29448512),
        Strength("Cleveland", 5, 0.68385277),
        new("the same season: standard error of Milwaukee's", "1", 0.343256, 1e-6, Agresti, () => s_east.Value.ErrorOfDifference(0, 6)),
        new("the same season: points between first and last", "1", 274.71, 0.01, "computed here from the log strengths, 173.72 points a unit", () => s_east.Value.Score(0).Score - s_east.Value.Score(6).Score),
        new("Davidson, 5 wins, 3 losses, 2 ties: strength ratio", "1", 5.0 / 3.0, 5.0 / 3.0 * 1e-10, "Davidson, JASA 65:317, 1970, from memory; closed form computed here", () => Math.Exp(RankingTests.FiveThreeTwo().LogStrengths[0] - RankingTests.FiveThreeTwo().LogStrengths[1])),
        new("Davidson, 5 wins, 3 losses, 2 ties: tie factor", "1", 0.516398, 1e-6, "Davidson, JASA 65:317, 1970, from memory; closed form computed here", () => RankingTests.FiveThreeTwo().StalemateFactor),
        new("Efron's dice: share of the strongest", "1", 0.2640873, 1e-7, "Gardner, 1970, from memory; computed here", () => RankingTests.DiceShares()[2]),
        new("Efron's dice: share of the weakest", "1", 0.2362988, 1e-7, "Gardner, 1970, from memory; computed here", () => RankingTests.DiceShares()[0]),
        new("cycles among five robots with two wins each", "1", 5.0, 0.0, "Kendall, Babington Smith, Biometrika 31:324, 1940, from memory; computed here", () => Cycles.Find(5, RankingTests.TwoWinsEach()).Count),
    ];
}
