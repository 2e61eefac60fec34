using System.Diagnostics;
using System.Text.Json;
using PushSim.Analysis.Chance;
using PushSim.Cli.Chance;
using PushSim.Scenarios.Drawing;
using Xunit;

namespace PushSim.Cli.Tests;

/// <summary>odds, sweep and ladder as a user calls them, on matches of 0.3 s.</summary>
public class ChanceCommandTests
{
    // a match that takes a few milliseconds: nose to nose, decided by what 0.3 s bring
    private const string Short = "question = \"Short\"\nrobot = \"robots/mole.toml\"\n[manoeuvre]\nkind = \"shove\"\nend = \"0.3 s\"\nstart = \"0.01 s\"\n[shove]\ngap = \"2 mm\"\ndeciding_ground = \"5 mm\"\n[opponent]\nrobot = \"robots/mole.toml\"\nstart = \"0.01 s\"\n";

    [Fact]
    public void The_json_has_the_keys_that_scripts_read_and_threads_change_no_match()
    {
        using ScratchFolder scratch = Files();
        Cli one = Cli.Run("odds", scratch["short.toml"], "--matches", "30", "--seed", "5", "--threads", "1", "--json", "--out", scratch["a"]);
        Cli two = Cli.Run("odds", scratch["short.toml"], "--matches", "30", "--seed", "5", "--threads", "3", "--json", "--out", scratch["b"]);
        Assert.Equal((ExitCode.Done, ExitCode.Done), (one.Code, two.Code));
        Assert.Equal(File.ReadAllText(scratch["a/matches.csv"]), File.ReadAllText(scratch["b/matches.csv"]));
        JsonElement r = JsonDocument.Parse(one.Output).RootElement;
        Assert.Equal("odds", r.GetProperty("command").GetString());
        Assert.Equal((30, 0, 5), (r.GetProperty("matches").GetInt32(), r.GetProperty("failed_matches").GetInt32(), r.GetProperty("seed").GetInt32()));
        Assert.True(r.GetProperty("matches_per_second").GetDouble() > 0.0);
        double[] shares = [.. new[] { "win_share_low", "win_share", "win_share_high", "lose_share", "stalemate_share" }.Select(k => r.GetProperty(k).GetDouble())];
        Assert.True(shares[0] < shares[1] && shares[1] < shares[2]);
        Assert.Equal(1.0, shares[1] + shares[3] + shares[4], 1e-12);
        Assert.True(r.GetProperty("drawn").GetArrayLength() > 10);
        Assert.True(File.Exists(scratch["a/plot.png"]) && File.Exists(scratch["a/plot.svg"]));
    }

    [Fact]
    public void Parts_run_as_processes_merge_to_exactly_the_whole()
    {
        using ScratchFolder scratch = Files();
        Process[] parts = [.. Enumerable.Range(1, 3).Select(k => Start("odds", scratch["short.toml"], "--matches", "20", "--part", $"{k}/3", "--out", scratch["parts"]))];
        foreach (Process part in parts)
        {
            string error = part.StandardError.ReadToEnd();
            Assert.True(part.WaitForExit(60_000) && part.ExitCode == 0, error);
            part.Dispose();
        }

        Cli whole = Cli.Run("odds", scratch["short.toml"], "--matches", "20", "--out", scratch["whole"], "--json");
        Cli merged = Cli.Run("odds", scratch["short.toml"], "--matches", "20", "--merge", "--out", scratch["parts"], "--json");
        Assert.Equal(ExitCode.Done, merged.Code);
        Assert.Equal(File.ReadAllText(scratch["whole/matches.csv"]), File.ReadAllText(scratch["parts/matches.csv"]));
        Assert.Equal(WithoutSpeed(whole.Output), WithoutSpeed(merged.Output));

        // a part that lacks matches, or is of another seed, is named
        File.WriteAllLines(scratch["parts/part-2-of-3.csv"], File.ReadAllLines(scratch["parts/part-2-of-3.csv"])[..5]);
        Cli lacking = Cli.Run("odds", scratch["short.toml"], "--matches", "20", "--merge", "--out", scratch["parts"]);
        Assert.Equal(ExitCode.RunFailed, lacking.Code);
        Assert.Contains("2/3 (3 of 7)", lacking.Error);
        Assert.Contains("1/3", Cli.Run("odds", scratch["short.toml"], "--matches", "20", "--seed", "9", "--merge", "--out", scratch["parts"]).Error);

        // the same command goes on where the part stopped
        Cli again = Cli.Run("odds", scratch["short.toml"], "--matches", "20", "--part", "2/3", "--out", scratch["parts"]);
        Assert.Contains("going on after 3 finished matches", again.Error);
        Assert.Equal(WithoutSpeed(whole.Output), WithoutSpeed(Cli.Run("odds", scratch["short.toml"], "--matches", "20", "--merge", "--out", scratch["parts"], "--json").Output));
    }

