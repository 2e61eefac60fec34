using PushSim.Runs;

namespace PushSim.Analysis.Chance;

/// <summary>How drawn matches end in one order of starts.</summary>
/// <param name="Order">Who moves first.</param>
/// <param name="Tally">The matches.</param>
public sealed record StartShare(StartOrder Order, Tally Tally);
