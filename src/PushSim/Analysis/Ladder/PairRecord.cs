namespace PushSim.Analysis.Ladder;

/// <summary>Matches of one pair.</summary>
/// <param name="First">Place of the one robot in the list, from 0 [1].</param>
/// <param name="Second">Place of the other [1].</param>
/// <param name="Wins">Matches that the one won [1].</param>
/// <param name="Losses">Matches that the other won [1].</param>
/// <param name="Stalemates">Matches that nobody won [1].</param>
public sealed record PairRecord(int First, int Second, double Wins, double Losses, double Stalemates)
{
    /// <summary>Matches [1].</summary>
    public double Matches => Wins + Losses + Stalemates;
}
