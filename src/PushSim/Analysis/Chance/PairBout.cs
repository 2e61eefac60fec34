namespace PushSim.Analysis.Chance;

/// <summary>Matches of one plausible pair of robots: what is unknown once stayed as it was drawn, what varies each time did not.</summary>
/// <param name="Number">Number of its first match, from 0.</param>
/// <param name="Wins">Matches that the first robot won [1].</param>
/// <param name="Losses">Matches that the opponent won [1].</param>
/// <param name="Stalemates">Matches that nobody won [1].</param>
public sealed record PairBout(long Number, int Wins, int Losses, int Stalemates)
{
    /// <summary>Matches [1].</summary>
    public int Matches => Wins + Losses + Stalemates;

    /// <summary>Chance that the first robot has more wins than losses in so many of the pair's matches, drawn from them without putting back. As the pair's matches do not hang on each other, its mean
    /// over pairs has no bias, however few they are: Hoeffding, Ann. Math. Statist. 19:293, 1948 (from memory) [1].</summary>
    /// <param name="matches">Matches of a bout, at most those of the pair [1].</param>
    public double BestOf(int matches) => Chance(matches, Wins, Losses);

    // sum over the hypergeometric distribution of wins and losses among those drawn
    private double Chance(int n, int wins, int losses)
    {
        double ways = 0.0;
        for (int w = 0; w <= Math.Min(n, wins); w++)
        {
            for (int l = Math.Max(0, n - w - Stalemates); l <= Math.Min(n - w, losses) && l < w; l++)
            {
                ways += Ways(wins, w) * Ways(losses, l) * Ways(Stalemates, n - w - l);
            }
        }

        return ways / Ways(Matches, n);
    }

    private static double Ways(int of, int take)
    {
        double ways = 1.0;
        for (int i = 0; i < take; i++)
        {
            ways *= (double)(of - i) / (i + 1);
        }

        return ways;
    }
}
