using PushSim.Cli.Advise;
using PushSim.Cli.Bench;
using PushSim.Cli.Check;
using PushSim.Cli.Cluster;
using PushSim.Cli.Compare;
using PushSim.Cli.Completion;
using PushSim.Cli.Explain;
using PushSim.Cli.Fit;
using PushSim.Cli.Garage;
using PushSim.Cli.Ladder;
using PushSim.Cli.Limits;
using PushSim.Cli.New;
using PushSim.Cli.Odds;
using PushSim.Cli.Open;
using PushSim.Cli.Plan;
using PushSim.Cli.Run;
using PushSim.Cli.Shelf;
using PushSim.Cli.Sweep;
using PushSim.Files;
using PushSim.Scenarios.Starters;
using PushSim.Workbench;

namespace PushSim.Cli;

/// <summary>The command tree; output, errors and interrupts are injected.</summary>
public static class CommandLineApp
{
    private const string NoColour = "--no-color";

    private const string Description =
        "Simulates a small skid-steer robot from a text file: launch, braking, pull\nand drag tests, turning, shoving matches and their odds.\n\n"
        + "Examples:\n  pushsim new\n  pushsim run scenarios/launch-soft.toml\n  pushsim explain body_stiffness";

    /// <summary>Runs one command line.</summary>
    /// <param name="args">Arguments without the program's name.</param>
    /// <param name="output">Standard output.</param>
    /// <param name="error">Standard error.</param>
    /// <param name="cancel">Interrupt.</param>
    /// <param name="input">A person's terminal to ask on; null asks nothing.</param>
    /// <returns>One of <see cref="ExitCode"/> [1].</returns>
    public static int Invoke(string[] args, TextWriter output, TextWriter error, CancellationToken cancel = default, TextReader? input = null)
    {
        using var clock = CommandClock.Begin();
        (string Name, Func<Command> Create)[] commands =
        [
            ("run", () => RunCommand.Create(output, error, cancel)), ("open", () => OpenCommand.Create(Starter, RunPageFile.Write, output, error, cancel)), ("check", () => CheckCommand.Create(output, error)), ("limits", () => LimitsCommand.Create(output, error, cancel)),
            ("compare", () => CompareCommand.Create(output, error, cancel)), ("fit", () => FitCommand.Create(output, error, cancel)), ("plan", () => PlanCommand.Create(output, error, cancel)),
            ("odds", () => OddsCommand.Create(output, error, cancel)), ("sweep", () => SweepCommand.Create(output, error, cancel)), ("ladder", () => LadderCommand.Create(output, error, cancel)),
            ("bench", () => BenchCommand.Create(output, error, input, cancel)), ("garage", () => GarageCommand.Create(output, error, cancel)),
            ("advise", () => AdviseCommand.Create(output, error, cancel)),
            ("cluster", () => ClusterCommand.Create((words, o, e) => Invoke(words, o, e, cancel), output, error)),
            ("new", () => NewCommand.Create(output, error, input, cancel)), ("explain", () => ExplainCommand.Create(output, error)), ("shelf", () => ShelfCommand.Create(output, error)),
        ];

        // of all commands, wherever it stands
        CommandText.HasNoColour = args.Contains(NoColour, StringComparer.Ordinal);
        args = [.. args.Where(a => a != NoColour)];

        // what is read from here on is never removed or written over
        InputLog.Begin();

        // not a RootCommand: that one is called after the program's file
        var root = new Command("pushsim", Description) { ShortHelp.Option(), new VersionOption { Description = "Show the version." } };

        // who names a command needs no other, and the options of all cost a start some 70 methods to compile
        bool isNamed = args.Length > 0 && commands.Any(c => c.Name == args[0]);
        foreach ((string _, Func<Command> create) in commands.Where(c => !isNamed || c.Name == args[0]))
        {
            Command command = create();
            GarageOption.AddTo(command);
            root.Add(command);
        }

        if (!isNamed)
        {
            root.Add(CompletionCommand.Create(root, output));
        }

        if (args.Length == 0)
        {
            // who types the name alone wants to know what there is
            root.Parse(["--help"]).Invoke(new InvocationConfiguration { Output = error, Error = error });
            return ExitCode.WrongCommandLine;
        }

        ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0 || CommandLineErrors.Taken(parsed).Length > 0)
        {
            foreach (string problem in CommandLineErrors.Of(parsed))
            {
                error.WriteLine("pushsim: error: " + PlainText.Of(problem));
            }

            error.WriteLine(parsed.CommandResult.Command == root ? "help: pushsim --help" : $"help: pushsim {parsed.CommandResult.Command.Name} --help");
            return ExitCode.WrongCommandLine;
        }

        if (GarageOption.Wrong(parsed) is string wrong)
        {
            error.WriteLine("pushsim: error: " + PlainText.Of(wrong));
            return ExitCode.CannotReadOrWrite;
        }

        var configuration = new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false };
        try
        {
            return parsed.Invoke(configuration);
        }
        catch (OperationCanceledException)
        {
            error.WriteLine("pushsim: interrupted");
            return ExitCode.Interrupted;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.WriteLine("pushsim: error: " + PlainText.Of(e.Message));
            return ExitCode.CannotReadOrWrite;
        }
        catch (Exception e)
        {
            // a fault of ours: one line for the user instead of a stack trace
            error.WriteLine($"pushsim: error: internal fault, please report it with your file: {e.GetType().Name}: {PlainText.Of(e.Message)}");
            return ExitCode.RunFailed;
        }
    }

    // the files of `new`, for the form of the workbench
    internal static (IReadOnlyList<(string Name, string Text)> Files, string Wrong) Starter(StarterAsk asked)
    {
        static string? Said(string text) => text.Length == 0 ? null : text;
        StarterDesign? design = new StarterAnswers(Said(asked.Mass), Said(asked.Wheels), Said(asked.Motor), Said(asked.Tyre)).Design(out string wrong);
        return StarterFiles.Find(asked.Kind) is string kind ? (wrong.Length > 0 ? [] : StarterFiles.Of(kind, design), wrong) : ([], $"there is no kind \"{asked.Kind}\"");
    }
}
