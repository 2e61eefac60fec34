using System.Text.Json;
using PushSim.Scenarios.Keys;
using Xunit;

namespace PushSim.Cli.Tests;

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

    [Fact]
    public void The_files_name_schemas_that_lie_beside_them()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("new", "--out", scratch["a"]);
        foreach (string file in new[] { "launch.toml", "robot.toml" })
        {
            string first = File.ReadLines(scratch["a/" + file]).First();
            Assert.StartsWith("#:schema ./pushsim-", first);
            using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(scratch["a/" + first["#:schema ./".Length..]]));
            Assert.Contains("draft-04", schema.RootElement.GetProperty("$schema").GetString());
        }
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
