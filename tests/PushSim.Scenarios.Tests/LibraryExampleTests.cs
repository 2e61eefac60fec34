using System.Text.RegularExpressions;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Fit;
using PushSim.Analysis.Ladder;
using PushSim.Analysis.Statistics;
using PushSim.Analysis.Sweep;
using PushSim.Analysis.Turning;
using PushSim.Runs;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Studies;
using PushSim.Simulation;
using PushSim.Words.Matches;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>The examples of the documentation, each between two marks: how a program of one's own uses the engine.</summary>
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
    public void Readings_off_a_display_rank_the_tyres()
    {
        // example begins
        var tests = new PullTests();
        foreach ((string tyre, double newton) in new[] { ("soft", 10.6), ("neoprene", 9.1), ("soft", 10.9), ("neoprene", 9.4) })
        {
            tests.Add(tyre, new PullReading(newton));
        }

        // 13.3 N on the tyres that pulled
        IReadOnlyList<TyreFit> fits = tests.Fit(GripLoad.Fixed(13.3));
        foreach (TyreFit fit in fits)
        {
            Console.WriteLine($"{fit.Name}: {fit.KineticFriction?.Value:0.00} from {fit.Pulls} pulls");
        }

        // example ends
        Assert.Equal(["soft", "neoprene"], fits.Select(f => f.Name));
        Assert.Equal((10.6 + 10.9) / 2.0 / 13.3, fits[0].KineticFriction!.Value.Value, 1e-12);
    }

    [Fact]
    public void Odds_go_on_from_a_journal_in_memory()
    {
        string path = Path.Combine(Generated.Root(), "scenarios", "shove-equals.toml");
        using var stop = new CancellationTokenSource();
        var journal = new MatchMemory();
        for (int call = 0; call < 2; call++)
        {
            // example begins
            DrawableResult shove = DrawableScenario.Open(path);
            var drawn = new FileMatchSource(shove.Scenario!, new ContestKey(Seed: 1, shove.Scenario!.Label));
            var work = new MatchWork(new MatchPlan("my odds", Matches: 60, Seed: 1, Threads: 2), () => [Fingerprint.Of(shove, drawn)], [drawn], KeptMatchWords.Instance, journal);
            work.Resume();
            Console.WriteLine($"going on after {work.Finished} matches");
            work.Run(cancel: stop.Token);

            var tally = Tally.Of(work.Of(0));
            Console.WriteLine($"{drawn.Robot} wins {tally.Wins} of {tally.Matches}, 95 % sure: {tally.WinInterval.Low:0.00} to {tally.WinInterval.High:0.00}");
            foreach ((string name, Interval share) in InputShares.Of(drawn, work.Of(0)).Told)
            {
                Console.WriteLine($"{name}: {100.0 * share.Value:0} % ({100.0 * share.Low:0} to {100.0 * share.High:0} %) of the variance of the ground gained");
            }

            // example ends
            Assert.Equal(60, tally.Matches);
            stop.Cancel();
        }
    }

    [Fact]
    public void A_turn_map_and_a_sweep_set_values_by_key()
    {
        string path = Path.Combine(Generated.Root(), "scenarios", "spot-turn.toml");

        // example begins
        _ = SweepInput.TryParse("tyre.soft.body_damping=0.1..3 N s/m", 2, out SweepInput? dampings, out _);
        (MapAxis damping, MapAxis friction) = (MapAxis.Of(dampings!)!, new MapAxis("floor.friction", 0.5, 1.0, Unit: ""));
        double[] x = StabilityMap.Spaced(damping.From, damping.To, 4);
        double[] y = StabilityMap.Spaced(friction.From, friction.To, 2);
        var map = StabilityMap.Compute(x, y, (d, f) => TurnMaps.At(path, damping, d, friction, f).Scenario, everyX: 4, everyY: 2);
        int chatters = map.Found.Count(p => p.Growth > 0.0);

        _ = SweepInput.TryParse("drive.*.gear_ratio=10..30", 3, out SweepInput? ratio, out _);
        IReadOnlyList<int[]> places = SweepRuns.Places([ratio!]);
        SweepPoint?[] points = SweepRuns.Run(
            places, i => SweepFile.At(path, [ratio!], places[i]).Scenario!.Middle, run => [run.Turning?.YawRateWithoutSlip], threads: 2);
        var table = SweepTable.Of([ratio!], [("yaw_rate_without_slip_rad_per_s", true)], [.. points.OfType<SweepPoint>()]);
        string best = ratio!.Texts[table.Columns[0].Best ?? 0];
        // example ends
        Assert.Equal(8, map.Found.Count());
        Assert.InRange(chatters, 0, 8);
        Assert.Equal(3, table.Points.Count);
        Assert.Equal("10", best);
    }

    [Fact]
    public void A_ladder_of_files_has_a_place_for_each_robot()
    {
        string[] files = [.. new[] { "mole", "badger" }.Select(n => Path.Combine(Generated.Root(), "scenarios", "robots", n + ".toml"))];

        // example begins
        var ladder = new DrawnLadder(files, scene: null, seed: 1);
        MatchWork league = ladder.Work(new MatchPlan("my ladder", Matches: 30, Seed: 1, Threads: 2), KeptMatchWords.Instance);
        league.Run();
        var places = LadderTable.Of(ladder.Names.Count, ladder.Pairs(league));
        foreach ((int robot, double score, double low, double high) in places.Ranking)
        {
            Console.WriteLine($"{ladder.Names[robot]}: {score:0} ({low:0} to {high:0})");
        }

        // example ends
        Assert.Equal(["badger", "mole"], places.Ranking.Select(r => ladder.Names[r.Robot]).Order(StringComparer.Ordinal));
        Assert.Equal(30.0, places.Pairs[0].Matches);
    }

    [Fact]
    public void The_page_shows_these_examples()
    {
        string here = File.ReadAllText(Path.Combine(Generated.Root(), "tests", "PushSim.Scenarios.Tests", "LibraryExampleTests.cs")).ReplaceLineEndings("\n");
        string page = File.ReadAllText(Path.Combine(Generated.Root(), "src", "docs", "library.md")).ReplaceLineEndings("\n");
        MatchCollection examples = Regex.Matches(here, "^( +)// example begins\n(.*?)^ +// example ends$", RegexOptions.Multiline | RegexOptions.Singleline);
        Assert.Equal(5, examples.Count);
        Assert.All(examples, e => Assert.Contains(string.Join('\n', e.Groups[2].Value.Split('\n').Select(l => l.Length > e.Groups[1].Length ? l[e.Groups[1].Length..] : "")).TrimEnd(), page));
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
