using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Fit;

/// <summary>fit with a robot: what the tyres make of it.</summary>
public class MeaningCommandTests
{
    private static readonly string s_readings = Path.Combine(Repository.Root, "scenarios", "logs", "readings.csv");
    private static readonly string s_mole = Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml");
    private static readonly string s_badger = Path.Combine(Repository.Root, "scenarios", "robots", "badger.toml");
    private static readonly string s_pull = Repository.Scenario("pull-test");

    private static readonly string[] s_fit = ["fit", s_readings, "--load", "13.3 N", "--robot", s_mole];

    [Fact]
    public void Every_value_stands_in_the_document_the_table_and_on_the_page()
    {
        using var scratch = new ScratchFolder();
        string[] call = [.. s_fit, "--against", s_badger, "--stronger-motor", "1.5", "--shoves", "40"];
        Cli text = Cli.Run([.. call, "--details", "--report", "--out", scratch["out"]]);
        Assert.Equal("", text.Error);
        Assert.Equal(ExitCode.Done, text.Code);
        using JsonDocument json = JsonDocument.Parse(Cli.Run([.. call, "--json"]).Output);
        JsonElement on = json.RootElement.GetProperty("on_the_robot");
        JsonElement[] tyres = [.. on.GetProperty("tyres").EnumerateArray()];
        Assert.Equal(["soft", "neoprene", "tape", "soft", "neoprene", "tape"], tyres.Select(t => t.GetProperty("tyre").GetString()));
        Assert.Equal([1.0, 1.0, 1.0, 1.5, 1.5, 1.5], tyres.Select(t => t.GetProperty("motor_torque_ratio").GetDouble()));
        string page = File.ReadAllText(scratch["out/report.html"]);
        string[] rows = File.ReadAllLines(scratch["out/on-the-robot.csv"]);
        Assert.Equal(7, rows.Length);
        foreach ((JsonElement t, string row) in tyres.Zip(rows.Skip(1)))
        {
            double win = t.GetProperty("win_share").GetDouble();
            Assert.InRange(win, t.GetProperty("win_share_low").GetDouble(), t.GetProperty("win_share_high").GetDouble());
            Assert.Equal(0, t.GetProperty("failed_shoves").GetInt32());
            string metre = FormattableString.Invariant($"{t.GetProperty("first_metre_s").GetDouble():0.000}");
            string share = FormattableString.Invariant($"{100.0 * win:0.0}");
            Assert.All([metre, share, "easily"], shown => Assert.Contains(shown, text.Output));
            Assert.All([metre, share, "easily"], shown => Assert.Contains(shown, page));
            Assert.StartsWith(t.GetProperty("tyre").GetString() + ",", row);
            Assert.Contains(FormattableString.Invariant($",{t.GetProperty("first_metre_s").GetDouble():G8},"), row);
            Assert.Contains(FormattableString.Invariant($",40,{win:G8},"), row);
        }

        // soft is the robot file's own tyre and has a wear number there, neoprene is an alias of the shelf, tape is in no file
        Assert.Equal([true, true, false, true, true, false], tyres.Select(t => t.GetProperty("wear_known").GetBoolean()));
        Assert.Equal([true, true, false, true, true, false], tyres.Select(t => t.GetProperty("wear_m3_per_minute_of_turn").ValueKind == JsonValueKind.Number));
        Assert.Contains("not known", text.Output);

        // the tables of the comparison are on the page as on the screen
        Assert.Contains("soft - neoprene", text.Output);
        Assert.Contains("soft - neoprene", page);
        Assert.Contains("all at once", page);
        Assert.Contains("no trend over the number of the pull is seen", page);
        Assert.Contains("Shoves won against badger", page);
        Assert.True(new FileInfo(scratch["out/on-the-robot.png"]).Length > 10_000);
    }

