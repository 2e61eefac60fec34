using PushSim.Runs;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>The example of the documentation, between the two marks: how a program of one's own uses the engine.</summary>
public class LibraryExampleTests
{
    [Fact]
    public void The_example_runs_and_a_heavier_robot_is_slower_to_its_speed()
    {
        using var files = new SmallFiles(SmallFiles.Robot, SmallFiles.With(SmallFiles.Scenario, "kind = \"reversal\"\nstart = \"0.1 s\"\nreverse_at = \"1 s\"", "kind = \"launch\"\nstart = \"0.1 s\""));
        (double light, double heavy, double last) = TimesToSpeed(files.ScenarioPath);
        Assert.InRange(heavy, 1.1 * light, 3.0 * light);
        Assert.InRange(last, 1.9, 2.01);
    }

    [Fact]
    public void The_page_shows_this_example()
    {
        string here = File.ReadAllText(Path.Combine(Generated.Root(), "tests", "PushSim.Scenarios.Tests", "LibraryExampleTests.cs")).ReplaceLineEndings("\n");
        string[] example = here.Split("// example begins\n")[^1].Split("// example ends")[0].Split('\n');
        string page = File.ReadAllText(Path.Combine(Generated.Root(), "src", "docs", "library.md")).ReplaceLineEndings("\n");
        Assert.Contains(string.Join('\n', example.Select(l => l.Length > 8 ? l[8..] : "")).TrimEnd(), page);
        Assert.All(here.Split('\n').Where(l => l.StartsWith("using PushSim", StringComparison.Ordinal)), l => Assert.Contains(l, page));
    }

    private static (double Light, double Heavy, double Last) TimesToSpeed(string path)
    {
        // example begins
        ReadResult read = ScenarioReader.Read(path);
        foreach (Problem problem in read.Problems)
        {
            Console.Error.WriteLine($"{problem.File}:{problem.Line}: {problem.Message}");
        }

        ScenarioSettings scenario = read.Scenario ?? throw new InvalidDataException("the scenario has mistakes");
        RunResult asIs = Simulator.Run(scenario);
        Console.WriteLine(RunWords.Verdict(asIs));

        // settings are records in SI units: change one value, leave the rest
        RobotSettings robot = scenario.Robot;
        RunResult heavier = Simulator.Run(scenario with
        {
            Robot = robot with { Chassis = robot.Chassis with { Mass = 1.5 * robot.Chassis.Mass } },
        });
        double? light = asIs.Answers.TimeTo90PercentSpeed;
        double? heavy = heavier.Answers.TimeTo90PercentSpeed;

        // the whole history is there too, part by part: asIs.Trace.Body.Speed, asIs.Trace.Wheels[0].Load, ... at asIs.Time [s]
        double last = asIs.Time[^1];
        // example ends
        return (light!.Value, heavy!.Value, last);
    }
}
