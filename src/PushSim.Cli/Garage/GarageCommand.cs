namespace PushSim.Cli.Garage;

/// <summary>`pushsim garage`: what is there, and what each thing lacks.</summary>
internal static class GarageCommand
{
    private const string DefaultFolder = "garage";

    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var common = new CommonOptions("Folder for the page.", "Write report.html: tyres over the season, league table, what was learnt.");
        var command = new Command(
            "garage",
            "What you own and measured, and what each thing lacks.\n\n"
            + "A garage is the nearest folder upwards with garage.toml. Commands take its\nnames: pushsim odds mole badger is the even start of two. A file of that name\ngoes first.\n\n"
            + "Examples:\n  pushsim garage new\n  pushsim garage\n  pushsim garage --report\n  pushsim garage --garage my-garage --json");
        common.AddTo(command);
        command.Subcommands.Add(New(output, error, cancel));
        command.SetAction(parsed => List(common.Of(parsed), output, error, cancel));
        return command;
    }

    private static Command New(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var folder = new Argument<string>("DIR") { Description = "Folder of the garage.", DefaultValueFactory = _ => DefaultFolder };
        var command = new Command("new", "Writes a commented garage to begin with: two robots, tyres, an opponent, a floor,\na notebook.\n\nExamples:\n  pushsim garage new\n  pushsim garage new my-garage") { folder };
        command.SetAction(parsed => GarageStarter.Write(parsed.GetValue(folder)!, output, error, cancel));
        return command;
    }

    private static int List(OutputRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        if (GarageFolder.Of(request.Garage) is not GarageFolder folder)
        {
            error.WriteLine($"pushsim: error: there is no garage here: no folder upwards has {GarageFolder.FileName}");
            error.WriteLine("help: pushsim garage new makes one to begin with; --garage DIR names another");
            return ExitCode.CannotReadOrWrite;
        }

        GarageContents garage = GarageReader.Read(folder);
        int? wrong = ProblemWriter.Tell(error, garage.Problems, garage.Notebook?.CannotRead == true);
        List<string> files = [];
        if (request.Report && wrong is null)
        {
            using OutputFolder? written = request.Open(new OutputAsk("garage", "garage", [folder.File], error, cancel));
            SeasonStudy? season = garage.Notebook is { IsRead: true } notebook && SeasonStudy.Of(notebook, folder.Path) is { First: not null } study ? study : null;
            GaragePageFile(written, season);
        }

        request.Print(output, () => GarageJson.Of(garage), GarageText.Verdict(garage), () =>
        {
            GarageText.Write(output, garage, request.Garage, request.Details);
            TextReport.WriteFiles(output, files);
        });
        return wrong ?? ExitCode.Done;

        void GaragePageFile(OutputFolder? written, SeasonStudy? season)
        {
            if (written is not null)
            {
                files.Add(written.Write(PageReport.FileName, GaragePage.Of(garage, request.Garage, season, GaragePage.League(garage, request, error, cancel)).Write));
                files = written.Put(files);
            }
        }
    }
}
