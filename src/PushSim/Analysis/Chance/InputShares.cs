using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Chance;

/// <summary>Which drawn inputs matter by themselves, told from the matches alone.</summary>
/// <param name="Told">Inputs above noise, largest first.</param>
/// <param name="Rest">Share of the variance that these do not carry: what inputs do only together with others, and inputs that are not told from noise; with the 95 % interval [1].</param>
public sealed record InputShares(IReadOnlyList<InputShare> Told, Interval Rest)
{
    /// <summary>The same of who wins [1].</summary>
    public Interval RestOfWinning { get; init; } = new(1.0, 0.0, 1.0);

    /// <summary>How many of the first of <see cref="Told"/> are not told apart from the very first: the largest share is one of theirs [1].</summary>
    public int Tied { get; init; }

    // Shares of the variance below this are not worth a line [1].
    private const double LeastShare = 0.01;

    /// <summary>Matches that are looked at, those of the lowest numbers: draws do not hang on each other, so these are a sample as good as any, and shares of 1 % stand out from its noise [1].</summary>
    public const int Most = 100_000;

    /// <summary>What the matches tell.</summary>
    /// <param name="source">What was drawn.</param>
    /// <param name="ends">The matches by number; failed ones are left out.</param>
    public static InputShares Of(IDrawnMatches source, IEnumerable<MatchEnd> ends)
    {
        MatchEnd[] good = [.. ends.Where(o => !o.HasFailed).Take(Most)];
        double[] ground = [.. good.Select(o => o.GroundGained)];
        double[] won = [.. good.Select(o => o.Winner == 0 ? 1.0 : 0.0)];
        IReadOnlyList<string> causes = source.Causes;
        double[][] inputs = [.. causes.Select(_ => new double[good.Length])];
        for (int m = 0; m < good.Length; m++)
        {
            double[] values = source.CausesOf(good[m].Number);
            for (int i = 0; i < values.Length; i++)
            {
                inputs[i][m] = values[i];
            }
        }

        double noise = Math.Max(LeastShare, Sensitivity.NoiseLevel(good.Length, 2 * causes.Count));
        double[] moves = new double[good.Length];
        double[] movesWon = new double[good.Length];
        double[] together = new double[good.Length];
        double[] togetherWon = new double[good.Length];
        List<(InputShare Input, double[] Moves)> told = [];
        for (int i = 0; i < inputs.Length; i++)
        {
            double share = Sensitivity.FirstOrder(inputs[i], ground, moves);
            double ofWon = Sensitivity.FirstOrder(inputs[i], won, movesWon);
            if (share <= noise && ofWon <= noise)
            {
                continue;
            }

            told.Add((new InputShare(causes[i], Around(share, Sensitivity.Scatter(moves))) { OfWinning = Around(ofWon, Sensitivity.Scatter(movesWon)) }, [.. moves]));
            for (int m = 0; m < moves.Length; m++)
            {
                together[m] += moves[m];
                togetherWon[m] += movesWon[m];
            }
        }

        told = [.. told.OrderByDescending(t => t.Input.Share.Value)];
        double rest = Math.Max(0.0, 1.0 - told.Sum(t => t.Input.Share.Value));
        double restWon = Math.Max(0.0, 1.0 - told.Sum(t => t.Input.OfWinning.Value));
        return new InputShares([.. told.Select(t => t.Input)], told.Count == 0 ? new Interval(1.0, 0.0, 1.0) : Around(rest, Sensitivity.Scatter(together)))
        {
            RestOfWinning = told.Count == 0 ? new Interval(1.0, 0.0, 1.0) : Around(restWon, Sensitivity.Scatter(togetherWon)),
            Tied = told.TakeWhile(t => told[0].Input.Share.Value - t.Input.Share.Value <= Sensitivity.Scatter([.. told[0].Moves.Zip(t.Moves, (a, b) => a - b)])).Count(),
        };
    }

    private static Interval Around(double share, double half) => new(share, Math.Max(0.0, share - half), Math.Min(1.0, share + half));
}
