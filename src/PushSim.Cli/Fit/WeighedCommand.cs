using PushSim.Analysis.Wear;
using PushSim.Scenarios.Notebook;
using PushSim.Words.Wear;
using Spectre.Console;

namespace PushSim.Cli.Fit;

/// <summary>`pushsim fit` of weighings: how abrasive a floor is.</summary>
internal static class WeighedCommand
{
    /// <summary>The table of weighings that a command line means; null if it means none.</summary>
    public static string? FileOf(FitRequest request) => request.Files is [string file] && WeighingReader.IsWeighings(file) ? file : null;

    public static int Run(string file, FitRequest request, OutputRequest options, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        if (request.RobotFile is not string scenario)
        {
            return Complaint.OfCommandLine(error, "weighings need a scenario of the driving that was done: add --robot scenarios/tyre-wear.toml, for example", "fit");
        }

        var ask = new OutputAsk("fit", "fit", [file], error, cancel);
        options.Expect(ask);
        WeighedStudy study = WeighedStudy.Of(file, scenario, new ReadOptions { Set = request.Set, Garage = request.Garage });
        if (ProblemWriter.Tell(error, study.Problems, study.CannotRead) is int wrong)
        {
            return wrong;
        }

        WeighedWear wear = study.Wear!;
        using OutputFolder? folder = options.Open(ask);
        List<string> files = folder is null ? [] : folder.Put([folder.WriteForm("floor.toml", study.Block)]);
        string verdict = WeighedWords.Verdict(wear);
        options.Print(output, () => Json(study, verdict), PlainText.Of(verdict), () =>
        {
            CardText.Write(output, WeighedWords.Of(wear), [], files);
            IAnsiConsole console = CommandText.Console(output);
            console.WriteLine();
            output.Write(study.Block);
            if (options.Details)
            {
                console.WriteLine();
                CommandText.Wrapped(console, WeighedWords.Method);
            }
        });
        return ExitCode.Done;
    }

    private static string Json(WeighedStudy study, string verdict) => CommandJson.Write(writer =>
    {
        WeighedWear wear = study.Wear!;
        CommandJson.WriteHead(writer, "fit", verdict, []);
        CommandJson.WriteNumber(writer, "abrasiveness", wear.Abrasiveness.Value);
        CommandJson.WriteNumber(writer, "abrasiveness_low", wear.Abrasiveness.Low);
        CommandJson.WriteNumber(writer, "abrasiveness_high", wear.Abrasiveness.High);
        CommandJson.WriteNumber(writer, "abrasiveness_of_file", wear.Assumed);
        CommandJson.WriteNumber(writer, "wear_mm3_per_kj", 1e12 * wear.PerWork);
        CommandJson.WriteNumber(writer, "mass_lost_mg", 1e6 * wear.Loss);
        CommandJson.WriteNumber(writer, "driven_s", wear.Time);
        writer.WriteNumber("weighings", wear.Count);
        writer.WriteString("toml", study.Block);
    });
}
