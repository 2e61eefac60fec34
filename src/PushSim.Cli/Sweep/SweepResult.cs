using PushSim.Analysis.Sweep;
using PushSim.Cli.Run;
using PushSim.Words.Sweeps;

namespace PushSim.Cli.Sweep;

/// <summary>Everything that `sweep` reports.</summary>
internal sealed record SweepResult
{
    public required SweepTable Table { get; init; }

    public required bool IsInterrupted { get; init; }

    public required double Seconds { get; init; }

    public required string Verdict { get; init; }

    public required IReadOnlyList<string> Warnings { get; init; }

    public static SweepResult Of(SweepRequest request, string[] asked, SweepPoint[] points, bool isInterrupted, double seconds)
    {
        string[] keys = request.Odds > 0 ? [.. asked, SweepTable.WinShare] : asked;
        var table = SweepTable.Of(request.Inputs, [.. keys.Select(k => (k, request.IsHighestBest ?? (k == SweepTable.WinShare || AskedQuantity.IsHighestBest(k))))], points);
        return new SweepResult
        {
            Table = table,
            IsInterrupted = isInterrupted,
            Seconds = seconds,
            Verdict = SweepVerdict.Of(request.Inputs, table, request.Odds),
            Warnings = SweepWarnings.Of(request.Inputs, table, request.Odds),
        };
    }
}
