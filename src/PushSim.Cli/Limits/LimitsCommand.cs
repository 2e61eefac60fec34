using PushSim.Analysis.Limits;
using PushSim.Scenarios;
using PushSim.Words.Designs;

namespace PushSim.Cli.Limits;

/// <summary>`pushsim limits FILE`: motors or traction, and what a change would buy.</summary>
internal static class LimitsCommand
{
    // [s]
    private const double LongestMatch = 3600.0;

    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var file = new Argument<string>("FILE") { Description = "Scenario or robot file." };
        var throttle = new Option<string?>("--throttle") { Description = "Throttle, for example 60% or 0.6 (default: the scenario's greatest, or 1).", HelpName = "SHARE" };
        var duty = new Option<string?>("--duty")
        {
            Description = "Seconds of pushing, dashing (a second from standstill, again and again), turning and resting that repeat through the match (default 3:3:1:3).", HelpName = "P:D:T:R",
        };
        var match = new Option<string?>("--match") { Description = "Length of the match in seconds (default 180).", HelpName = "SECONDS" };
        var set = new SetOption();
        var opponent = new OpponentOptions();
        Option<string?> beside = SideReader.Option();
        var common = new CommonOptions("Folder for plots and CSV (default pushsim-out/NAME-limits).");
        var command = new Command(
            "limits",
            "Motors or traction: what each can give, and what 10 % more would buy.\n\n"
            + "Examples:\n  pushsim limits scenarios/pull-test.toml\n  pushsim limits scenarios/robots/mole.toml --json\n"
            + "  pushsim limits my.toml --throttle 0.6 --duty 5:2:1:2 --out results")
        {
            file, throttle, duty, match, beside,
        };
        opponent.AddTo(command);
        set.AddTo(command);
        common.AddTo(command);
        CommonOptions.CheckText(throttle, text => ShareText.Read(text) is >= 0.01 and <= 1.0 ? "" : "needs a share from 1% to 100%, for example 60% or 0.6");
        CommonOptions.CheckText(match, text => Number(text) is >= 1.0 and <= LongestMatch ? "" : "needs seconds from 1 to 3600");
        CommonOptions.CheckText(duty, text => Pattern(text, 1.0) is not null ? "" : "needs four numbers of seconds such as 3:3:1:3, a second or more together");
        command.SetAction(parsed => Run(
            parsed.GetValue(file)!,
            new Options(
                ShareText.Read(parsed.GetValue(throttle)),
                Pattern(parsed.GetValue(duty) ?? "3:3:1:3", parsed.GetValue(match) is string m ? Number(m)!.Value : 180.0)!,
                opponent.In(parsed, set.Read(parsed)),
                common.Of(parsed),
                parsed.GetValue(beside)),
            output,
            error,
            cancel));
        return command;
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;

    private static DutyPattern? Pattern(string text, double length)
    {
        double?[] parts = [.. text.Split(':').Select(Number)];
        bool isRight = parts.Length == 4 && parts.All(p => p is >= 0.0 and <= LongestMatch) && parts.Sum() >= DutyPattern.ShortestRound;
        return !isRight ? null : new DutyPattern
        {
            Length = length, Push = parts[0]!.Value, Dash = parts[1]!.Value, Turn = parts[2]!.Value, Rest = parts[3]!.Value,
        };
    }

    private static int Run(string file, Options options, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        ReadResult read = ScenarioReader.Check(file, options.Read);
        int? wrong = ProblemWriter.Tell(error, read.Problems, read.CannotRead);
        if (wrong is not null || (read.Scenario is null && read.Robot is null))
        {
            return wrong ?? ExitCode.WrongInput;
        }

        IReadOnlyList<DesignSide> sides = DesignSides.Of(read, file, options.Read, options.Beside);
        IReadOnlyList<ReadResult>? others = SideReader.Others(sides, ScenarioReader.Check, read, error, out int code);
        if (others is null)
        {
            return code;
        }

        ScenarioSettings scenario = read.Scenario ?? LimitFinder.Standing(read.Robot!, Path.GetFileNameWithoutExtension(file));
        using OutputFolder? folder = options.Output.Open(new OutputAsk("limits", scenario.Name + "-limits", [file], error, cancel));
        Design[] designs;
        RunResult? run = null;
        try
        {
            designs =
            [
                .. sides.Zip(others.Prepend(read), (s, r) =>
                {
                    cancel.ThrowIfCancellationRequested();
                    return Design.Of(s.Label, LimitFinder.Find(r.Scenario ?? LimitFinder.Standing(r.Robot!, Path.GetFileNameWithoutExtension(s.File)), options.Throttle, options.Duty)) with { IsPlain = s.IsPlain };
                }),
            ];
            cancel.ThrowIfCancellationRequested();
            if (read.Scenario is not null)
            {
                run = Simulator.Run(scenario, cancel);
            }
        }
        catch (SimulationException e)
        {
            return Complaint.OfRun(error, e.Message);
        }

        RunResult? told = run is { Time.Length: >= 2 } ? run : null;
        List<string> files = folder is null ? [] : folder.Put(WriteFiles(folder, designs, told, read, options, cancel));
        options.Output.Print(output, () => LimitsJson.Of(designs, told), PlainText.Of(LimitsText.Verdict(designs)), () => new ScreenReport(LimitsText.Card(designs), LimitsText.Verdict(designs))
        {
            Tables = LimitsText.Tables(designs, told), Warnings = LimitsText.Warnings(designs), Asides = [.. EstimateText.Lines(read)], Suggestions = EstimateText.Suggestions(read, Asked.Of(file, options.Read)), Files = files,
        }.Write(output, options.Output.Details));
        return run?.Status == RunStatus.Failed ? Complaint.OfRun(error, RunWords.Cause(run.Stop)) : ExitCode.Done;
    }

    private static List<string> WriteFiles(
        OutputFolder folder, IReadOnlyList<Design> designs, RunResult? run, ReadResult read, Options options, CancellationToken cancel)
    {
        LimitReport report = designs[0].Report!;
        List<string> files =
        [
            folder.Write("force-curve.csv", stream => LimitsCsv.WriteCurves(report, stream)),
            folder.Write("gains.csv", stream => LimitsCsv.WriteGains(report, stream)),
        ];
        if (report.Ratio is not null)
        {
            files.Add(folder.Write("ratio.csv", stream => LimitsCsv.WriteRatio(report.Ratio, stream)));
        }

        if (run is not null)
        {
            files.Add(folder.Write("binding.csv", stream => LimitsCsv.WriteBindings(run, stream, cancel)));
        }

        if (!options.Output.NoPlots)
        {
            cancel.ThrowIfCancellationRequested();
            files.AddRange(folder.WritePicture("plot", options.Output.Drawn(LimitsPlot.Of(report, run, designs))));
        }

        if (options.Output.Report)
        {
            cancel.ThrowIfCancellationRequested();
            files.Add(folder.Write(PageReport.FileName, LimitsPage.Of(designs, run, read, options.Read, options.Throttle, options.Duty).Write));
        }

        return files;
    }

    private sealed record Options(double? Throttle, DutyPattern Duty, ReadOptions Read, OutputRequest Output, string? Beside);
}