    [Fact]
    public void An_interrupt_keeps_finished_matches_and_the_same_command_goes_on()
    {
        using ScratchFolder scratch = Files();
        using var stop = new CancellationTokenSource();
        using var output = new StringWriter();
        using var error = new StringWriter();
        string[] args = ["odds", scratch["short.toml"], "--matches", "800", "--out", scratch["out"], "--threads", "1", "--no-plots"];

        // a thread of its own: the pool may be busy with other tests until all matches are done
        bool isOver = false;
        var watch = new Thread(() =>
        {
            while (!Volatile.Read(ref isOver) && (!File.Exists(scratch["out/part-1-of-1.csv"]) || File.ReadLines(scratch["out/part-1-of-1.csv"]).Count() < 6))
            {
                Thread.Sleep(1);
            }

            stop.Cancel();
        });
        watch.Start();
        int code = CommandLineApp.Invoke(args, output, error, stop.Token);
        Volatile.Write(ref isOver, true);
        watch.Join();
        Assert.Equal(ExitCode.Interrupted, code);
        Assert.Contains("interrupted after", error.ToString());
        Cli rest = Cli.Run([.. args]);
        Assert.Contains("going on after", rest.Error);
        Assert.Equal(ExitCode.Done, Cli.Run("odds", scratch["short.toml"], "--matches", "800", "--out", scratch["whole"], "--no-plots").Code);
        Assert.Equal(File.ReadAllText(scratch["whole/matches.csv"]), File.ReadAllText(scratch["out/matches.csv"]));
        Assert.False(File.Exists(scratch["out/part-1-of-1.csv"]));
    }

    [Fact]
    public void One_match_is_shown_again_from_its_number()
    {
        using ScratchFolder scratch = Files();
        Cli odds = Cli.Run("odds", scratch["short.toml"], "--matches", "4", "--out", scratch["a"], "--no-plots");
        Assert.Equal(ExitCode.Done, odds.Code);
        string winner = File.ReadAllLines(scratch["a/matches.csv"]).Single(l => l.StartsWith("3,", StringComparison.Ordinal)).Split(',')[1];
        Cli match = Cli.Run("odds", scratch["short.toml"], "--match", "3", "--json");
        string? name = JsonDocument.Parse(match.Output).RootElement.GetProperty("winner").GetString();
        Assert.Equal(winner switch { "robot" => "mole", "opponent" => "mole B", _ => "stalemate" }, name);
        Assert.Contains("drawn for match 3:", Cli.Run("odds", scratch["short.toml"], "--match", "3", "--out", scratch["m"], "--no-plots").Output);
    }

    // centre of mass drawn far out: some matches cannot start
    [Fact]
    public void Failed_matches_are_counted_named_and_shown()
    {
        using ScratchFolder scratch = Files("[override]\n\"chassis.centre_of_mass.x\" = \"0 mm ± 80 mm\"\n");
        Cli odds = Cli.Run("odds", scratch["short.toml"], "--matches", "30", "--json");
        Assert.Equal(ExitCode.Done, odds.Code);
        JsonElement r = JsonDocument.Parse(odds.Output).RootElement;
        JsonElement first = r.GetProperty("failed")[0];
        Assert.InRange(r.GetProperty("failed_matches").GetInt32(), 1, 20);
        Assert.Equal(30, r.GetProperty("matches").GetInt32() + r.GetProperty("failed_matches").GetInt32());
        Assert.Contains("outside the wheels", first.GetProperty("cause").GetString());
        Cli match = Cli.Run("odds", scratch["short.toml"], "--match", first.GetProperty("match").ToString(), "--json");
        Assert.Equal(ExitCode.RunFailed, match.Code);
        Assert.Contains("outside the wheels", match.Error);
        Assert.Contains("chassis.centre_of_mass.x = ", match.Error);
    }

