using PushSim.Analysis.Limits;
using PushSim.Scenarios;
using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Check;

/// <summary>`pushsim check FILE...`: every mistake at once.</summary>
internal static class CheckCommand
{
    public static Command Create(TextWriter output, TextWriter error)
    {
        var files = new Argument<string[]>("FILE") { Description = "Scenario or robot files.", Arity = ArgumentArity.OneOrMore };
        var json = new Option<bool>("--json") { Description = "Print one JSON document." };
        var derived = new Option<bool>("--derived") { Description = "Print every number that is estimated, converted or from the shelf." };
        var command = new Command(
            "check",
            "Reads files and says every mistake with its place; of a right file what its\nrobots can do, in a line each, to compare with the robot on the table.\n\n"
            + "Examples:\n  pushsim check scenarios/pull-test.toml\n  pushsim check my.toml robots/mine.toml --json\n  pushsim check --derived scenarios/gopher-launch.toml")
        {
            files, json, derived,
        };
        command.SetAction(parsed => Check(parsed.GetValue(files)!, GarageOption.Of(parsed), parsed.GetValue(json), parsed.GetValue(derived), output, error));
        return command;
    }

    private static int Check(string[] files, string? garage, bool json, bool isDerived, TextWriter output, TextWriter error)
    {
        List<Problem> problems = [];
        List<(string File, DerivedValue Value)> derived = [];
        List<(string File, Plausibility Robot)> robots = [];
        bool cannotRead = false;
        foreach (string file in files)
        {
            if (Path.GetFileName(file) == GarageFolder.FileName && GarageFolder.Of(Path.GetDirectoryName(Path.GetFullPath(file))) is GarageFolder folder)
            {
                GarageContents all = GarageReader.Read(folder);
                problems.AddRange(all.Problems);
                problems.AddRange(all.All.Where(i => i.Item.IsUnusable && i.Kind != "robot").SelectMany(i => i.Item.Lacks.Select(l => new Problem(file, 0, 0, Severity.Error, $"{i.Kind} \"{i.Item.Name}\": {l}", ""))));
                continue;
            }

            ReadResult result = ScenarioReader.Check(file, new ReadOptions { Garage = garage });
            problems.AddRange(result.Problems);
            derived.AddRange(result.Derived.Select(d => (file, d)));
            robots.AddRange((result.Scenario is ScenarioSettings s ? PlausibilityFinder.All(s) : result.Robot is RobotSettings r ? PlausibilityFinder.Of(r) : []).Select(p => (file, p)));
            cannotRead |= result.CannotRead;
        }

        // a file that two others name is read twice: its mistakes are told, and counted, once
        problems = [.. problems.Distinct()];
        int errors = problems.Count(p => p.Severity == Severity.Error);
        List<string> doubts = [.. robots.SelectMany(r => PlausibilityWords.Warnings(r.Robot)).Distinct()];
        int warnings = problems.Count - errors + doubts.Count;
        string ofWarnings = warnings == 0 ? "" : $", {warnings} {(warnings == 1 ? "warning" : "warnings")}";
        string verdict = errors == 0 ? $"No mistakes found{ofWarnings}." : $"{errors} {(errors == 1 ? "mistake" : "mistakes")} found.";
        if (json)
        {
            output.WriteLine(JsonReport.Write(writer => CheckJson.Write(writer, verdict, doubts, problems, robots, isDerived ? derived : null)));
        }
        else
        {
            ProblemWriter.Write(error, problems);
            output.WriteLine(verdict);
            if (isDerived)
            {
                CheckText.WriteDerived(output, derived);
            }

            CheckText.WriteRobots(output, robots.Select(r => r.Robot), doubts);
        }

        return cannotRead ? ExitCode.CannotReadOrWrite : errors > 0 ? ExitCode.WrongInput : ExitCode.Done;
    }
}
