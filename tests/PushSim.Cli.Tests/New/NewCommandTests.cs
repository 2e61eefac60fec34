using System.Text.Json;
using PushSim.Analysis;
using PushSim.Cli.New;
using PushSim.Cli.Shared;
using PushSim.Runs;
using PushSim.Scenarios;
using PushSim.Scenarios.Keys;
using PushSim.Simulation;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Cli.Tests.New;

public class NewCommandTests
{
    public static TheoryData<string> Kinds => [.. StarterFiles.Kinds];

    [Fact]
    public void Every_kind_of_manoeuvre_has_a_starter()
    {
        string[] words = [.. KeyTable.Find("manoeuvre", "kind")!.Choices];
        Assert.All(words, w => Assert.NotNull(StarterFiles.Find(w)));
        Assert.Contains(StarterFiles.DefaultKind, StarterFiles.Kinds);
    }

    // new, then check, then run, as a person would
    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_starter_runs_as_it_is(string kind)
    {
        using var scratch = new ScratchFolder();
        Cli made = Cli.Run("new", "--kind", kind, "--out", scratch["my robot"]);
        Assert.Equal("", made.Error);
        Assert.Equal(ExitCode.Done, made.Code);
        string scenario = scratch[$"my robot/{kind}.toml"];
        Assert.Contains($"next: pushsim run \"{scenario}\"", made.Output);
        Assert.Contains("invented", File.ReadAllText(scenario));
        Cli check = Cli.Run("check", scenario, scratch["my robot/robot.toml"]);
        Assert.Equal("", check.Error);
        Assert.Equal(ExitCode.Done, check.Code);
        Cli run = Cli.Run("run", scenario, "--json");
        Assert.Equal("", run.Error);
        Assert.Equal(ExitCode.Done, run.Code);
        using JsonDocument json = JsonDocument.Parse(run.Output);
        Assert.Equal("finished", json.RootElement.GetProperty("status").GetString());
        Assert.Empty(json.RootElement.GetProperty("warnings").EnumerateArray());
        Assert.InRange(json.RootElement.GetProperty("energy_residual_ratio").GetDouble(), 0.0, 1e-3);
    }

