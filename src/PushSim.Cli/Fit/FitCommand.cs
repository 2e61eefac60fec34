using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;

namespace PushSim.Cli.Fit;

/// <summary>`pushsim fit CSV...`: from pull tests to friction.</summary>
internal static class FitCommand
{
    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        FitOptions pulls = new();
        MeaningOptions meaning = new();
        CommonOptions common = new("Folder for plots and the tyre block.");
        var command = new Command(
            "fit",
            "Finds the friction of a tyre from pull tests: is it the tyre or the motor? From weighed tyres it finds how abrasive the floor is.\n\n"
            + "Examples:\n  pushsim fit readings.csv\n  pushsim fit scenarios/logs/soft-tyre.csv --load \"1360 gf\"\n"
            + "  pushsim fit mole-pulls.csv --robot pull-test.toml --simulate\n  pushsim fit scenarios/logs/readings.csv --load \"13.3 N\"\n"
            + "  pushsim fit pulls.csv --load \"13 N\" --robot mole.toml --against badger.toml\n"
            + "  pushsim fit scenarios/logs/weighings.csv --robot scenarios/tyre-wear.toml");
        pulls.AddTo(command);
        common.AddTo(command);
        meaning.AddTo(command, pulls.Robot);
        command.SetAction(p =>
        {
            FitRequest request = pulls.Of(p);
            if (SeasonCommand.NotebookOf(request.Files, request.Garage) is string notebook)
            {
                return SeasonCommand.Run(notebook, common.Of(p), output, error, cancel);
            }

            if (WeighedCommand.FileOf(request) is string weighed)
            {
                return WeighedCommand.Run(weighed, request, common.Of(p), output, error, cancel);
            }

            return request.Files.Count == 0 ? Complaint.OfCommandLine(error, "fit needs CSV, or a garage with readings.csv", "fit") : Run(request with { Meaning = meaning.Of(p) }, common.Of(p), output, error, cancel);
        });
        return command;
    }

    private static int Run(FitRequest request, OutputRequest options, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var ask = new OutputAsk("fit", "fit", request.Files, error, cancel);
        options.Expect(ask);
        FitResult outcome = FitRun.Do(request, cancel, options.HasNoProgress ? null : error);
        if (ProblemWriter.Tell(error, outcome.Problems, outcome.CannotRead) is int wrong)
        {
            return wrong;
        }

        if (outcome.Lack is not null)
        {
            return Complaint.OfCommandLine(error, FitRun.Missing(request, outcome), "fit");
        }

        // what is asked about shoves and stronger motors may be refused yet
        CardText? begun = options.HasNoProgress || options.Details || request.Meaning is { Opponent: not null } or { Stronger: not null } ? null : FitText.WriteHead(output, outcome);
        outcome = outcome with { Meaning = LogMeaning.Of(request, outcome, cancel) };
        if (MeaningOptions.Complain(outcome.Meaning, error) is int code)
        {
            return code;
        }

        using OutputFolder? folder = options.Open(ask);
        string[] blocks = [.. outcome.Tables.Select(t => t.Text)];
        List<string> files = folder is null ? [] : WriteFiles(folder, outcome, blocks, options.NoPlots, cancel);
        if (folder is not null && options.Report)
        {
            cancel.ThrowIfCancellationRequested();
            files.Add(folder.Write(CommandPage.FileName, FitPage.Of(request, outcome, blocks).Write));
        }

        files = folder?.Put(files) ?? files;
        options.Print(output, () => FitJson.Of(outcome), PlainText.Of(FitText.Verdict(outcome)), () => FitText.Write(output, begun, outcome, blocks, files, options.Details));
        return ExitCode.Done;
    }

    private static List<string> WriteFiles(OutputFolder folder, FitResult outcome, string[] blocks, bool noPlots, CancellationToken cancel)
    {
        List<string> files = [folder.WriteForm("tyres.toml", string.Join('\n', blocks))];
        if (outcome.Meaning is { Tyres.Count: > 0 } meaning)
        {
            files.Add(folder.Write("on-the-robot.csv", s => MeaningCsv.Write(s, meaning)));
        }

        if (outcome.Simulated.Count > 0)
        {
            files.Add(folder.Write("simulated.csv", s => SimulationFitCsv.Write(s, outcome.Simulated)));
        }

        if (!noPlots)
        {
            WritePictures(folder, outcome, files, cancel);
        }

        return files;
    }

    private static void WritePictures(OutputFolder folder, FitResult outcome, List<string> files, CancellationToken cancel)
    {
        IReadOnlyList<TyreFit> fits = outcome.Fits;
        HashSet<string> names = new(StringComparer.Ordinal);
        foreach (TyreFit fit in fits)
        {
            cancel.ThrowIfCancellationRequested();
            if (FitPlot.OfTyre(fit) is PlotSheet plot)
            {
                string name = fits.Count == 1 ? "plot" : Unique("plot-" + Slug.Of(fit.Name));
                files.AddRange(folder.WritePicture(name, plot));
            }
        }

        if (fits.Count > 1 || !files.Any(f => f.EndsWith(".png", StringComparison.Ordinal)))
        {
            files.AddRange(folder.WritePicture("plot", FitPlot.OfAll(fits)));
        }

        foreach ((string tyre, SimulationFit? simulated) in outcome.Simulated)
        {
            if (simulated is not null)
            {
                string name = fits.Count == 1 ? "simulated" : Unique("simulated-" + Slug.Of(tyre));
                files.AddRange(folder.WritePicture(name, SimulationFitPlot.Of(tyre, simulated)));
            }
        }

        if (outcome.Meaning is MeaningResult m && MeaningPlot.Of(m.Tyres, m.Opponent, m.Stronger) is PlotSheet shoves)
        {
            files.AddRange(folder.WritePicture("on-the-robot", shoves));
        }

        // names that only signs or capitals tell apart get a number
        string Unique(string name)
        {
            string free = name;
            for (int n = 2; !names.Add(free); n++)
            {
                free = $"{name}-{n}";
            }

            return free;
        }
    }
}
