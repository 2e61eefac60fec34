using PushSim.Scenarios;
using PushSim.Scenarios.Drawing;
using PushSim.Words.Designs;

namespace PushSim.Cli.Run;

/// <summary>`pushsim run FILE`: verdict, table, plots, CSV.</summary>
internal static class RunCommand
{
    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var file = new Argument<string>("FILE") { Description = "Scenario file, or a robot file with --against." };
        var common = new CommonOptions("Folder for all files (default pushsim-out/NAME).", "Write report.html too: one page with replay, to show.");
        var set = new SetOption();
        var opponent = new OpponentOptions();
        Option<string?> beside = SideReader.Option();
        var rank = new Option<bool>("--rank-tyres") { Description = "Run every tyre material of the shelf on this robot and rank their wear." };
        var map = new Option<string[]>("--map")
        {
            Description = "Of a turn, twice: where it chatters over two inputs; writes map.png and map.csv.", HelpName = "KEY=FROM..TO", DefaultValueFactory = _ => [],
        };
        var csv = new Option<bool>("--csv") { Description = "Write every sample to history.csv, not one each hundredth of a second." };
        var closer = new Option<bool>("--closer") { Description = "Finish the closer look, whatever work it takes." };
        var command = new Command(
            "run",
            "Simulates a scenario: the answer, pictures and the time history.\n\n"
            + "Examples:\n  pushsim run scenarios/launch-soft.toml\n  pushsim run scenarios/pull-test.toml --json\n  pushsim run my.toml --out results --no-plots\n  pushsim run my.toml --report\n"
            + "  pushsim run turn.toml --map floor.friction=0.5..1 --map manoeuvre.turn=0.3..1\n"
            + "  pushsim run scenarios/spot-turn.toml --rank-tyres\n  pushsim run mine.toml --beside other.toml\n  pushsim run mole.toml --against badger.toml")
        {
            file, beside,
        };
        opponent.AddTo(command);
        set.AddTo(command);
        common.AddTo(command, csv, rank, map, closer);
        command.SetAction(parsed => Run(parsed.GetValue(file)!, new Options(opponent.In(parsed, set.Read(parsed)), common.Of(parsed), parsed.GetValue(rank), parsed.GetValue(map)!, parsed.GetValue(beside), parsed.GetValue(closer), parsed.GetValue(csv)), output, error, cancel));
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
        using var work = new RunBatch(options.Output.HasNoProgress ? null : error, options.Closer, sides.Count, cancel);
        RunResult result = work.Run(read.Scenario);
        // of a turn the picture shows what the closer look finds, of several designs all of them
        bool isDrawn = sides.Count == 1 && result.Scenario.Manoeuvre.Traits.Family != ManoeuvreFamily.Turn;
        EarlyFiles? early = folder is null || result.Time.Length < 2 ? null : new EarlyFiles(result, options.Output, options.Csv, isDrawn, cancel);
        // the answer first: what looks closer may take longer than the run
        CardText? card = options.Output.HasNoProgress ? null : RunText.WriteHead(output, result, options.Output.Details);

        result = work.Look(result, result.Shove is null ? null : Drawn(file, options.Read));
        ComparedDesign[] designs = [ComparedDesign.Of(sides[0].Label, result) with { IsPlain = sides[0].IsPlain }, .. sides.Skip(1).Zip(others, (s, o) => ComparedDesign.Of(s.Label, work.Look(work.Run(o.Scenario!))))];
        TyreAnswers tyres = work.Tyres(result, file, options.Read, options.Rank);
        RunCost Cost() => work.Cost();
        List<string> files = folder is null || early is null ? [] : WriteFiles(folder, early, designs, tyres, file, read, Cost(), options, cancel);

        TurnMap? map;
        try
        {
            map = axes is null ? null : work.Map(file, options.Read, axes.Value.X, axes.Value.Y, read.Scenario.Robot.Name, error);
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
                folder.Write(CommandPage.FileName, RunPage.Of(result, file, read, options.Read, Cost(), tyres, designs, map).Write);
            }
        }

        files = folder?.Put(files) ?? files;
        options.Output.Print(
            output, () => RunJson.Of(result, Cost(), tyres, map, designs), RunText.Verdict(result, designs), () => RunText.WriteRest(output, card, result, Cost(), read, Asked.Of(file, options.Read), files, tyres, map, designs));
        return result.Status == RunStatus.Failed ? Complaint.OfRun(error, RunWords.Cause(result.Stop)) : ExitCode.Done;
    }

    // the matches of `odds` with its usual seed
    private static FileMatchSource? Drawn(string file, ReadOptions options) =>
        DrawableScenario.Open(file, options).Scenario is DrawableScenario scenario ? new FileMatchSource(scenario, new ContestKey(1, scenario.Label)) : null;

    private static List<string> WriteFiles(OutputFolder folder, EarlyFiles early, IReadOnlyList<ComparedDesign> designs, TyreAnswers tyres, string file, ReadResult read, RunCost cost, Options options, CancellationToken cancel)
    {
        RunResult result = designs[0].Run!;
        List<string> files = [folder.Write("history.csv", stream => stream.Write(early.History))];
        if (result.CellReadings.Count > 0)
        {
            files.Add(folder.Write("load-cell.csv", stream => HistoryCsv.WriteReadings(result, stream)));
        }

        if (result.Turning is TurnResult turning)
        {
            files.Add(folder.Write("turn-paths.csv", stream => TurnCsv.WritePaths(result, turning, stream)));
            files.Add(folder.Write("spectrum.csv", stream => TurnCsv.WriteSpectra(turning, stream)));
        }

        if (!options.Output.NoPlots)
        {
            cancel.ThrowIfCancellationRequested();
            files.AddRange(early.Picture is { } drawn ? folder.WritePicture(drawn) : folder.WritePicture("plot", options.Output.Drawn(RunPlot.Of(result, designs))));
            files.AddRange(tyres.Plots.SelectMany(p => folder.WritePicture(p.Name, p.Plot)));
        }

        if (options.Output.Report)
        {
            cancel.ThrowIfCancellationRequested();
            files.Add(folder.Write(CommandPage.FileName, RunPage.Of(result, file, read, options.Read, cost, tyres, designs).Write));
        }

        return files;
    }

    private sealed record Options(ReadOptions Read, OutputRequest Output, bool Rank, string[] Map, string? Beside, bool Closer, bool Csv);
}
