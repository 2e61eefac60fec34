namespace PushSim.Runs;

/// <summary>What becomes of a shove in one order of starts.</summary>
/// <param name="Order">Who moves first.</param>
/// <param name="Ending">How it ends; null if it could not be run.</param>
/// <param name="Winner">0 if the first robot wins, 1 if the opponent does, -1 for neither [1].</param>
/// <param name="GroundGained">Ground that the first robot gains, negative if it loses ground [m].</param>
/// <param name="EndTime">When it ends [s].</param>
public sealed record StartCase(StartOrder Order, ShoveEnding? Ending, int Winner, double GroundGained, double EndTime);
