namespace PushSim.Analysis.Chance;

/// <summary>A record of real matches of one pair of robots.</summary>
/// <param name="Wins">Matches that the first robot won [1].</param>
/// <param name="Losses">Matches that the opponent won [1].</param>
/// <param name="Stalemates">Matches that nobody won [1].</param>
public sealed record RealResults(int Wins, int Losses, int Stalemates)
{
    /// <summary>Matches [1].</summary>
    public int Matches => Wins + Losses + Stalemates;

    /// <summary>How far predictions that were made before the matches were right; null where none are recorded.</summary>
    public PastPredictions? Past { get; init; }
}