    [Fact]
    public void Against_itself_the_difference_is_nothing_for_sure()
    {
        using ScratchFolder scratch = Files();
        JsonElement r = JsonDocument.Parse(Cli.Run("odds", scratch["short.toml"], "--against", scratch["short.toml"], "--matches", "40", "--json").Output).RootElement.GetProperty("against");
        Assert.Equal(0.0, r.GetProperty("win_share_difference").GetDouble());
        Assert.True(r.GetProperty("win_share_difference_low").GetDouble() is < 0.0 and > -0.12);
    }

    // full count: PUSHSIM_SEEDS=1000 dotnet test -c Release tests/PushSim.Cli.Tests --filter Equal_robots_are_equal
    [Fact]
    public void Equal_robots_are_equal()
    {
        int seeds = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_SEEDS"), out int asked) ? asked : 40;
        const int Matches = 25;
        using ScratchFolder scratch = Files();
        DrawableScenario scenario = DrawableScenario.Open(scratch["short.toml"]).Scenario!;
        int held = 0;
        for (int seed = 1; seed <= seeds; seed++)
        {
            IReadOnlyList<MatchEnd> outcomes = Campaign.Run(new BatchMatchRunner(scenario.Middle), new FileMatchSource(scenario, (ulong)seed), (0, Matches), [], 0.0, 2, _ => { }, default);
            var tally = Tally.Of(outcomes);
            Assert.All(outcomes, o => Assert.True(double.IsFinite(o.GroundGained) && !o.HasFailed));
            held += tally.LeadInterval.Holds(0.0) ? 1 : 0;
        }

        // a true 95 % interval: 926 to 971 of 1000; of 40, at least 34 with probability 0.997 (binomial, computed here)
        (int least, int most) = seeds == 1000 ? (926, 971) : ((int)Math.Floor(0.85 * seeds), seeds);
        Assert.InRange(held, least, most);
    }

