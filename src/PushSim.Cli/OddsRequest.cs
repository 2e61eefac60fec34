namespace PushSim.Cli;

/// <summary>What `odds` was asked.</summary>
internal sealed record OddsRequest(
    string File, string? Against, long Matches, ulong Seed, int Threads, double Within, (int K, int N)? Part, bool Merge, long? Match, string? Out, bool Force, bool Json, bool Quiet, bool NoPlots, bool Report);
