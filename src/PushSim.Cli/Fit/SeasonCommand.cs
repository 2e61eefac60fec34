using PushSim.Analysis.Season;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Plotting.Report;
using PushSim.Scenarios.Notebook;
using PushSim.Words.Fits;
using Spectre.Console;

namespace PushSim.Cli.Fit;

/// <summary>`pushsim fit` of a notebook: friction by tyre and state of the floor over all days.</summary>
internal static class SeasonCommand
{
    public const string SlidingTitle = "Sliding friction by tyre and floor";
    public const string BreakawayTitle = "Friction as it lets go, by tyre and floor";

    /// <summary>The notebook that a command line means; null if it means none.</summary>
    public static string? NotebookOf(IReadOnlyList<string> files, string? garage)
    {
        if (files.Count == 1)
        {
            return NotebookReader.IsNotebookFile(files[0]) ? files[0] : null;
        }

        return files.Count == 0 && NotebookReader.FileOf(GarageFolder.Of(garage)) is string notebook ? GarageFolder.Shown(notebook) : null;
    }

    public static int Run(string notebook, OutputRequest options, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var ask = new OutputAsk("fit", "fit", [notebook], error, cancel);
        options.Expect(ask);
        SeasonStudy study = SeasonStudy.Of(notebook, options.Garage);
        if (ProblemWriter.Tell(error, study.Notebook.Problems, study.Notebook.CannotRead) is int wrong)
        {
            return wrong;
        }

        if (study.First is not SeasonFit fit)
        {
            foreach (SeasonBound b in study.Bounds)
            {
                error.WriteLine(PlainText.Of(FormattableString.Invariant($"pushsim: static friction of {b.Tyre}{(b.State.Length > 0 ? ", " + b.State : "")} is at least {b.AtLeast:0.00}: the motors of {b.Robot} set the pull")));
            }

            error.WriteLine($"pushsim: error: {PlainText.Of(notebook)} has too few pulls {(study.Bounds.Count > 0 ? "that slid" : "that count")}; write down at least two of one tyre in one state of the floor");
            return ExitCode.WrongInput;
        }

        bool isSliding = study.Sliding is not null;
        string verdict = SeasonWords.Verdict(fit, isSliding);
        AnswerCard card = SeasonWords.Of(fit, isSliding, study.RobotChanges);
        List<string> files = [];
        using (OutputFolder? folder = options.Open(ask))
        {
            if (folder is not null)
            {
                if (!options.NoPlots)
                {
                    files.AddRange(folder.WritePicture("plot", SeasonPlot.Of(fit, isSliding)));
                }

                if (options.Report)
                {
                    files.Add(folder.Write(CommandPage.FileName, Page(study, card, verdict).Write));
                }

                files = folder.Put(files);
            }
        }

        options.Print(output, () => Json(study, verdict), PlainText.Of(verdict), () =>
        {
            if (!options.Details)
            {
                CardText.Write(output, card, study.Notes, files);
                return;
            }

            IAnsiConsole console = CommandText.Console(output);
            CommandText.Wrapped(console, verdict, Decoration.Bold);
            foreach (AnswerTable table in Tables(study))
            {
                console.WriteLine();
                CommandText.Line(console, table.Caption, Decoration.Bold);
                CommandText.Write(console, table);
            }

            foreach (string note in study.Notes.Prepend(SeasonWords.Changed(fit, study.RobotChanges)).Where(n => n.Length > 0))
            {
                CommandText.Wrapped(console, note);
            }

            CommandText.WriteFiles(output, files);
        });
        return ExitCode.Done;
    }

    /// <summary>Tables of both frictions, as far as they are there.</summary>
    public static IReadOnlyList<AnswerTable> Tables(SeasonStudy study) =>
    [
        .. study.Sliding is null ? Array.Empty<AnswerTable>() : [SeasonWords.Table(study.Sliding, SlidingTitle)],
        .. study.Breakaway is null ? Array.Empty<AnswerTable>() : [SeasonWords.Table(study.Breakaway, BreakawayTitle)],
    ];

    private static ReportPage Page(SeasonStudy study, AnswerCard card, string verdict) => new()
    {
        Command = "fit",
        Subject = "readings",
        Question = "How much does each tyre grip, on which floor?",
        Verdict = verdict,
        Card = card,
        Warnings = study.Notes,
        Tables = Tables(study),
        Figures = SeasonPlot.Of(study.First!, study.Sliding is not null).Figures,
        Cautions = Cautions.OfFits,
    };

    private static string Json(SeasonStudy study, string verdict) => CommandJson.Write(writer =>
    {
        CommandJson.WriteHead(writer, "fit", verdict, study.Notes);
        writer.WriteString("changed", SeasonWords.Changed(study.First!, study.RobotChanges));
        CommandJson.WriteNumber(writer, "pull_scatter_ratio", study.First!.Scatter);
        CommandJson.WriteNumber(writer, "day_spread_ratio", study.First.DaySpread);
        CommandJson.WriteRows(writer, "limited_by_motors", study.Bounds, b =>
        {
            writer.WriteString("name", b.Tyre);
            writer.WriteString("state", b.State);
            writer.WriteString("robot", b.Robot);
            CommandJson.WriteNumber(writer, "static_friction_at_least", b.AtLeast);
            CommandJson.WriteNumber(writer, "motor_force_n", b.MotorForce);
            writer.WriteNumber("pulls", b.Pulls);
        });
        string[] keys = [.. (study.Sliding?.Groups ?? []).Concat(study.Breakaway?.Groups ?? []).Select(SeasonWords.Name).Distinct()];
        CommandJson.WriteRows(writer, "tyres", keys, key =>
        {
            SeasonGroup? sliding = study.Sliding?.Groups.FirstOrDefault(g => SeasonWords.Name(g) == key), peak = study.Breakaway?.Groups.FirstOrDefault(g => SeasonWords.Name(g) == key);
            SeasonGroup any = sliding ?? peak!;
            writer.WriteString("name", any.Tyre);
            writer.WriteString("state", any.State);
            Write(writer, "static_friction", peak?.Friction);
            Write(writer, "kinetic_friction", sliding?.Friction);
            writer.WriteString("limited_by", Limit(study, (any.Tyre, any.State)));
            writer.WriteNumber("pulls", any.Pulls);
            writer.WriteNumber("days", any.Days);
            CommandJson.WriteNumber(writer, "load_n", any.Load);
            Fading? f = any.Fading;
            Write(writer, "fouled_ratio", f?.Fouled);
            Write(writer, f?.IsInMetres == true ? "fouling_distance_m" : "fouling_pulls", f?.Scale);
            CommandJson.WriteRows(writer, "by_day", any.ByDay, d =>
            {
                writer.WriteString("day", SeasonWords.Date(d.Day));
                CommandJson.WriteNumber(writer, "friction", d.Friction);
                writer.WriteNumber("pulls", d.Pulls);
            });
        });
    });

    private static string Limit(SeasonStudy study, (string, string) group) => study.LimitedBy.GetValueOrDefault(group) switch { BindingKind.Tyre => "tyre", BindingKind.Motor => "motors", _ => "unknown" };

    private static void Write(Utf8JsonWriter writer, string key, Interval? i)
    {
        CommandJson.WriteNumber(writer, key, i?.Value);
        CommandJson.WriteNumber(writer, key + "_low", i?.Low);
        CommandJson.WriteNumber(writer, key + "_high", i?.High);
    }
}