    [Fact]
    public void A_sweep_gives_table_csv_curve_and_optimum()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("sweep", Repository.Scenario("pull-test"), "--vary", "drive.*.gear_ratio=8..20", "--points", "4", "--ask", "pull_plateau_n", "--ask", "peak_battery_current_a", "--json", "--out", scratch["out"]);
        Assert.Equal(ExitCode.Done, cli.Code);
        JsonElement r = JsonDocument.Parse(cli.Output).RootElement;
        Assert.Equal(["8", "12", "16", "20"], r.GetProperty("points").EnumerateArray().Select(p => p.GetProperty("at")[0].GetString()));
        Assert.True(r.GetProperty("points")[0].GetProperty("pull_plateau_n").GetDouble() > 5.0);
        Assert.Equal(2, r.GetProperty("optima").GetArrayLength());
        Assert.Equal("lowest", r.GetProperty("optima")[1].GetProperty("best").GetString());
        Assert.Equal("drive.*.gear_ratio,pull_plateau_n,peak_battery_current_a", File.ReadLines(scratch["out/sweep.csv"]).First());
        Assert.True(File.Exists(scratch["out/plot.png"]));
    }

    [Fact]
    public void A_sweep_takes_two_inputs_names_and_odds()
    {
        using ScratchFolder scratch = Files();
        Cli cli = Cli.Run("sweep", scratch["short.toml"], "--vary", "opponent.robot=robots/mole.toml,robots/badger.toml", "--vary", "chassis.mass=1.2 kg..1.5 kg", "--points", "2", "--odds", "5", "--json", "--out", scratch["out"]);
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        JsonElement points = JsonDocument.Parse(cli.Output).RootElement.GetProperty("points");
        Assert.Equal(4, points.GetArrayLength());
        Assert.All(points.EnumerateArray(), p => Assert.Equal(5, p.GetProperty("matches").GetInt32()));
        Assert.Equal(5, File.ReadLines(scratch["out/sweep.csv"]).Count());
        Assert.True(File.Exists(scratch["out/plot.svg"]));
    }

    [Theory]
    [InlineData("foo.bar=1..2", "has no value")]
    [InlineData("chassis.mass=1 m..2 m", "chassis.mass")]
    [InlineData("tyre.soft.static_friction=1..200", "allowed")]
    public void A_wrong_sweep_is_a_wrong_command_line(string vary, string words)
    {
        Cli cli = Cli.Run("sweep", Repository.Scenario("pull-test"), "--vary", vary, "--json");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains(words, cli.Error);
    }

    [Fact]
    public void An_unknown_quantity_lists_the_known_ones()
    {
        Cli cli = Cli.Run("sweep", Repository.Scenario("pull-test"), "--vary", "drive.*.gear_ratio=8..20", "--ask", "pull_platau_n");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("pull_plateau_n", cli.Error);
    }

    [Fact]
    public void A_ladder_has_square_and_ranking()
    {
        using ScratchFolder scratch = Files();
        string[] robots = [scratch["robots/mole.toml"], scratch["robots/badger.toml"], scratch["robots/wombat.toml"]];
        Cli cli = Cli.Run(["ladder", .. robots, "--scene", scratch["short.toml"], "--matches", "6", "--json", "--out", scratch["out"]]);
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        JsonElement r = JsonDocument.Parse(cli.Output).RootElement;
        Assert.Equal(3, r.GetProperty("ranking").GetArrayLength());
        Assert.Equal(3, r.GetProperty("win_shares").GetArrayLength());
        Assert.Equal(JsonValueKind.Null, r.GetProperty("win_shares")[1][1].ValueKind);
        JsonElement best = r.GetProperty("ranking")[0];
        Assert.True(best.GetProperty("score_low").GetDouble() < best.GetProperty("score").GetDouble());
        Assert.Equal(4, File.ReadLines(scratch["out/pairs.csv"]).Count());
        Assert.True(File.Exists(scratch["out/plot.png"]));
    }

    [Theory]
    [InlineData("odds", "x.toml", "--part", "4/3")]
    [InlineData("odds", "x.toml", "--part", "1/3", "--merge")]
    [InlineData("odds", "x.toml", "--part", "1/3", "--json")]
    [InlineData("odds", "x.toml", "--matches", "1,5")]
    [InlineData("odds", "x.toml", "--matches", "NaN")]
    [InlineData("odds", "x.toml", "--within", "120%")]
    [InlineData("odds", "x.toml", "--match", "1000")]
    [InlineData("ladder", "x.toml")]
    [InlineData("sweep", "x.toml")]
    [InlineData("sweep", "x.toml", "--vary", "a")]
    public void Wrong_calls(params string[] args) => Assert.Equal(ExitCode.WrongCommandLine, Cli.Run(args).Code);

    [Fact]
    public void Odds_need_an_opponent() => Assert.Equal(ExitCode.WrongInput, Cli.Run("odds", Repository.Scenario("pull-test"), "--json").Code);

    [Fact]
    public void A_row_cut_off_by_a_crash_is_left_out()
    {
        using var scratch = new ScratchFolder();
        var head = new FinishedHead("0123", 1, 10, 1, 1);
        using (var file = FinishedMatches.Begin(scratch["p.csv"], head, [], 0.0))
        {
            file.Add(new MatchEnd(0, 0, Simulation.ShoveEnding.Line, 0.1 + 0.2, 1.0, Simulation.PushLimit.LiftedWheels, Simulation.PushLimit.Tyres));
            file.Add(MatchEnd.Failed(1, "a cause, with \"quotes\""));
        }

        File.AppendAllText(scratch["p.csv"], "2,robot,li");
        IReadOnlyList<MatchEnd> read = FinishedMatches.Read(scratch["p.csv"], head, out _)!;
        Assert.Equal(2, read.Count);
        Assert.Equal(0.1 + 0.2, read[0].GroundGained);
        Assert.Equal("a cause, with 'quotes'", read[1].Cause);
        Assert.Null(FinishedMatches.Read(scratch["p.csv"], head with { Seed = 2 }, out _));
    }

    private static ScratchFolder Files(string more = "")
    {
        var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["robots"]);
        foreach (string robot in Directory.EnumerateFiles(Path.Combine(Repository.Root, "scenarios", "robots")))
        {
            File.Copy(robot, scratch["robots/" + Path.GetFileName(robot)]);
        }

        File.WriteAllText(scratch["short.toml"], Short + more);
        return scratch;
    }

    private static Process Start(params string[] args)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(typeof(CommandLineApp).Assembly.Location);
        Array.ForEach(args, start.ArgumentList.Add);
        return Process.Start(start)!;
    }

    private static string WithoutSpeed(string json) => string.Join('\n', json.Split('\n').Where(l => !l.Contains("matches_per_second")));
}