    [Fact]
    public void More_grip_means_more_where_the_tyres_limit()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run([.. s_fit, "--against", s_badger, "--shoves", "40", "--json"]).Output);
        JsonElement[] tyres = [.. json.RootElement.GetProperty("on_the_robot").GetProperty("tyres").EnumerateArray()];
        Assert.All(tyres, t => Assert.Equal("tyres", t.GetProperty("limited_by").GetString()));
        Assert.True(tyres[0].GetProperty("win_share_low").GetDouble() > tyres[2].GetProperty("win_share_high").GetDouble());
        Assert.True(tyres[0].GetProperty("first_metre_s").GetDouble() < tyres[2].GetProperty("first_metre_s").GetDouble());
        Assert.Contains("a stronger motor changes nothing", json.RootElement.GetProperty("verdict").GetString());
    }

    // a twelfth of the stall current: less than the tyres hold, more than the pulls under part of the weight show
    [Fact]
    public void Weak_motors_are_named_as_the_limit()
    {
        using var scratch = new ScratchFolder();
        string text = File.ReadAllText(s_mole);
        string weak = text.Replace("resistance = \"3.2 ohm ± 5 %\"", "resistance = \"40 ohm\"");
        Assert.NotEqual(text, weak);
        File.WriteAllText(scratch["weak.toml"], weak);
        File.WriteAllText(scratch["light.csv"], "tyre,force [gf],peak [gf]\nsoft,118,142\nsoft,121,139\nsoft,115,147\nprinted,31,36\nprinted,29,35\nprinted,30,38\n");
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", scratch["light.csv"], "--load", "200 gf", "--robot", scratch["weak.toml"], "--stronger-motor", "2", "--json").Output);
        JsonElement on = json.RootElement.GetProperty("on_the_robot");
        JsonElement soft = on.GetProperty("tyres")[0];
        Assert.Equal("motors", soft.GetProperty("limited_by").GetString());
        Assert.True(soft.GetProperty("motor_force_n").GetDouble() < soft.GetProperty("tyre_force_n").GetDouble());
        Assert.Matches("changes? nothing in its push", json.RootElement.GetProperty("verdict").GetString());
        Assert.Contains(" N on soft", on.GetProperty("stronger_motor").GetString());
    }

    // mole on motors that give 10 N at the floor; the pulls read 9.3 to 9.5 N, so that the tyre grips at least 0.70
    [Fact]
    public void A_lower_bound_stays_one_in_text_json_table_and_block()
    {
        using var scratch = new ScratchFolder();
        string text = File.ReadAllText(s_mole);
        string weak = text.Replace("resistance = \"3.2 ohm ± 5 %\"", "resistance = \"15.8 ohm\"", StringComparison.Ordinal);
        Assert.NotEqual(text, weak);
        File.WriteAllText(scratch["weak.toml"], weak);
        File.WriteAllText(scratch["pulls.csv"], "tyre,force [N],peak [N]\nsoft,9.4,9.6\nsoft,9.3,9.7\nsoft,9.5,9.8\nsoft,9.4,9.7\n");
        string[] call = ["fit", scratch["pulls.csv"], "--robot", scratch["weak.toml"], "--against", s_badger, "--stronger-motor", "2", "--shoves", "20"];
        Cli shown = Cli.Run([.. call, "--details", "--report", "--out", scratch["out"]]);
        Assert.Equal("", shown.Error);
        using JsonDocument json = JsonDocument.Parse(Cli.Run([.. call, "--json"]).Output);
        JsonElement fit = Assert.Single(json.RootElement.GetProperty("tyres").EnumerateArray());
        Assert.Equal("motors", fit.GetProperty("limited_by").GetString());
        Assert.All(["static_friction_high", "kinetic_friction_high"], key => Assert.Equal(JsonValueKind.Null, fit.GetProperty(key).ValueKind));
        Assert.All(["static_friction_low", "kinetic_friction_low"], key => Assert.Equal(JsonValueKind.Number, fit.GetProperty(key).ValueKind));
        Assert.All(["static_friction_is_lower_bound", "kinetic_friction_is_lower_bound"], key => Assert.True(fit.GetProperty(key).GetBoolean()));
        JsonElement on = json.RootElement.GetProperty("on_the_robot");
        Assert.All(on.GetProperty("tyres").EnumerateArray(), t =>
        {
            Assert.Equal(JsonValueKind.Null, t.GetProperty("win_share_high").ValueKind);
            Assert.Equal(JsonValueKind.Number, t.GetProperty("win_share_low").ValueKind);
            Assert.Equal(JsonValueKind.Null, t.GetProperty("tyre_force_high_n").ValueKind);
        });
        Assert.Equal(JsonValueKind.Null, on.GetProperty("tyres")[1].GetProperty("limited_by").ValueKind);

        // the same in the verdict, the tables, the page, the CSV and the block
        string verdict = json.RootElement.GetProperty("verdict").GetString()!;
        Assert.Contains("sliding friction at least 0.70", verdict);
        Assert.Contains("A drag with its wheels locked (--drag) would tell more, or a pull with less load on the tyres.", verdict);
        Assert.Contains("wins at least ", verdict);
        Assert.Matches(@"With motors of 2 times the stall torque the standing push is at least \d+\.\d N, at most what a drag test would show", verdict);
        string page = File.ReadAllText(scratch["out/report.html"]);
        Assert.All([verdict, shown.Output.ReplaceLineEndings(" "), page], said => Assert.DoesNotMatch("stronger\\s+motor\\s+changes\\s+nothing|nothing\\s+on\\s+any\\s+tyre", said));
        Assert.Matches(">= 0\\.70.*or more.*>= 0\\.7.*or more", shown.Output);
        Assert.Matches(">= \\d+\\.\\d +│ \\d+\\.\\d or more", shown.Output);
        Assert.Matches(@"\d or more", page);
        string[] rows = File.ReadAllLines(scratch["out/on-the-robot.csv"]);
        int high = Array.IndexOf(rows[0].Split(','), "win_share_high");
        int most = Array.IndexOf(rows[0].Split(','), "tyre_force_high_n");
        Assert.All(rows.Skip(1), r => Assert.Equal(("", ""), (r.Split(',')[high], r.Split(',')[most])));
        Assert.All(rows.Skip(1), r => Assert.NotEqual("", r.Split(',')[high - 1]));
        string block = File.ReadAllText(scratch["out/tyres.toml"]);
        Assert.Contains("# the motors set this pull: both frictions are lower bounds", block);
        Assert.Matches(@"static_friction = 0\.\d+  # at least this\r?\nkinetic_friction = 0\.\d+  # at least this", block);

        // a drag of the same tyre closes the interval
        using JsonDocument drag = JsonDocument.Parse(Cli.Run("fit", scratch["pulls.csv"], "--robot", scratch["weak.toml"], "--drag", "--against", s_badger, "--shoves", "20", "--json").Output);
        JsonElement dragged = drag.RootElement.GetProperty("tyres")[0];
        Assert.InRange(dragged.GetProperty("kinetic_friction").GetDouble(), dragged.GetProperty("kinetic_friction_low").GetDouble(), dragged.GetProperty("kinetic_friction_high").GetDouble());
        Assert.Equal(JsonValueKind.Number, dragged.GetProperty("static_friction_high").ValueKind);
        Assert.Equal(JsonValueKind.Number, drag.RootElement.GetProperty("on_the_robot").GetProperty("tyres")[0].GetProperty("win_share_high").ValueKind);
        Assert.DoesNotContain("at least", drag.RootElement.GetProperty("verdict").GetString());
    }

    // the interval of the pulls straddles four fifths of the motors' force: which of the two set them is not known
    [Fact]
    public void What_is_not_known_is_a_lower_bound_too()
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["weak.toml"], File.ReadAllText(s_mole).Replace("resistance = \"3.2 ohm ± 5 %\"", "resistance = \"15.8 ohm\"", StringComparison.Ordinal));
        using JsonDocument motors = JsonDocument.Parse(Cli.Run("fit", s_readings, "--robot", scratch["weak.toml"], "--json").Output);
        double force = 0.8 * motors.RootElement.GetProperty("motor_force_n").GetDouble();
        File.WriteAllText(scratch["pulls.csv"], FormattableString.Invariant($"tyre,force [N],peak [N]\nsoft,{force - 0.1:0.00},9.6\nsoft,{force + 0.1:0.00},9.7\nsoft,{force:0.00},9.8\n"));
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", scratch["pulls.csv"], "--robot", scratch["weak.toml"], "--stronger-motor", "2", "--json").Output);
        Assert.Equal("unknown", json.RootElement.GetProperty("tyres")[0].GetProperty("limited_by").GetString());
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("tyres")[0].GetProperty("kinetic_friction_high").ValueKind);
        string verdict = json.RootElement.GetProperty("verdict").GetString()!;
        Assert.Contains("is unknown. A drag with its wheels locked (--drag) would tell more", verdict);
        Assert.Matches("What limits mole on soft is not known: it pushes at least .* at most what a drag test would show", verdict);
        Assert.DoesNotContain("changes nothing", verdict);
    }

    [Fact]
    public void One_seed_gives_one_answer()
    {
        static string Shares(string seed, string threads)
        {
            using JsonDocument json = JsonDocument.Parse(Cli.Run([.. s_fit, "--against", s_badger, "--shoves", "30", "--seed", seed, "--threads", threads, "--json"]).Output);
            return string.Join(' ', json.RootElement.GetProperty("on_the_robot").GetProperty("tyres").EnumerateArray().Select(t => t.GetProperty("win_share").GetRawText() + t.GetProperty("first_metre_s").GetRawText()));
        }

        Assert.Equal(Shares("3", "1"), Shares("3", "2"));
    }

    [Theory]
    [InlineData(ExitCode.WrongCommandLine, "--robot", "--against", "badger", "--load", "13.3 N")]
    [InlineData(ExitCode.WrongCommandLine, "--robot", "--stronger-motor", "1.5", "--load", "13.3 N")]
    [InlineData(ExitCode.WrongCommandLine, "above 1", "--robot", "mole", "--load", "13.3 N", "--stronger-motor", "0.5")]
    [InlineData(ExitCode.WrongCommandLine, "above 1", "--robot", "mole", "--load", "13.3 N", "--stronger-motor", "strong")]
    [InlineData(ExitCode.WrongCommandLine, "--shoves", "--robot", "mole", "--load", "13.3 N", "--shoves", "1")]
    [InlineData(ExitCode.WrongCommandLine, "not a scenario", "--robot", "pull", "--load", "13.3 N", "--against", "badger")]
    [InlineData(ExitCode.CannotReadOrWrite, "none.toml", "--robot", "mole", "--load", "13.3 N", "--against", "none.toml")]
    public void A_wrong_call_is_answered(int code, string answer, params string[] args)
    {
        string[] named = [.. args.Select(a => a switch { "mole" => s_mole, "badger" => s_badger, "pull" => s_pull, _ => a })];
        Cli cli = Cli.Run(["fit", s_readings, "--json", .. named]);
        Assert.Equal(code, cli.Code);
        Assert.Contains(answer, cli.Error);
        Assert.Equal("", cli.Output);
    }

    [Fact]
    public void A_wrong_opponent_is_named_with_file_and_line()
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["bad.toml"], "name = \"bad\"\n[chassis]\nmass = \"heavy\"\n");
        Cli cli = Cli.Run([.. s_fit, "--json", "--against", scratch["bad.toml"]]);
        Assert.Equal(ExitCode.WrongInput, cli.Code);
        Assert.Contains("bad.toml:3:", cli.Error);
    }
}
