using System.Globalization;
using System.Text.Json;
using PushSim.Cli.Run;
using PushSim.Cli.Shared;
using PushSim.Files;
using Xunit;

namespace PushSim.Cli.Tests.Run;

public class RunCommandTests
{
    public static TheoryData<string> Scenarios() =>
        [.. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)!).Order()];

    // The ledger's bound at the default tolerance; every scenario, also in a path with spaces
    [Theory]
    [MemberData(nameof(Scenarios))]
    public void Every_scenario_runs_and_its_energy_balances(string name)
    {
        Shipped run = Shipped.Json(name);
        Assert.Equal("", run.Cli.Error);
        Assert.Equal(ExitCode.Done, run.Cli.Code);
        JsonElement root = run.Root;
        Assert.InRange(root.GetProperty("energy_residual_ratio").GetDouble(), 0.0, 1e-3);
        Assert.Equal("finished", root.GetProperty("status").GetString());
        Assert.NotEmpty(root.GetProperty("verdict").GetString()!);
        Assert.Empty(root.GetProperty("closer_look_left_out").EnumerateArray());
        Assert.InRange(root.GetProperty("total_rhs_evaluations").GetInt64(), root.GetProperty("rhs_evaluations").GetInt64(), long.MaxValue);
        Assert.InRange(root.GetProperty("total_ms").GetDouble(), root.GetProperty("simulation_ms").GetDouble(), double.MaxValue);
        Assert.True(new FileInfo(run["plot.png"]).Length > 10_000);
        Assert.Contains("<svg", File.ReadAllText(run["plot.svg"]));
        string[] lines = File.ReadAllLines(run["history.csv"]);
        Assert.StartsWith("time_s,x_m,y_m", lines[0]);
        Assert.All(lines.Skip(1).SelectMany(l => l.Split(',')), cell => Assert.True(double.IsFinite(double.Parse(cell, CultureInfo.InvariantCulture))));
    }

    // Keys that scripts read, with the kind of value each scenario gives
    [Theory]
    [InlineData("launch-soft", "top_speed_m_per_s,time_to_90_percent_speed_s,limited_by")]
    [InlineData("pull-test", "pull_breakaway_n,pull_plateau_n,limited_by")]
    [InlineData("drag-test", "pull_breakaway_n,pull_jerk_n,pull_plateau_n")]
    [InlineData("reversal", "stop_distance_m")]
    [InlineData("spot-turn", "yaw_rate_rad_per_s,effective_track_ratio,scrub_moment_n_m")]
    public void Json_has_the_promised_keys(string scenario, string filled)
    {
        JsonElement root = Shipped.Json(scenario).Root;
        string[] all =
        [
            "schema_version", "command", "verdict", "warnings", "winner", "margin_m", "too_close_to_call", "pull_breakaway_n", "pull_jerk_n", "pull_plateau_n",
            "limited_by", "top_speed_m_per_s", "time_to_90_percent_speed_s", "stop_distance_m", "yaw_rate_rad_per_s", "effective_track_ratio",
            "scrub_moment_n_m", "chatter_hz", "wear_mm3", "energy_residual_ratio", "rhs_evaluations", "simulation_ms", "total_ms",
            "total_rhs_evaluations", "closer_look_left_out",
        ];
        Assert.All(all, key => Assert.True(root.TryGetProperty(key, out _), key));
        Assert.All(filled.Split(','), key => Assert.NotEqual(JsonValueKind.Null, root.GetProperty(key).ValueKind));
        Assert.Equal(JsonValueKind.Null, root.GetProperty("winner").ValueKind);
    }

    [Fact]
    public void Json_without_out_writes_no_file()
    {
        string before = Directory.GetCurrentDirectory();
        using var scratch = new ScratchFolder();
        Directory.SetCurrentDirectory(scratch.Path);
        try
        {
            Cli.Run("run", Repository.Scenario("launch-soft"), "--json");
            Assert.Empty(Directory.GetFileSystemEntries(scratch.Path));
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
        }
    }

    [Fact]
    public void Text_is_the_same_under_another_culture()
    {
        using var scratch = new ScratchFolder();
        string[] args = ["run", Repository.Scenario("pull-test"), "--format", "png,svg", "--out", scratch["a"], "--quiet"];
        CultureInfo culture = CultureInfo.CurrentCulture;
        Cli first = Cli.Run(args);
        byte[] csv = File.ReadAllBytes(scratch["a/history.csv"]);
        byte[] svg = File.ReadAllBytes(scratch["a/plot.svg"]);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Cli second = Cli.Run(args);
            Assert.Equal(first.Output, second.Output);
            Assert.Equal(csv, File.ReadAllBytes(scratch["a/history.csv"]));
            Assert.Equal(svg, File.ReadAllBytes(scratch["a/plot.svg"]));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Fact]
    public void A_foreign_folder_is_left_alone_without_force()
    {
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["mine"]);
        File.WriteAllText(scratch["mine/keep.txt"], "keep");
        Cli refused = Cli.Run("run", Repository.Scenario("launch-soft"), "--out", scratch["mine"], "--no-plots");
        Assert.Equal(ExitCode.CannotReadOrWrite, refused.Code);
        Assert.Contains("--force", refused.Error);
        Assert.Equal(["keep.txt"], Directory.GetFiles(scratch["mine"]).Select(Path.GetFileName));
        Assert.Equal(ExitCode.Done, Cli.Run("run", Repository.Scenario("launch-soft"), "--out", scratch["mine"], "--no-plots", "--force", "--quiet").Code);
        Assert.Equal(ExitCode.Done, Cli.Run("run", Repository.Scenario("launch-soft"), "--out", scratch["mine"], "--no-plots", "--quiet").Code);
        Assert.Equal("keep", File.ReadAllText(scratch["mine/keep.txt"]));
    }

    [Fact]
    public void A_path_in_the_mark_cannot_delete_outside()
    {
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["ours"]);
        File.WriteAllText(scratch["precious.txt"], "keep");
        File.WriteAllText(scratch["ours/.pushsim-output"], "../precious.txt\n");
        Cli.Run("run", Repository.Scenario("launch-soft"), "--out", scratch["ours"], "--no-plots", "--quiet");
        Assert.True(File.Exists(scratch["precious.txt"]));
    }

    [Theory]
    [InlineData(ExitCode.WrongCommandLine, "run")]
    [InlineData(ExitCode.WrongCommandLine, "run", "a.toml", "--nonsense")]
    [InlineData(ExitCode.WrongCommandLine, "shove")]
    [InlineData(ExitCode.WrongCommandLine, "run", "a.toml", "--out", "")]
    [InlineData(ExitCode.WrongCommandLine, "run", "a.toml", "--out", "a\0b")]
    [InlineData(ExitCode.CannotReadOrWrite, "run", "@a.rsp", "--json")]
    [InlineData(ExitCode.CannotReadOrWrite, "run", "")]
    [InlineData(ExitCode.CannotReadOrWrite, "run", "no such file.toml")]
    [InlineData(ExitCode.CannotReadOrWrite, "check", "no such file.toml")]
    public void Wrong_calls_say_so_on_standard_error(int code, params string[] args)
    {
        Cli cli = Cli.Run(args);
        Assert.Equal(code, cli.Code);
        Assert.NotEqual("", cli.Error);
        Assert.DoesNotContain("   at ", cli.Error);
    }

    [Fact]
    public void Wrong_file_is_exit_3_with_its_place()
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["bad.toml"], "question = \"?\"\nrobto = \"a.toml\"\n");
        Cli cli = Cli.Run("run", scratch["bad.toml"], "--json");
        Assert.Equal(ExitCode.WrongInput, cli.Code);
        Assert.Contains("bad.toml:2:1: error:", cli.Error);
        Assert.Equal("", cli.Output);
    }

    [Fact]
    public void Check_finds_nothing_wrong_in_shipped_files()
    {
        string[] files = [.. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml", SearchOption.AllDirectories)];
        Cli cli = Cli.Run(["check", .. files]);
        Assert.Equal("", cli.Error);
        Assert.Equal(ExitCode.Done, cli.Code);
    }

    [Fact]
    public void Cautions_are_printed_once()
    {
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(Shipped.Text("pull-test").Cli.Output, "taut tethers"));
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(Shipped.Details("pull-test").Cli.Output, "keep\\s+clear\\s+of\\s+taut\\s+tethers"));
    }

    [Fact]
    public void An_interrupt_is_130_and_keeps_what_an_earlier_run_left()
    {
        using var scratch = new ScratchFolder();
        string[] args = ["run", Repository.Scenario("launch-soft"), "--out", scratch["a"], "--no-plots"];
        Assert.Equal(ExitCode.Done, Cli.Run(args).Code);
        byte[] before = File.ReadAllBytes(scratch["a/history.csv"]);
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        Assert.Equal(ExitCode.Interrupted, CommandLineApp.Invoke(args, output, error, new CancellationToken(canceled: true)));
        Assert.Equal("", output.ToString());
        Assert.Contains("interrupted", error.ToString());
        Assert.Equal(before, File.ReadAllBytes(scratch["a/history.csv"]));
    }

    [Theory]
    [InlineData("run", "a\u001b[31mb.toml")]
    [InlineData("check", "a\u001b[31mb.toml")]
    [InlineData("a\u001b[31mb")]
    public void No_control_character_of_an_argument_reaches_the_terminal(params string[] args)
    {
        Cli cli = Cli.Run(args);
        Assert.NotEqual("", cli.Error);
        Assert.DoesNotContain('\u001b', cli.Output + cli.Error);
    }

    [Fact]
    public void Redirected_text_is_plain()
    {
        string text = Shipped.Text("launch-soft").Cli.Output;
        Assert.DoesNotContain('\u001b', text);
        Assert.Contains("plot.png\n", text.ReplaceLineEndings("\n"));
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("run", "--help")]
    [InlineData("check", "-h")]
    public void Help_names_the_program_and_gives_an_example(params string[] args)
    {
        Cli cli = Cli.Run(args);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.Matches("Usage:\\s+pushsim", cli.Output);
        Assert.Contains("pushsim run scenarios/".Replace("run", args[0] == "check" ? "check" : "run"), cli.Output);
        Assert.DoesNotContain("PushSim.Cli", cli.Output);
    }

    [Fact]
    public void Version_is_a_number() => Assert.Matches(@"^\d+\.\d+\.\d+", Cli.Run("--version").Output);

    [Fact]
    public void An_interrupt_while_writing_leaves_the_old_files_and_no_part()
    {
        using var scratch = new ScratchFolder();
        var ask = new LockAsk("a", "pushsim test", _ => { }, CancellationToken.None);
        using (OutputFolder first = OutputFolder.Open(scratch["a"], force: false, "", ask))
        {
            first.Write("history.csv", s => s.WriteByte(1));
            first.Put([]);
        }

        using (OutputFolder again = OutputFolder.Open(scratch["a"], force: false, "", ask))
        {
            Assert.Throws<OperationCanceledException>(() => again.Write("history.csv", s =>
            {
                s.WriteByte(2);
                throw new OperationCanceledException();
            }));
        }

        Assert.Equal(["a"], Directory.GetFileSystemEntries(scratch.Path).Select(Path.GetFileName));
        Assert.Equal([1], File.ReadAllBytes(scratch["a/history.csv"]));
        Assert.Equal([".pushsim-output", "history.csv"], Directory.GetFiles(scratch["a"]).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void History_stops_at_an_interrupt()
    {
        Runs.RunResult result = Runs.Simulator.Run(PushSim.Scenarios.ScenarioReader.Read(Repository.Scenario("launch-soft")).Scenario!);
        using var stream = new MemoryStream();
        Assert.Throws<OperationCanceledException>(() => HistoryCsv.Write(result, stream, isWhole: true, new CancellationToken(canceled: true)));
    }

    // the answer stands on the screen before anything looks closer
    [Fact]
    public void The_verdict_is_printed_before_the_closer_look()
    {
        using var stop = new CancellationTokenSource();
        using var output = new StoppingWriter(stop);
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Interrupted, CommandLineApp.Invoke(["run", Repository.Scenario("spot-turn"), "--no-plots", "--out", scratch["out"]], output, error, stop.Token));
        Assert.Contains("mole turns at", output.ToString());
        Assert.DoesNotContain("power to spare", output.ToString());
        string whole = Shipped.Text("spot-turn").Cli.Output;
        Assert.StartsWith(output.ToString(), whole, StringComparison.Ordinal);
        Assert.Contains("It turns with power to spare", whole);
        Assert.Contains("Looked closer: it turns with power to spare", Shipped.Details("spot-turn").Cli.Output);
    }

    // a robot that both sides of a shove name is read twice
    [Fact]
    public void A_mistake_in_a_file_of_both_robots_is_counted_once()
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["robot.toml"], "name = \"a\"\nwrong = 1\n");
        File.WriteAllText(scratch["shove.toml"], "robot = \"robot.toml\"\n[opponent]\nrobot = \"robot.toml\"\n[manoeuvre]\nkind = \"shove\"\n");
        Cli cli = Cli.Run("check", scratch["shove.toml"]);
        int shown = cli.Error.Split(": error: ").Length - 1;
        Assert.True(shown > 0);
        Assert.Contains(FormattableString.Invariant($"{shown} mistake"), cli.Output);
        using JsonDocument json = JsonDocument.Parse(Cli.Run("check", scratch["shove.toml"], "--json").Output);
        Assert.Equal(shown, json.RootElement.GetProperty("problems").EnumerateArray().Count(p => p.GetProperty("severity").GetString() == "error"));
    }

    // interrupts the command as soon as it is flushed
    private sealed class StoppingWriter(CancellationTokenSource stop) : StringWriter(CultureInfo.InvariantCulture)
    {
        public override void Flush()
        {
            base.Flush();
            stop.Cancel();
        }
    }
}
