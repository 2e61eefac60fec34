using System.Text.Json;
using PushSim.Analysis.Chance;
using PushSim.Cli.Shared;
using PushSim.Scenarios.Drawing;
using PushSim.Words.Answers;
using Xunit;

namespace PushSim.Cli.Tests.Matches;

/// <summary>odds, sweep and ladder as a user calls them, on matches of 0.3 s.</summary>
public class ChanceCommandTests
{
    [Fact]
    public void The_json_has_the_keys_that_scripts_read_and_threads_change_no_match()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        Cli one = Cli.Run("odds", scratch["short.toml"], "--matches", "30", "--seed", "5", "--threads", "1", "--json", "--format", "png,svg", "--out", scratch["a"]);
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
    public void One_match_is_shown_again_from_its_number()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        Cli odds = Cli.Run("odds", scratch["short.toml"], "--matches", "4", "--out", scratch["a"], "--no-plots");
        Assert.Equal(ExitCode.Done, odds.Code);
        string winner = File.ReadAllLines(scratch["a/matches.csv"]).Single(l => l.StartsWith("3,", StringComparison.Ordinal)).Split(',')[1];
        Cli match = Cli.Run("odds", scratch["short.toml"], "--match", "3", "--json");
        string? name = JsonDocument.Parse(match.Output).RootElement.GetProperty("winner").GetString();
        Assert.Equal(winner switch { "robot" => "mole", "opponent" => "mole B", _ => "stalemate" }, name);
        Assert.Contains("drawn for match 3:", Cli.Run("odds", scratch["short.toml"], "--match", "3", "--details", "--out", scratch["m"], "--no-plots").Output);
    }

    // centre of mass drawn far out: some matches cannot start
    [Fact]
    public void Failed_matches_are_counted_named_and_shown()
    {
        using ScratchFolder scratch = ShortMatches.Files("[override]\n\"chassis.centre_of_mass.x\" = \"0 mm ± 80 mm\"\n");
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
    public void Effects_name_every_input_with_an_interval()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        Cli cli = Cli.Run("odds", scratch["short.toml"], "--matches", "100", "--effects", "--json");
        Assert.Equal(ExitCode.Done, cli.Code);
        JsonElement r = JsonDocument.Parse(cli.Output).RootElement;
        JsonElement[] effects = [.. r.GetProperty("effects_with_others").EnumerateArray()];
        Assert.Equal(r.GetProperty("drawn").EnumerateArray().Select(d => d.GetProperty("key").GetString()).Distinct().Order(), effects.Select(e => e.GetProperty("input").GetString()).Order());
        Assert.All(effects, e => Assert.InRange(e.GetProperty("variance_share").GetDouble(), e.GetProperty("variance_share_low").GetDouble(), e.GetProperty("variance_share_high").GetDouble()));
        Assert.InRange(effects.Sum(e => e.GetProperty("variance_share").GetDouble()), 0.7, 3.0);
    }

    [Fact]
    public void Against_itself_the_difference_is_nothing_for_sure()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        JsonElement r = JsonDocument.Parse(Cli.Run("odds", scratch["short.toml"], "--beside", scratch["short.toml"], "--matches", "40", "--json").Output).RootElement.GetProperty("variants")[0];
        Assert.Equal(0.0, r.GetProperty("win_share_difference").GetDouble());
        Assert.True(r.GetProperty("win_share_difference_low").GetDouble() is < 0.0 and > -0.12);
    }

    // full count: PUSHSIM_SEEDS=1000 dotnet test -c Release tests/PushSim.Cli.Tests --filter Equal_robots_are_equal
    [Fact]
    public void Equal_robots_are_equal()
    {
        int seeds = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_SEEDS"), out int asked) ? asked : 40;
        const int Matches = 25;
        using ScratchFolder scratch = ShortMatches.Files();
        DrawableScenario scenario = DrawableScenario.Open(scratch["short.toml"]).Scenario!;
        int held = 0;
        for (int seed = 1; seed <= seeds; seed++)
        {
            IReadOnlyList<MatchEnd> outcomes = Campaign.Run(new BatchMatchRunner(scenario.Middle), new FileMatchSource(scenario, new ContestKey((ulong)seed, scenario.Label)), (0, Matches), [], 0.0, 2, _ => { }, default);
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
        using ScratchFolder scratch = ShortMatches.Files();
        Cli cli = Cli.Run("sweep", scratch["short.toml"], "--vary", "opponent.robot=robots/mole.toml,robots/badger.toml", "--vary", "chassis.mass=1.2 kg..1.5 kg", "--points", "2", "--odds", "5", "--json", "--format", "svg", "--out", scratch["out"]);
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        JsonElement points = JsonDocument.Parse(cli.Output).RootElement.GetProperty("points");
        Assert.Equal(4, points.GetArrayLength());
        Assert.All(points.EnumerateArray(), p => Assert.Equal(5, p.GetProperty("matches").GetInt32()));
        Assert.Equal(5, File.ReadLines(scratch["out/sweep.csv"]).Count());
        Assert.True(File.Exists(scratch["out/plot.svg"]) && !File.Exists(scratch["out/plot.png"]));
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
    public void A_sweep_with_runs_that_end_in_a_tip_says_so()
    {
        Cli cli = Cli.Run("sweep", Repository.Scenario("launch-soft"), "--vary", "chassis.centre_of_mass.height=27 mm,600 mm", "--json");
        string warning = Assert.Single(JsonDocument.Parse(cli.Output).RootElement.GetProperty("warnings").EnumerateArray()).GetString()!;
        Assert.StartsWith("in 1 of 2 runs a robot tips over or loses the floor", warning, StringComparison.Ordinal);
        Assert.DoesNotContain("shove", warning, StringComparison.Ordinal);
    }

    // the drive's ratio stands before the motor's; a tall robot tips at any mass
    [Theory]
    [InlineData("pull-test", "motor.*.gear_ratio=5,8", "Pull, steady [N] is 11.59 at", "at every point: these values of motor.*.gear_ratio make no difference to it.")]
    [InlineData("launch-soft", "chassis.centre_of_mass.height=600 mm,650 mm", "In every run a robot tips", "so that none is best.")]
    public void A_sweep_without_a_best_names_none(string scenario, string vary, string start, string end)
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("sweep", Repository.Scenario(scenario), "--vary", vary, "--json").Output);
        string verdict = json.RootElement.GetProperty("verdict").GetString()!;
        Assert.StartsWith(start, verdict, StringComparison.Ordinal);
        Assert.EndsWith(end, verdict, StringComparison.Ordinal);
    }

    // the scenario itself sets this mass; 0 against 58 of 60 wins are no chance, and wins of robots nearly alike are
    [Theory]
    [InlineData("1 kg,2 kg", "= 2 kg; 60 matches tell it from all others.")]
    [InlineData("1.25 kg,1.26 kg", "; 60 matches do not tell it from ")]
    public void A_sweep_of_matches_names_what_they_do_not_tell_apart(string masses, string words)
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("sweep", Repository.Scenario("shove-heavy-grippy"), "--vary", "chassis.mass=" + masses, "--odds", "60", "--json").Output);
        Assert.Contains(words, json.RootElement.GetProperty("verdict").GetString());
    }

    // an unyielding cord without damping: the robot bounces on it
    [Fact]
    public void A_sweep_of_pulls_that_bounce_says_so()
    {
        using var scratch = new ScratchFolder();
        string text = File.ReadAllText(Repository.Scenario("pull-test")).Replace("damping = \"0.6 s/m\"", "damping = \"0.05 s/m\"", StringComparison.Ordinal).Replace("slack = \"", "slack = \"2", StringComparison.Ordinal);
        Directory.CreateDirectory(scratch["robots"]);
        File.Copy(Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml"), scratch["robots/mole.toml"]);
        File.WriteAllText(scratch["pull.toml"], text);
        Cli run = Cli.Run("run", scratch["pull.toml"], "--json");
        using JsonDocument json = JsonDocument.Parse(Cli.Run("sweep", scratch["pull.toml"], "--vary", "chassis.mass=1.3 kg,1.4 kg", "--json").Output);
        Assert.Contains("on average, bouncing on the tether", run.Output);
        Assert.Contains("in 2 of 2 runs the robot bounces on the tether", json.RootElement.GetProperty("warnings")[0].GetString());
    }

    [Fact]
    public void A_sweep_whose_matches_all_end_at_the_line_says_so()
    {
        string[] sweep = ["sweep", Repository.Scenario("shove-ramp-flat"), "--vary", "chassis.mass=1 kg,1.6 kg", "--json"];
        JsonElement ground = JsonDocument.Parse(Cli.Run([.. sweep, "--ask", "ground_gained_m"]).Output).RootElement;
        Assert.Contains("--odds 200", ground.GetProperty("warnings")[0].GetString());
        Assert.StartsWith("pangolin wins at every point; Ground gained [m] ties", ground.GetProperty("verdict").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, ground.GetProperty("optima")[0].GetProperty("at").ValueKind);
        Assert.Equal(2, ground.GetProperty("optima")[0].GetProperty("tied").GetArrayLength());
        JsonElement usual = JsonDocument.Parse(Cli.Run(sweep).Output).RootElement;
        Assert.Empty(usual.GetProperty("warnings").EnumerateArray());
        Assert.StartsWith("pangolin wins at every point; it wins quickest at chassis.mass = 1.", usual.GetProperty("verdict").GetString(), StringComparison.Ordinal);
        Assert.Empty(JsonDocument.Parse(Cli.Run("sweep", Repository.Scenario("pull-test"), "--vary", "drive.*.gear_ratio=12,13", "--json").Output).RootElement.GetProperty("warnings").EnumerateArray());
    }

    // the light robot loses at both masses: at the line, so that the ground is no measure, and later with more mass
    [Theory]
    [InlineData("highest", "it loses slowest at chassis.mass = 1.1 kg")]
    [InlineData("lowest", "it loses quickest at chassis.mass = 1 kg")]
    public void A_sweep_that_loses_everywhere_says_where_slowest(string best, string words)
    {
        using var scratch = new ScratchFolder();
        string[] sweep = ["sweep", Repository.Scenario("shove-heavy-grippy"), "--vary", "chassis.mass=1 kg,1.1 kg", "--best", best, "--out", scratch["out"]];
        Assert.StartsWith($"mole loses at every point; {words}", JsonDocument.Parse(Cli.Run([.. sweep, "--json"]).Output).RootElement.GetProperty("verdict").GetString(), StringComparison.Ordinal);
        Assert.Matches(@"-0\.\d+ tie .*\n.*-0\.\d+ tie ", Cli.Run([.. sweep, "--details", "--no-plots"]).Output);
    }

    [Theory]
    [InlineData("--vary", "wheel.*.tyre=[\"silicone, soft\", soft]")]
    [InlineData("--vary", "wheel.*.tyre=silicone, soft", "--vary", "wheel.*.tyre=soft")]
    public void Tyres_whose_names_have_commas_are_swept(params string[] vary)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        string mole = File.ReadAllText(scratch["robots/mole.toml"]);
        int tyre = mole.IndexOf("[[tyre]]", StringComparison.Ordinal);
        string block = mole[tyre..mole.IndexOf("[[", tyre + 2, StringComparison.Ordinal)];
        File.WriteAllText(scratch["robots/mole.toml"], mole + "\n" + block.Replace("name = \"soft\"", "name = \"silicone, soft\"", StringComparison.Ordinal));
        Cli cli = Cli.Run(["sweep", scratch["short.toml"], .. vary, "--json"]);
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        JsonElement r = JsonDocument.Parse(cli.Output).RootElement;
        Assert.Equal(["silicone, soft", "soft"], r.GetProperty("points").EnumerateArray().Select(p => p.GetProperty("at")[0].GetString()));
    }

    // at most as many matches more as were asked for; together is what was drawn; between the middle values as run tells it
    [Theory]
    [InlineData("", 15, true)]
    [InlineData("reaction_delay = \"0.1 s exact\"\n", 10, false)]
    public void Odds_tell_what_moving_first_is_worth(string late, int each, bool isDrawn)
    {
        using ScratchFolder scratch = ShortMatches.Files(late);
        Cli cli = Cli.Run("odds", scratch["short.toml"], "--matches", "30", "--json", "--out", scratch["out"], "--no-plots");
        JsonElement r = JsonDocument.Parse(cli.Output).RootElement;
        JsonElement[] cases = [.. r.GetProperty("start_cases").EnumerateArray()];
        Assert.Equal(["first", "together", "last"], cases.Select(c => c.GetProperty("case").GetString()));
        Assert.All(cases, c => Assert.Equal(each, c.GetProperty("matches").GetInt32()));
        double[] wins = [.. cases.Select(c => c.GetProperty("win_share").GetDouble())];
        Assert.True(wins[0] > wins[1] && wins[1] > wins[2], string.Join(", ", wins));
        double drawn = File.ReadLines(scratch["out/matches.csv"]).Count(l => int.TryParse(l.Split(',')[0], out int n) && n < each && l.Split(',')[1] == "robot") / (double)each;
        Assert.Equal(isDrawn, drawn == wins[1]);
        JsonElement run = JsonDocument.Parse(Cli.Run("run", scratch["short.toml"], "--json").Output).RootElement;
        Assert.Equal(run.GetProperty("worth").ToString(), r.GetProperty("worth").ToString());
        Assert.Equal(["first", "together", "last"], run.GetProperty("start_cases").EnumerateArray().Select(c => c.GetProperty("case").GetString()));
    }

    [Fact]
    public void An_unknown_quantity_lists_the_known_ones()
    {
        Cli cli = Cli.Run("sweep", Repository.Scenario("pull-test"), "--vary", "drive.*.gear_ratio=8..20", "--ask", "pull_platau_n");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("pull_plateau_n", cli.Error);

        // what holds a text is no quantity, whether the run has the text or not
        Assert.DoesNotContain("limited_by", cli.Error);
        Assert.DoesNotContain("winner", cli.Error);
        Assert.DoesNotContain("too_close", cli.Error);
        Assert.Contains("peak_battery_current_a", cli.Error);

        // nor is what belongs to another manoeuvre
        Assert.DoesNotContain("time_to_90_percent_speed_s", cli.Error);
    }

    [Theory]
    [InlineData("pull_plateau_n", true)]
    [InlineData("ground_gained_m", true)]
    [InlineData("lowest_battery_voltage_v", true)]
    [InlineData("yaw_rate_rad_per_s", true)]
    [InlineData("energy.copper_j", false)]
    [InlineData("energy_residual_ratio", false)]
    [InlineData("peak_battery_current_a", false)]
    [InlineData("opponent.wear_mm3", false)]
    [InlineData("turn_current_a", false)]
    [InlineData("stop_distance_m", false)]
    public void More_is_better_of_force_speed_ground_and_voltage(string key, bool isHighest) => Assert.Equal(isHighest ? Better.More : Better.Less, AnswerCatalogue.Named(key)!.Better);

    [Fact]
    public void A_ladder_has_square_and_ranking()
    {
        using ScratchFolder scratch = ShortMatches.Files();
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
        Assert.StartsWith(
            "every match (from short.toml): floor friction 1 ± 0.25 times that of the tyres' files, dust 0.1 ± 0.1; noses 2 mm apart, off centre by 0 ± 5 mm, headings off by 0 ± 3 deg; 100 % throttle, reaction time 0.05 ± 0.05 s; lost when pushed back 0.5 m, after 0.3 s won by 5 mm of ground.",
            r.GetProperty("setting").GetString());
    }

    [Fact]
    public void A_ladder_says_what_all_matches_share_and_where_to_change_it()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        string scene = File.ReadAllText(scratch["short.toml"]).Replace("start = \"0.01 s\"\n[shove]", "start = \"0.01 s\"\n[floor]\nfriction = \"0.8 ± 0.1\"\n[shove]\noffset = \"10 mm\"", StringComparison.Ordinal);
        File.WriteAllText(scratch["wet.toml"], scene + "reaction_delay = \"0.15 s\"\n");
        string[] robots = [scratch["robots/mole.toml"], scratch["robots/badger.toml"]];
        Assert.Contains(
            "every match (from wet.toml): floor friction 0.8 ± 0.1 times that of the tyres' files, dust 0.1 ± 0.1; noses 2 mm apart, off centre by 10 ± 5 mm, headings off by 0 ± 3 deg; 100 % throttle, reaction time 0.05 ± 0.05 and 0.15 ± 0.05 s; lost",
            Words("--scene", scratch["wet.toml"]));
        Assert.Contains("noses 100 mm apart, off centre by 0 ± 5 mm, headings off by 0 ± 3 deg; 100 % throttle, reaction time 0.05 ± 0.05 s; lost when pushed back 0.5 m, after 3 s won by 20 mm of ground; another floor, start or driver: --scene FILE", Words());

        string Words(params string[] more)
        {
            Cli cli = Cli.Run(["ladder", .. robots, .. more, "--matches", "1", "--details", "--no-plots", "--out", scratch["out"]]);
            return string.Join(" ", cli.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        }
    }

    [Theory]
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
}
