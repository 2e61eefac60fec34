using PushSim.Analysis.Fit;
using PushSim.Files;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Scenes;

/// <summary>Reads the log that a scenario names beside its simulated pull.</summary>
internal static class MeasuredReader
{
    /// <summary>The scenario with the log's first history; as it was after a complaint.</summary>
    /// <param name="context">Gathers complaints and notes.</param>
    /// <param name="path">Path of the scenario file; the log is looked for from its folder.</param>
    /// <param name="s">The [measured] of the scenario.</param>
    /// <param name="scenario">The scenario as read so far.</param>
    public static ScenarioSettings Add(ReadContext context, string path, Section s, ScenarioSettings scenario)
    {
        double? shift = s.Number("shift");
        if (scenario.Tether is null)
        {
            context.Warning(s.Place, "[measured] has no effect without a tether", "take it out, or add [tether]");
            return scenario;
        }

        var options = new LogOptions { ForceUnit = Unit(s, "force_unit", u => !double.IsNaN(LogColumn.ForceFactor(u))), TimeUnit = Unit(s, "time_unit", FitArguments.IsTimeUnit), MostSamples = 200_000, Advice = LogAdvice.OfScenario };
        if (s.Text("file") is not string name || FileLoader.Resolve(context, FileLoader.FolderOf(path), name, s.PlaceOf("file")) is not string full)
        {
            return scenario;
        }

        // a pipe could keep every command waiting that reads the scenario
        LogResult log = LogReader.Read(full, options, new OpenAsk { Root = FileLoader.Root(context, FileLoader.FolderOf(path)) });
        foreach (Problem p in log.Problems)
        {
            string where = p.Line > 0 ? FormattableString.Invariant($"line {p.Line}, column {p.Column}: ") : "";
            context.Error(s.PlaceOf("file"), $"\"{SourceFile.Clean(name)}\", {where}{p.Message}", p.Help);
        }

        if (log.HasErrors)
        {
            return scenario;
        }

        if (log.Traces.Count == 0)
        {
            context.Error(s.PlaceOf("file"), $"\"{SourceFile.Clean(name)}\" has no column of time", "readings without time cannot be laid over a run");
            return scenario;
        }

        if (PullFinder.Find(log.Traces[0].Trace).Problem is TraceProblem wrong)
        {
            Problem p = TraceWords.Of(name, log.Traces[0], wrong, LogAdvice.OfScenario);
            context.Error(s.PlaceOf("file"), FormattableString.Invariant($"\"{SourceFile.Clean(name)}\", line {p.Line}: {p.Message}"), p.Help);
            return scenario;
        }

        context.Remarks.AddRange(log.Notes.Select(n => $"{SourceFile.Clean(name)}: {n}"));
        return scenario with { Measured = new MeasuredPull(name, log.Traces[0].Trace, shift) };
    }

    private static string? Unit(Section s, string key, Func<string, bool> isKnown)
    {
        if (s.Text(key) is not string unit)
        {
            return null;
        }

        if (isKnown(unit))
        {
            return unit;
        }

        s.Context.Error(s.PlaceOf(key), $"\"{SourceFile.Clean(unit, 20)}\" is no unit known here", key == "force_unit" ? "N, gf, kgf, lbf, ozf" : "s, ms, us, min");
        return null;
    }
}
