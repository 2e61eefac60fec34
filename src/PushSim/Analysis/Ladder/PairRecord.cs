namespace PushSim.Analysis.Ladder;

/// <summary>Matches of one pair.</summary>
/// <param name="First">Place of the one robot in the list, from 0 [1].</param>
/// <param name="Second">Place of the other [1].</param>
/// <param name="Wins">Matches that the one won [1].</param>
/// <param name="Losses">Matches that the other won [1].</param>
/// <param name="Stalemates">Matches that nobody won [1].</param>
public sealed record PairRecord(int First, int Second, double Wins, double Losses, double Stalemates)
{
    /// <summary>How many free draws one match is worth, see <see cref="Chance.BlockSums"/> [1].</summary>
    public double Worth { get; init; } = 1.0;

    /// <summary>Counting error of the share of wins, as that of the pair's own odds [1].</summary>
    public Chance.Bounds WinInterval
    {
        get => field != default ? field : Chance.ShareInterval.Wilson(Wins, Matches);
        init;
    }

    /// <summary>The record as that of so many free draws.</summary>
    public PairRecord AsFreeDraws => this with { Wins = Worth * Wins, Losses = Worth * Losses, Stalemates = Worth * Stalemates, Worth = 1.0 };

    /// <summary>Matches [1].</summary>
    public double Matches => Wins + Losses + Stalemates;
}
