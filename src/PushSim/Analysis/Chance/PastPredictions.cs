namespace PushSim.Analysis.Chance;

/// <summary>Predictions of wins against what came. Brier's score is the mean of (p - o)^2; of predictions that are true it is p (1 - p) in the mean with the variance p (1 - p) (1 - 2 p)^2 each: Brier, Monthly Weather
/// Review 78:1, 1950; Spiegelhalter, Statistics in Medicine 5:421, 1986 (both from memory).</summary>
/// <param name="Predictions">Predicted shares of wins, and whether it was one.</param>
public sealed record PastPredictions(IReadOnlyList<(double Share, bool IsWin)> Predictions)
{
    /// <summary>Brier's score [1].</summary>
    public double Brier => Predictions.Average(p => (p.Share - (p.IsWin ? 1.0 : 0.0)) * (p.Share - (p.IsWin ? 1.0 : 0.0)));

    /// <summary>Score that true predictions have in the mean [1].</summary>
    public double Expected => Predictions.Average(p => p.Share * (1.0 - p.Share));

    /// <summary>How far the score is off what true predictions have, in standard deviations [1]; 0 where all were sure.</summary>
    public double Z
    {
        get
        {
            double variance = Predictions.Sum(p => p.Share * (1.0 - p.Share) * (1.0 - (2.0 * p.Share)) * (1.0 - (2.0 * p.Share)));
            return variance > 0.0 ? Predictions.Count * (Brier - Expected) / Math.Sqrt(variance) : 0.0;
        }
    }

    /// <summary>Wins against predictions in fifths of the predicted share; fifths without one are left out: mean prediction, wins, matches.</summary>
    public IReadOnlyList<(double Predicted, int Wins, int Matches)> Fifths =>
        [.. Predictions.GroupBy(p => Math.Min(4, (int)(5.0 * p.Share))).OrderBy(g => g.Key).Select(g => (g.Average(p => p.Share), g.Count(p => p.IsWin), g.Count()))];
}
