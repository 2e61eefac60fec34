using System.Globalization;
using System.Text.Json;
using PushSim.Scenarios;
using Xunit;

namespace PushSim.Cli.Tests.Questions;

/// <summary>One question has one answer, whichever command is asked: each row is a cell of the table of questions and commands.</summary>
public class SameAnswerTests
{
    private const string Matches = "12";

    // light robots take ten times the steps
    private const string FewMatches = "4";

    public static TheoryData<string> Singles =>
    [
        "launch-soft", "launch-hard", "gopher-launch", "pull-test", "drag-test", "wall-push", "tilted-board", "brake", "reversal", "arc", "tyre-dust", "shove-equals", "shove-heavy-grippy", "shove-six-four",
    ];

    // who wins, of two robots on a plain floor: the contests of every command that draws matches
    public static TheoryData<string, string> Contests => new()
    {
        { "mole badger", "odds of a scenario" }, { "mole badger", "ladder" }, { "mole badger", "sweep" }, { "mole badger", "odds with --set" }, { "mole badger", "odds beside another" },
        { "badger wombat", "odds of a scenario" }, { "badger wombat", "ladder" }, { "badger wombat", "sweep" }, { "badger wombat", "odds with --set" }, { "badger wombat", "odds beside another" },
        { "vole vole", "odds of a scenario" }, { "vole vole", "ladder" }, { "vole vole", "sweep" },
    };

    // a value set anew is the value of a file that states it
    public static TheoryData<string, string> Settings => new()
    {
        { "run", "robot" }, { "limits", "robot" }, { "odds", "robot" }, { "sweep", "robot" }, { "limits of a robot", "robot" }, { "run", "floor" }, { "limits", "floor" }, { "odds", "floor" }, { "sweep", "floor" },
    };

    [Theory]
    [MemberData(nameof(Singles))]
    public void A_point_of_a_sweep_is_the_run(string name)
    {
        string file = Repository.Scenario(name);
        double friction = ScenarioReader.Read(file).Scenario!.Floor.FrictionScale;
        string at = friction.ToString("R", CultureInfo.InvariantCulture);
        JsonElement run = Shipped.Json(name).Root;
        string[] asked = [.. run.EnumerateObject().Where(p => p.Value.ValueKind == JsonValueKind.Number && IsAnswer(p.Name)).Select(p => p.Name)];
        Assert.NotEmpty(asked);
        JsonElement sweep = Json(["sweep", file, "--vary", $"floor.friction={at},{(0.9 * friction).ToString("R", CultureInfo.InvariantCulture)}", .. asked.SelectMany(a => new[] { "--ask", a }), "--json"]);
        JsonElement point = Assert.Single(sweep.GetProperty("points").EnumerateArray(), p => p.GetProperty("at")[0].GetString() == at);
        Assert.All(asked, a => Assert.Equal(run.GetProperty(a).GetDouble(), point.GetProperty(a).GetDouble()));

        bool IsAnswer(string key) => key is "pull_plateau_n" or "pull_breakaway_n" or "push_plateau_n" or "top_speed_m_per_s" or "time_to_1_m_s" or "stop_distance_m" or "yaw_rate_rad_per_s"
            or "effective_track_ratio" or "scrub_moment_n_m" or "wear_mm3" or "travel_m" or "peak_battery_current_a" or "margin_m" or "ended_at_s";
    }

