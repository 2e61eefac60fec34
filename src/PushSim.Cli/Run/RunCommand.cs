using System.Diagnostics;
using PushSim.Analysis;
using PushSim.Analysis.Limits;
using PushSim.Analysis.Turning;
using PushSim.Scenarios;
using PushSim.Words.Designs;

namespace PushSim.Cli.Run;

/// <summary>`pushsim run FILE`: verdict, table, plots, CSV.</summary>
internal static class RunCommand
{
    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var file = new Argument<string>("FILE") { Description = "Scenario file." };
        var common = new CommonOptions("Folder for all files (default pushsim-out/NAME).", "Write report.html too: one page with replay, to show.");
        var set = new SetOption();
        Option<string?> beside = SideReader.Option();
        var rank = new Option<bool>("--rank-tyres") { Description = "Run every tyre material of the shelf on this robot and rank their wear." };
        var map = new Option<string[]>("--map")
        {
            Description = "Of a turn, twice: where it chatters over two inputs; writes map.png, map.svg and map.csv.", HelpName = "KEY=FROM..TO", DefaultValueFactory = _ => [],
        };
        var command = new Command(
            "run",
            "Simulates a scenario: verdict, table, plots and the time history.\n\n"
            + "Examples:\n  pushsim run scenarios/launch-soft.toml\n  pushsim run scenarios/pull-test.toml --json\n  pushsim run my.toml --out results --no-plots\n  pushsim run my.toml --report\n"
            + "  pushsim run scenarios/spot-turn.toml --map \"tyre.soft.body_damping=0.1..3 N s/m\"\n    --map manoeuvre.turn=0.3..1\n"
            + "  pushsim run scenarios/spot-turn.toml --rank-tyres\n  pushsim run mine.toml --beside other.toml")
        {
            file, beside,
        };
        set.AddTo(command);
        common.AddTo(command, rank, map);
        command.SetAction(parsed => Run(parsed.GetValue(file)!, new Options(set.Read(parsed), common.Of(parsed), parsed.GetValue(rank), parsed.GetValue(map)!, parsed.GetValue(beside)), output, error, cancel));
        return command;
    }

    private static int Run(string file, Options options, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        ReadResult read = ScenarioReader.Read(file, options.Read);
        int? wrong = ProblemWriter.Tell(error, read.Problems, read.CannotRead);
        if (wrong is not null || read.Scenario is null)
        {
            return wrong ?? ExitCode.WrongInput;
        }

        IReadOnlyList<DesignSide> sides = DesignSides.Of(read, file, options.Read, options.Beside);
        IReadOnlyList<ReadResult>? others = SideReader.Others(sides, ScenarioReader.Read, read, error, out int code);
        if (others is null)
        {
            return code;
        }

        (MapAxis X, MapAxis Y)? axes = null;
        if (options.Map.Length > 0)
        {
            axes = TurnMap.Axes(options.Map, file, options.Read, read.Scenario, error);
            if (axes is null)
            {
                return ExitCode.WrongCommandLine;
            }
        }

        // the folder first: no work for a result that has nowhere to go
        using OutputFolder? folder = options.Output.Open(new OutputAsk("run", read.Scenario.Name, [file], error, cancel));
        long start = Stopwatch.GetTimestamp();
        RunResult result = Simulator.Run(read.Scenario, cancel);
        double milliseconds = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        result = Reviewed(result, cancel);
        Design[] designs = [Design.Of(sides[0].Label, result), .. sides.Skip(1).Zip(others, (s, o) => Design.Of(s.Label, Reviewed(Simulator.Run(o.Scenario!, cancel), cancel)))];
        TyreAnswers tyres = TyreAnswers.Of(result, file, options.Read, options.Rank, cancel);
        List<string> files = folder is null ? [] : WriteFiles(folder, designs, tyres, read, options, cancel);

        TurnMap? map;
        try
        {
            map = axes is null ? null : TurnMap.Compute(file, options.Read, axes.Value.X, axes.Value.Y, error, options.Output.HasNoProgress, cancel);
        }
        catch (OperationCanceledException)
        {
            // the files of the run are there all the same
            folder?.Put(files, isWhole: false);
            throw;
        }

        if (folder is not null && map is not null)
        {
            files.AddRange([folder.Write("map.csv", stream => TurnMapCsv.Write(stream, map)), .. options.Output.NoPlots ? [] : folder.WritePicture("map", map.Plot)]);
            if (options.Output.Report)
            {
                // in the place of the page without it
                folder.Write(PageReport.FileName, RunPage.Of(result, read, tyres, designs, map).Write);
            }
        }

        files = folder?.Put(files) ?? files;
        options.Output.Print(
            output, () => RunJson.Of(result, milliseconds, tyres, map, designs), RunText.Verdict(result, designs), () => RunText.Write(output, result, milliseconds, read, file, files, tyres, map, designs));
        return result.Status == RunStatus.Failed ? Complaint.OfRun(error, RunWords.Cause(result.Stop)) : ExitCode.Done;
    }

    private static RunResult Reviewed(RunResult result, CancellationToken cancel)
    {
        result = TurnReview.Review(StartReview.Review(CloseCall.Review(result, cancel), cancel), cancel);
        return PlausibilityFinder.Review(ChatterReview.Review(result, cancel));
    }

    private static List<string> WriteFiles(OutputFolder folder, IReadOnlyList<Design> designs, TyreAnswers tyres, ReadResult read, Options options, CancellationToken cancel)
    {
        RunResult result = designs[0].Run!;
        List<string> files = [];
        if (result.Time.Length < 2)
        {
            return files;
        }

        files.Add(folder.Write("history.csv", stream => HistoryCsv.Write(result, stream, cancel)));
        if (result.CellReadings.Count > 0)
        {
            files.Add(folder.Write("load-cell.csv", stream => HistoryCsv.WriteReadings(result, stream)));
        }

        if (result.Turning is TurnReport turning)
        {
            files.Add(folder.Write("turn-paths.csv", stream => TurnCsv.WritePaths(result, turning, stream)));
            files.Add(folder.Write("spectrum.csv", stream => TurnCsv.WriteSpectra(turning, stream)));
        }

        if (!options.Output.NoPlots)
        {
            cancel.ThrowIfCancellationRequested();
            files.AddRange(folder.WritePicture("plot", RunPlot.Of(result, designs)));
            files.AddRange(tyres.Plots.SelectMany(p => folder.WritePicture(p.Name, p.Plot)));
        }

        if (options.Output.Report)
        {
            cancel.ThrowIfCancellationRequested();
            files.Add(folder.Write(PageReport.FileName, RunPage.Of(result, read, tyres, designs).Write));
        }

        return files;
    }

    private sealed record Options(ReadOptions Read, OutputRequest Output, bool Rank, string[] Map, string? Beside);
}
