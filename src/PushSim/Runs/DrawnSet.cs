namespace PushSim.Runs;

/// <summary>How a shove ends where its values are drawn from their tolerances a few times.</summary>
/// <param name="Wins">Matches that the first robot won [1].</param>
/// <param name="Losses">Matches that the opponent won [1].</param>
/// <param name="Stalemates">Matches that nobody won [1].</param>
public sealed record DrawnSet(int Wins, int Losses, int Stalemates)
{
    /// <summary>Matches that did not fail [1].</summary>
    public int Matches => Wins + Losses + Stalemates;
}
