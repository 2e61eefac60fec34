using PushSim.Analysis.Sweep;

namespace PushSim.Cli;

/// <summary>What `sweep` was asked.</summary>
internal sealed record SweepRequest(
    string File, IReadOnlyList<SweepInput> Inputs, IReadOnlyList<string> Asked, bool? IsHighestBest, long Odds, ulong Seed, int Threads, string? Out, bool Force, bool Json, bool Quiet, bool NoPlots, bool Report);
