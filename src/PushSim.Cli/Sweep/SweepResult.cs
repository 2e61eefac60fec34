using PushSim.Analysis.Sweep;
using PushSim.Words.Answers;
using PushSim.Words.Sweeps;

namespace PushSim.Cli.Sweep;

/// <summary>Everything that `sweep` reports.</summary>
/// <param name="Table">The points.</param>
/// <param name="IsInterrupted">Whether some points are missing.</param>
/// <param name="Seconds">How long it took [s].</param>
/// <param name="Verdict">The answer in words.</param>
/// <param name="Warnings">What to know before believing it.</param>
internal sealed record SweepResult(SweepTable Table, bool IsInterrupted, double Seconds, string Verdict, IReadOnlyList<string> Warnings)
{
    /// <summary>Tolerances that were taken in drawn matches because no file states one; empty for none.</summary>
    public string Usual { get; init; } = "";

    /// <summary>Name of the first robot.</summary>
    public string Robot { get; private init; } = "";

    /// <summary>Name of its opponent; null for none.</summary>
    public string? Opponent { get; private init; }

    /// <summary>Start and rule of the shoves; null where there are none, or they are what is varied.</summary>
    public ShoveSettings? Shove { get; private init; }

    public static SweepResult Of(SweepRequest request, Answer[] answers, SweepPoint[] points, ScenarioSettings first, bool isInterrupted, double seconds, Func<int, int, OddsDifference>? paired = null)
    {
        (string Key, bool IsHighestBest)[] columns = [.. answers.Select(a => (a.Key, request.IsHighestBest ?? a.Better == Better.More)), .. request.Odds > 0 ? [(SweepTable.WinShare, request.IsHighestBest ?? true)] : Array.Empty<(string, bool)>()];
        var table = SweepTable.Of(request.Inputs, columns, points, paired);
        return new SweepResult(table, isInterrupted, seconds, SweepVerdict.Of(request.Inputs, table, request.Odds, first.Robot.Name), SweepWarnings.Of(request.Inputs, table, request.Odds))
        {
            Robot = first.Robot.Name,
            Opponent = first.Opponent?.Robot.Name,
            Shove = first.Opponent is null || request.Inputs.Any(i => i.Key.StartsWith("shove.", StringComparison.Ordinal)) ? null : first.Shove,
        };
    }
}
