namespace PushSim.Runs;

/// <summary>Why a shove is too close to call.</summary>
/// <param name="Cause">What makes it so.</param>
/// <param name="Otherwise">How many nearly equal starts end otherwise [1].</param>
/// <param name="Tries">Of how many [1].</param>
/// <param name="Example">One of them.</param>
public sealed record CloseShove(CloseCause Cause, int Otherwise, int Tries, CloseStart Example);