    // twins of the starter, and whoever meets in a shipped shove, start together: no robot is handed the match
    [Fact]
    public void A_starter_and_every_shipped_shove_start_even()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("new", "--kind", "shove", "--out", scratch["my"]);
        ScenarioSettings starter = ScenarioReader.Read(scratch["my/shove.toml"]).Scenario!;
        StartCase together = StartReview.Of(starter with { Opponent = starter.Opponent! with { Robot = starter.Robot } }).Cases[(int)StartOrder.Together];
        Assert.Equal((ShoveEnding.Stalemate, 0.0), (together.Ending, together.GroundGained));
        string[] shoves = [scratch["my/shove.toml"], .. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "shove-*.toml")];
        Assert.True(shoves.Length > 8);
        Assert.All(shoves, s => Assert.Equal(0.0, StartShift.Lead(ScenarioReader.Read(s).Scenario!)));
    }

    // across the trade: every mass class with every layout, several motors and tyres; as written it is right, and it runs
    [Theory]
    [InlineData("80 g", "2", "8 mm coreless", "craft foam")]
    [InlineData("150g", "2", null, null)]
    [InlineData("450 g", "4", "16mm", "silicone")]
    [InlineData("1 lb", "6", "20 mm", null)]
    [InlineData("1.5kg", "4", "25 mm brushed gearmotor, 12 V, 50:1", "urethane 80A")]
    [InlineData(null, "8", null, "neoprene")]
    [InlineData("3 kg", "4", "28 mm brushless outrunner", "moulded SBR 60A treaded")]
    [InlineData("15 kg", "6", null, null)]
    [InlineData("5 kg", null, "40 mm brushed", null)]
    public void A_starter_of_the_asked_parts_is_right_and_runs(string? mass, string? wheels, string? motor, string? tyre)
    {
        using var scratch = new ScratchFolder();
        string[] options = [.. new[] { ("--mass", mass), ("--wheels", wheels), ("--motor", motor), ("--tyre", tyre) }.Where(o => o.Item2 is not null).SelectMany(o => new[] { o.Item1, o.Item2! })];

        // a shove's run draws 32 matches beside its own; that of a light robot takes steps of 30 microseconds, so that it is run by itself alone
        bool isLight = mass is "80 g" or "150g";
        foreach (string kind in new[] { "shove", "drag-test", "wall" })
        {
            Cli made = Cli.Run(["new", "--kind", kind, "--out", scratch[kind], .. options]);
            Assert.True(made.Code == ExitCode.Done, made.Error);
            Cli check = Cli.Run("check", scratch[$"{kind}/{kind}.toml"], scratch[$"{kind}/robot.toml"]);
            string[] warned = [.. check.Error.Split('\n').Where(l => l.Contains("warning", StringComparison.Ordinal) && !l.Contains("\"mass\"", StringComparison.Ordinal))];
            Assert.True(check.Code == ExitCode.Done && warned.Length == 0, check.Error);
            string verdict;
            if (isLight && kind == "shove")
            {
                RunResult run = Simulator.Run(ScenarioReader.Check(scratch["shove/shove.toml"]).Scenario!);
                Assert.Equal(RunStatus.Finished, run.Status);
                verdict = RunWords.Verdict(run);
            }
            else
            {
                using JsonDocument json = JsonDocument.Parse(Cli.Run("run", scratch[$"{kind}/{kind}.toml"], "--json").Output);
                Assert.Equal("finished", json.RootElement.GetProperty("status").GetString());
                verdict = json.RootElement.GetProperty("verdict").GetString()!;
            }

            // full throttle to the end: however its tyres chatter, something else than its command held it
            Assert.DoesNotContain("zero command", verdict);
        }

        string robot = File.ReadAllText(scratch["shove/robot.toml"]);
        int count = int.Parse(wheels ?? "4", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(count == 2 ? 3 : count, robot.Split("[[wheel]]").Length - 1);
        if (!isLight)
        {
            Assert.Equal(ExitCode.Done, Cli.Run("odds", scratch["shove/shove.toml"], "--matches", "2", "--json").Code);
        }
    }

    [Theory]
    [InlineData("--wheels", "3", "2, 4, 6 or 8")]
    [InlineData("--mass", "20 g", "50 g to 100 kg")]
    [InlineData("--mass", "1.5 m", "")]
    [InlineData("--mass", "12 mm", "")]
    [InlineData("--motor", "rocket", "on the shelf")]
    [InlineData("--motor", "17mm", "; nearest are 16 mm brushed gearmotor, 12 V; 20 mm brushed gearmotor, 12 V; 12 mm brushed gearmotor, 6 V\n")]
    [InlineData("--motor", "brushed", "say more")]
    [InlineData("--motor", "5 mm", "on the shelf")]
    [InlineData("--tyre", "foamed", "say more")]
    public void Wrong_parts_are_refused_and_nothing_is_written(string option, string value, string words)
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("new", "--out", scratch["a"], option, value);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains(words, cli.Error);
        Assert.False(Directory.Exists(scratch["a"]));
    }

    [Fact]
    public void On_a_terminal_it_asks_and_asks_again()
    {
        using var scratch = new ScratchFolder();
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var input = new StringReader("heavy\n2.5 kg\n5\n6\n37 mm\n\n");
        Assert.Equal(ExitCode.Done, CommandLineApp.Invoke(["new", "--out", scratch["a"]], output, error, default, input));
        Assert.Contains("wheels: 2, 4, 6 or 8, not \"5\"", output.ToString());
        string robot = File.ReadAllText(scratch["a/robot.toml"]);
        Assert.Contains("mass = \"2500 g\"", robot);
        Assert.Contains("shelf = \"37 mm brushed gearmotor, 12 V", robot);
        Assert.Contains("shelf = \"moulded natural rubber 60A\"", robot);
        Assert.Contains("middle left", robot);

        // options answer the questions
        using var silent = new StringWriter();
        Assert.Equal(ExitCode.Done, CommandLineApp.Invoke(["new", "--out", scratch["b"], "--wheels", "2"], silent, error, default, input));
        Assert.DoesNotContain("Four questions", silent.ToString());
    }

    [Fact]
    public void The_robot_pulls_what_its_tyres_hold()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("new", "--kind", "pull", "--out", scratch["a"]);
        using JsonDocument json = JsonDocument.Parse(Cli.Run("run", scratch["a/pull-test.toml"], "--json").Output);
        double weight = 1.2 * 9.80665;
        Assert.InRange(json.RootElement.GetProperty("pull_breakaway_n").GetDouble(), 0.75 * weight, 1.1 * weight);
        Assert.Equal("tyres", json.RootElement.GetProperty("limited_by").GetString());
    }

    [Theory]
    [InlineData("launch.toml")]
    [InlineData("robot.toml")]
    public void A_file_names_the_schema_that_lies_beside_it(string file)
    {
        using var scratch = new ScratchFolder();
        Cli.Run("new", "--out", scratch["a"]);
        string first = File.ReadLines(scratch["a/" + file]).First();
        Assert.StartsWith("#:schema ./pushsim-", first);
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(scratch["a/" + first["#:schema ./".Length..]]));
        Assert.Contains("draft-04", schema.RootElement.GetProperty("$schema").GetString());
    }

    [Fact]
    public void Files_that_are_there_are_kept_unless_forced()
    {
        using var scratch = new ScratchFolder();
        string[] args = ["new", "--out", scratch["a"]];
        Assert.Equal(ExitCode.Done, Cli.Run(args).Code);
        File.WriteAllText(scratch["a/robot.toml"], "# mine\n");
        File.WriteAllText(scratch["a/notes.txt"], "keep");
        Cli refused = Cli.Run(args);
        Assert.Equal(ExitCode.CannotReadOrWrite, refused.Code);
        Assert.Equal("", refused.Output);
        Assert.Contains("launch.toml, robot.toml", refused.Error);
        Assert.Contains("--force", refused.Error);
        Assert.Equal("# mine\n", File.ReadAllText(scratch["a/robot.toml"]));
        Assert.Equal(ExitCode.Done, Cli.Run([.. args, "--force"]).Code);
        Assert.NotEqual("# mine\n", File.ReadAllText(scratch["a/robot.toml"]));
        Assert.Equal("keep", File.ReadAllText(scratch["a/notes.txt"]));
    }

    [Fact]
    public void A_second_kind_joins_the_same_untouched_robot()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("new", "--out", scratch["a"]);
        Cli second = Cli.Run("new", "--kind", "spot", "--out", scratch["a"]);
        Assert.Equal(ExitCode.Done, second.Code);
        Assert.DoesNotContain("wrote " + scratch["a/robot.toml"], second.Output);
        Assert.Equal(
            ["launch.toml", "pushsim-robot.schema.json", "pushsim-scenario.schema.json", "robot.toml", "spot.toml"],
            Directory.GetFiles(scratch["a"]).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Without_options_it_writes_a_launch_to_its_default_folder()
    {
        string before = Directory.GetCurrentDirectory();
        using var scratch = new ScratchFolder();
        Directory.SetCurrentDirectory(scratch.Path);
        try
        {
            Assert.Equal(ExitCode.Done, Cli.Run("new").Code);
            Assert.True(File.Exists(scratch["pushsim-new/launch.toml"]));
            Assert.Equal(["pushsim-new"], Directory.GetFileSystemEntries(scratch.Path).Select(Path.GetFileName));
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
        }
    }

    [Fact]
    public void Json_and_quiet_do_what_they_do_elsewhere()
    {
        using var scratch = new ScratchFolder();
        using JsonDocument json = JsonDocument.Parse(Cli.Run("new", "--out", scratch["a"], "--json").Output);
        Assert.Equal("new", json.RootElement.GetProperty("command").GetString());
        Assert.Equal(1, json.RootElement.GetProperty("schema_version").GetInt32());
        Assert.All(json.RootElement.GetProperty("files").EnumerateArray(), f => Assert.True(File.Exists(f.GetString())));
        Assert.Equal(4, json.RootElement.GetProperty("files").GetArrayLength());
        Assert.Single(Cli.Run("new", "--out", scratch["b"], "--quiet").Output.TrimEnd().Split('\n'));
    }

    [Theory]
    [InlineData(ExitCode.WrongCommandLine, "--kind", "lunch")]
    [InlineData(ExitCode.WrongCommandLine, "--kind", "a\u001b[31mb")]
    [InlineData(ExitCode.WrongCommandLine, "--kind", "")]
    [InlineData(ExitCode.WrongCommandLine, "--out", "")]
    [InlineData(ExitCode.WrongCommandLine, "--out", "a\0b")]
    [InlineData(ExitCode.WrongCommandLine, "extra", "word")]
    [InlineData(ExitCode.CannotReadOrWrite, "--out", "/dev/null/a")]
    public void Wrong_calls_say_so(int code, params string[] args)
    {
        Cli cli = Cli.Run(["new", .. args]);
        Assert.Equal(code, cli.Code);
        Assert.Equal("", cli.Output);
        Assert.NotEqual("", cli.Error);
        Assert.DoesNotContain('\u001b', cli.Error);
        Assert.DoesNotContain("internal fault", cli.Error);
    }
}