    [Theory]
    [MemberData(nameof(Contests))]
    public void A_contest_is_the_same_for_every_command(string pair, string command)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        (string first, string second) = (pair.Split(' ')[0], pair.Split(' ')[1]);
        (string own, string other) = (scratch[$"robots/{first}.toml"], scratch[$"robots/{second}.toml"]);
        string scene = scratch["pair.toml"];
        string matches = first == "vole" ? FewMatches : Matches;
        File.WriteAllText(scene, $"question = \"Who?\"\nrobot = \"robots/{first}.toml\"\n[manoeuvre]\nkind = \"shove\"\n[opponent]\nrobot = \"robots/{second}.toml\"\n");
        double share = Share(Json("odds", own, "--against", other, "--matches", matches, "--json"));
        double same = command switch
        {
            "odds of a scenario" => Share(Json("odds", scene, "--matches", matches, "--json")),
            "odds with --set" => Share(Json("odds", scene, "--set", "floor.friction=1", "--matches", matches, "--json")),
            "odds beside another" => Share(Json("odds", scene, "--beside", Repository.Scenario("shove-six-four"), "--matches", matches, "--json")),
            "ladder" => Json("ladder", own, other, "--matches", matches, "--json").GetProperty("win_shares")[0][1].GetDouble(),
            _ => Assert.Single(Json("sweep", scene, "--vary", "floor.friction=1,0.9", "--odds", matches, "--json").GetProperty("points").EnumerateArray(), p => p.GetProperty("at")[0].GetString() == "1").GetProperty("win_share").GetDouble(),
        };
        Assert.Equal(share, same);
    }

    [Theory]
    [InlineData("run", "robot")]
    [InlineData("limits", "robot")]
    [InlineData("sweep", "robot")]
    [InlineData("odds", "robot")]
    [InlineData("run", "scenario")]
    [InlineData("limits", "scenario")]
    [InlineData("sweep", "scenario")]
    [InlineData("odds", "scenario")]
    public void An_opponent_named_is_the_one_that_a_scenario_states(string command, string first)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        const string Shove = "robot = \"robots/mole.toml\"\n[manoeuvre]\nkind = \"shove\"\nend = \"0.4 s\"\n[opponent]\nrobot = \"robots/";
        File.WriteAllText(scratch["stated.toml"], Shove + "wombat.toml\"\n");
        File.WriteAllText(scratch["other.toml"], Shove + "badger.toml\"\n[opponent.override]\n\"chassis.mass\" = \"2 kg\"\n");
        string[] named = first == "robot" ? [scratch["robots/mole.toml"], "--scene", scratch["other.toml"], "--against"] : [scratch["other.toml"], "--against"];
        string Answer(params string[] given) => command switch
        {
            "run" => Json(["run", .. given, "--json"]).GetProperty("margin_m").GetRawText(),
            "limits" => Json(["limits", .. given, "--json"]).GetProperty("pull_n").GetRawText(),
            "odds" => Json(["odds", .. given, "--matches", Matches, "--json"]).GetProperty("win_share").GetRawText(),
            _ => Json(["sweep", .. given, "--vary", "shove.gap=2,4 mm", "--ask", "margin_m", "--json"]).GetProperty("points").GetRawText(),
        };
        Assert.Equal(Answer(scratch["stated.toml"]), Answer([.. named, scratch["robots/wombat.toml"]]));
    }

    [Theory]
    [InlineData("own")]
    [InlineData("silicone")]
    [InlineData("unknown")]
    public void A_fitted_tyre_wins_as_often_as_the_pasted_one(string tyre)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        (string robot, string other) = (scratch["robots/mole.toml"], scratch["robots/wombat.toml"]);
        string name = tyre == "own" ? "soft" : "tried";
        File.WriteAllText(scratch["r.csv"], "tyre,peak [N],force [N]\n" + string.Concat(new[] { 12.1, 12.5, 11.8, 12.2 }.Select(f => FormattableString.Invariant($"{name},{f + 1.5},{f}\n"))));
        string[] material = tyre == "silicone" ? ["--material", "silicone"] : [];
        JsonElement fit = Json(["fit", scratch["r.csv"], "--robot", robot, "--against", other, "--shoves", Matches, .. material, "--no-plots", "--out", scratch["fit"], "--json"]);
        JsonElement told = fit.GetProperty("on_the_robot").GetProperty("tyres")[0];
        string text = File.ReadAllText(robot);
        int from = text.IndexOf("[[tyre]]", StringComparison.Ordinal);
        string pasted = text[..from] + File.ReadAllText(scratch["fit/tyres.toml"]) + "\n" + text[text.IndexOf("[[wheel]]", StringComparison.Ordinal)..].Replace("tyre = \"soft\"", $"tyre = \"{name}\"", StringComparison.Ordinal);
        File.WriteAllText(scratch["robots/pasted.toml"], pasted);
        Assert.Contains("No mistakes found", Cli.Run("check", scratch["robots/pasted.toml"]).Output);
        Assert.Equal(told.GetProperty("win_share").GetDouble(), Share(Json("odds", scratch["robots/pasted.toml"], "--against", other, "--matches", Matches, "--json")));
        Assert.Equal(told.GetProperty("win_share").GetDouble(), Json("ladder", scratch["robots/pasted.toml"], other, "--matches", Matches, "--json").GetProperty("win_shares")[0][1].GetDouble());
        JsonElement limits = Json("limits", scratch["robots/pasted.toml"], "--json");
        Assert.Equal(told.GetProperty("motor_force_n").GetDouble(), limits.GetProperty("motor_force_n").GetDouble());
        Assert.Equal(told.GetProperty("tyre_force_n").GetDouble(), limits.GetProperty("traction_peak_force_n").GetDouble());
    }

    [Theory]
    [MemberData(nameof(Settings))]
    public void A_value_set_anew_is_one_that_the_file_states(string command, string owner)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        (string key, string value) = owner == "robot" ? ("chassis.mass", "1.5 kg") : ("floor.friction", "0.8");
        string robot = scratch["robots/mole.toml"];
        string stated = File.ReadAllText(robot).Replace("mass = \"1360 g ± 10 g\"", "mass = \"1.5 kg\"", StringComparison.Ordinal);
        File.WriteAllText(scratch["robots/heavy.toml"], stated.Replace("name = \"mole\"", "name = \"mole\"", StringComparison.Ordinal));
        string scene = File.ReadAllText(scratch["short.toml"]);
        File.WriteAllText(scratch["stated.toml"], owner == "robot"
            ? scene.Replace("robot = \"robots/mole.toml\"\n[manoeuvre]", "robot = \"robots/heavy.toml\"\n[manoeuvre]", StringComparison.Ordinal)
            : scene + "[floor]\nfriction = 0.8\n");
        File.WriteAllText(scratch["overridden.toml"], scene + $"[override]\n\"{key}\" = {(owner == "robot" ? $"\"{value}\"" : value)}\n");
        string[] set = ["--set", $"{key}={value}"];
        string Answer(string file, params string[] more) => command switch
        {
            "run" => Json(["run", file, .. more, "--json"]).GetProperty("margin_m").GetRawText(),
            "limits" => Json(["limits", file, .. more, "--json"]).GetProperty("pull_n").GetRawText(),
            "odds" => Json(["odds", file, .. more, "--matches", Matches, "--json"]).GetProperty("win_share").GetRawText(),
            "sweep" => Json(["sweep", file, .. more, "--vary", "shove.gap=2,4 mm", "--ask", "margin_m", "--json"]).GetProperty("points").GetRawText(),
            _ => Json(["limits", file, .. more, "--json"]).GetProperty("pull_n").GetRawText(),
        };
        if (command == "limits of a robot")
        {
            Assert.Equal(Answer(scratch["robots/heavy.toml"]), Answer(robot, set));
            return;
        }

        string expected = Answer(scratch["stated.toml"]);
        Assert.Equal(expected, Answer(scratch["short.toml"], set));
        Assert.Equal(expected, Answer(scratch["overridden.toml"]));
    }

    [Theory]
    [InlineData("pull-test")]
    [InlineData("wall-push")]
    [InlineData("measured-pull")]
    [InlineData("tyre-dust")]
    public void What_limits_a_pull_is_the_same_in_run_and_limits(string name)
    {
        string file = Repository.Scenario(name);
        Assert.Equal(Json("limits", file, "--json").GetProperty("binding").GetString(), Shipped.Json(name).Root.GetProperty("limited_by").GetString());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(11)]
    public void A_match_shown_by_itself_ends_as_in_the_list(int number)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        Json("odds", scratch["short.toml"], "--matches", Matches, "--out", scratch["out"], "--no-plots", "--json");
        string row = File.ReadLines(scratch["out/matches.csv"]).Single(l => l.StartsWith($"{number},", StringComparison.Ordinal));
        JsonElement shown = Json("odds", scratch["short.toml"], "--matches", Matches, "--match", number.ToString(CultureInfo.InvariantCulture), "--json");
        Assert.Contains("," + shown.GetProperty("winner").GetString() switch { "mole" => "robot", "stalemate" => "none", _ => "opponent" } + ",", row);
    }

    [Theory]
    [InlineData("short")]
    [InlineData("--set")]
    public void A_run_of_a_shove_draws_the_first_matches_of_odds(string how)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        string[] more = how == "--set" ? ["--set", "chassis.mass=1.3 kg ± 50 g"] : [];
        JsonElement run = Json(["run", scratch["short.toml"], .. more, "--json"]).GetProperty("drawn");
        JsonElement odds = Json(["odds", scratch["short.toml"], .. more, "--matches", "32", "--json"]);
        Assert.Equal(odds.GetProperty("win_share").GetDouble(), run.GetProperty("wins").GetInt32() / (double)run.GetProperty("matches").GetInt32());
        Assert.Equal(odds.GetProperty("lose_share").GetDouble(), run.GetProperty("losses").GetInt32() / (double)run.GetProperty("matches").GetInt32());
    }

    // a slip in --set is a wrong command line for every command, and no wrong file
    [Theory]
    [InlineData("run")]
    [InlineData("limits")]
    [InlineData("odds")]
    [InlineData("sweep", "--vary", "floor.dust=0,0.1")]
    public void A_slip_in_a_value_set_anew_has_one_exit_code(string command, params string[] more)
    {
        Cli cli = Cli.Run([command, Repository.Scenario("shove-equals"), .. more, "--set", "chassis.mas=1 kg", "--json"]);
        Assert.Equal(2, cli.Code);
        Assert.Contains("did you mean \"chassis.mass\"?", cli.Error);
    }

    private static double Share(JsonElement odds) => odds.GetProperty("win_share").GetDouble();

    private static JsonElement Json(params string[] args)
    {
        Cli cli = Cli.Run(args);
        Assert.True(cli.Code == 0, cli.Error);
        return JsonDocument.Parse(cli.Output).RootElement;
    }
}
