using PushSim.Analysis.Sweep;
using PushSim.Words.Answers;
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

    /// <summary>Tolerances that were taken in drawn matches because no file states one; empty for none.</summary>
    public string Usual { get; init; } = "";

    public static SweepResult Of(SweepRequest request, Answer[] answers, SweepPoint[] points, bool isInterrupted, double seconds)
    {
        string[] asked = [.. answers.Select(a => a.Key)];
        (string Key, bool IsHighestBest)[] columns = [.. answers.Select(a => (a.Key, request.IsHighestBest ?? a.Better == Better.More)), .. request.Odds > 0 ? [(SweepTable.WinShare, request.IsHighestBest ?? true)] : Array.Empty<(string, bool)>()];
        var table = SweepTable.Of(request.Inputs, columns, points);
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
