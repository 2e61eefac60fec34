namespace PushSim.Words.Tables;

/// <summary>How drawn matches ended, as a bar of a card.</summary>
/// <param name="Wins">Share that the first robot wins [1].</param>
/// <param name="Losses">Share that its opponent wins; the rest has no winner [1].</param>
/// <param name="Low">Least share of wins, 95 % sure [1].</param>
/// <param name="High">Largest share of wins, 95 % sure [1].</param>
public sealed record WinSplit(double Wins, double Losses, double Low, double High);
