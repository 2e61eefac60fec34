namespace PushSim.Analysis.Ladder;

/// <summary>Three robots of which each beats the next.</summary>
/// <param name="First">Beats the second [1].</param>
/// <param name="Second">Beats the third [1].</param>
/// <param name="Third">Beats the first [1].</param>
/// <param name="IsSure">True if each of the three leads is larger than chance explains (95 % interval).</param>
public sealed record Cycle(int First, int Second, int Third, bool IsSure);
