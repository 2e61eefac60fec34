using PushSim.Scenarios;
using PushSim.Scenarios.Drawing;
using PushSim.Words.Designs;

namespace PushSim.Cli.Run;

/// <summary>The page of `run --report` alone, for whoever has the files open.</summary>
internal static class RunPageFile
{
    /// <summary>Runs a scenario, looks closer and writes its page into the folder that `run` would take.</summary>
    /// <param name="file">The scenario file.</param>
    /// <param name="options">How it is read, with what is not saved.</param>
    /// <param name="cancel">Interrupt.</param>
    /// <returns>Path of the page.</returns>
    /// <exception cref="IOException">The file is no scenario, or the page cannot be written.</exception>
    public static string Write(string file, ReadOptions options, CancellationToken cancel)
    {
        using var clock = CommandClock.Begin();
        ReadResult read = ScenarioReader.Read(file, options);
        ScenarioSettings scenario = read.Scenario ?? throw new IOException("only a scenario without mistakes has a page");
        var request = new OutputRequest(null, Force: false, Json: false, Quiet: true, NoPlots: true, Report: true, Details: false, $"pushsim run {file} --report");
        using OutputFolder folder = request.Open(new OutputAsk("run", scenario.Name, [file], TextWriter.Null, cancel)) ?? throw new IOException("there is no folder for it");
        using var work = new RunBatch(null, isWhole: false, 1, cancel);
        RunResult result = work.Run(scenario);
        if (result.Time.Length < 2)
        {
            throw new IOException("the run gives nothing to show");
        }

        FileMatchSource? drawn = result.Shove is not null && DrawableScenario.Open(file, options).Scenario is { } d ? new FileMatchSource(d, new ContestKey(1, d.Label)) : null;
        result = work.Look(result, drawn);
        TyreAnswers tyres = work.Tyres(result, file, options, rank: false);
        string page = folder.Write(CommandPage.FileName, RunPage.Of(result, file, read, options, work.Cost(), tyres, [ComparedDesign.Of(scenario.Name, result)]).Write);
        return folder.Put([page])[0];
    }
}
