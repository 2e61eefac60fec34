using PushSim.Analysis.Wear;
using PushSim.Runs;
using PushSim.Scenarios.Notebook;
using PushSim.Scenarios.Scenes;

namespace PushSim.Scenarios.Studies;

/// <summary>Tyres weighed before and after driving, against a run of the same driving: how abrasive the floor is.</summary>
public sealed record WeighedStudy
{
    /// <summary>The answer; null where something is wrong.</summary>
    public WeighedWear? Wear { get; init; }

    /// <summary>All complaints.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>True if a file could not be opened or read at all.</summary>
    public bool CannotRead { get; init; }

    /// <summary>The table to paste into a scenario; empty without an answer.</summary>
    public string Block => Wear is not { } w ? "" : string.Create(CultureInfo.InvariantCulture, $"[floor]\nabrasiveness = \"{PlainNumber.Of(w.Abrasiveness.Value, 3)} ± {PlainNumber.Of(0.5 * (w.Abrasiveness.High - w.Abrasiveness.Low), 2)}\"   # {w.Count} {(w.Count == 1 ? "weighing" : "weighings")}, {PlainNumber.Of(1e6 * w.Loss, 3)} mg in {PlainNumber.Of(w.Time, 3)} s\n");

    /// <summary>Reads both and runs the scenario.</summary>
    /// <param name="weighings">The weighings.</param>
    /// <param name="scenario">A scenario of the driving that was done.</param>
    /// <param name="options">How it is read.</param>
    public static WeighedStudy Of(string weighings, string scenario, ReadOptions options)
    {
        IReadOnlyList<Weighing> rows = WeighingReader.Read(weighings, out Problem? wrong);
        ReadResult read = ScenarioReader.Read(scenario, options);
        Problem[] problems = [.. wrong is null ? Array.Empty<Problem>() : [wrong], .. read.Problems.Where(p => p.Severity == Severity.Error)];
        if (problems.Length > 0 || read.Scenario is not { } settings)
        {
            return new WeighedStudy { Problems = problems, CannotRead = read.CannotRead };
        }

        RunResult run = Simulator.Run(settings);
        WearResult? report = run.Status == RunStatus.Finished ? WearResult.Of(run) : null;
        WeighedWear? wear = report is null ? null : WeighedWear.Of(rows, report, settings.Floor.Abrasiveness);
        return wear is not null ? new WeighedStudy { Wear = wear } : new WeighedStudy
        {
            Problems = [new Problem(scenario, 0, 0, Severity.Error, "its run tells no mass that tyres lose", "give each tyre wear and density (or shelf), the floor an abrasiveness above zero, and let it turn")],
        };
    }
}
