using System.Text.Json;
using PushSim.Cli.Shared;
using PushSim.Scenarios.Keys;
using Xunit;

namespace PushSim.Cli.Tests.Explain;

public class ExplainCommandTests
{
    [Theory]
    [InlineData("body_stiffness")]
    [InlineData("tyre.body_stiffness")]
    [InlineData("robot.tyre.body_stiffness")]
    public void A_key_is_explained_with_all_of_its_row(string words)
    {
        Cli cli = Cli.Run("explain", words);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.Equal("", cli.Error);
        Assert.StartsWith("robot.tyre.body_stiffness", cli.Output);
        Assert.Contains("Sideways and lengthwise stiffness of the tyre body", cli.Output);
        Assert.Contains("a stiffness: N/m, N/mm", cli.Output);
        Assert.Matches(@"allowed +10 N/m to 10000 N/mm", cli.Output);
        Assert.Matches(@"usual +200 N/m to 1000 N/mm", cli.Output);
        Assert.Matches(@"default +estimated from the cover", cli.Output);
        Assert.Contains("[[tyre]] of a robot file", cli.Output);
        Assert.Contains("body_stiffness = \"2500 N/m\"", cli.Output);
    }

    [Fact]
    public void Several_matches_are_all_printed()
    {
        string output = Cli.Run("explain", "gear_ratio").Output;
        Assert.Contains("robot.motor.gear_ratio", output);
        Assert.Contains("robot.drive.gear_ratio", output);
    }

    [Fact]
    public void A_table_lists_its_keys()
    {
        string output = Cli.Run("explain", "[battery]").Output;
        Assert.All(KeyTable.In("battery"), k => Assert.Contains(k.Name, output));
        Assert.Contains("[battery]", output);
    }

    [Fact]
    public void Without_a_key_all_tables_and_keys_are_listed()
    {
        string output = Cli.Run("explain", "--details").Output;
        Assert.All(KeyTable.All, k => Assert.Matches($@"\b{k.Name}\b", output));
        Assert.Contains("robot file, [[tyre]]", output);
        Assert.Contains("scenario file, [manoeuvre]", output);
    }

    [Fact]
    public void Every_line_fits_eighty_columns()
    {
        IEnumerable<string> lines = KeyTable.All.Select(k => k.Name).Distinct().Append("").SelectMany(n => Cli.Run(n.Length > 0 ? ["explain", n] : ["explain"]).Output.Split('\n'));
        // an example is a line to copy and is not broken inside its quotes
        Assert.All(lines.Where(l => !l.StartsWith("  example", StringComparison.Ordinal)), l => Assert.True(l.TrimEnd().Length <= 80, l));
    }

    [Theory]
    [InlineData("body_stifness", "did you mean body_stiffness")]
    [InlineData("tyre.mas", "did you mean mass")]
    [InlineData("qqqqqqqq", "pushsim explain --details lists all keys")]
    [InlineData("", "pushsim explain --details lists all keys")]
    [InlineData("a\u001b[31mb", "advice:")]
    public void An_unknown_key_is_exit_2_with_the_nearest(string words, string help)
    {
        Cli cli = Cli.Run("explain", words);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Equal("", cli.Output);
        Assert.Contains("there is no key", cli.Error);
        Assert.Contains(help, cli.Error);
        Assert.DoesNotContain('\u001b', cli.Error);
    }

    [Fact]
    public void Json_has_the_row_in_si()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("explain", "wheel.diameter", "--json").Output);
        Assert.Equal("explain", json.RootElement.GetProperty("command").GetString());
        JsonElement key = Assert.Single(json.RootElement.GetProperty("keys").EnumerateArray());
        Assert.Equal("robot.wheel.diameter", key.GetProperty("path").GetString());
        Assert.Equal("length", key.GetProperty("unit_family").GetString());
        Assert.Equal("m", key.GetProperty("si_unit").GetString());
        Assert.Equal(0.002, key.GetProperty("allowed_min").GetDouble());
        Assert.Equal(0.25, key.GetProperty("usual_max").GetDouble());
        Assert.True(key.GetProperty("required").GetBoolean());
        Assert.Contains("in", key.GetProperty("units").EnumerateArray().Select(u => u.GetString()));
    }

    [Fact]
    public void A_usual_other_name_is_answered_by_the_key()
    {
        Cli cli = Cli.Run("explain", "c_rating");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("in [battery]: no key limits the pack's current", cli.Error);
        Assert.Contains("shelf = \"lithium polymer, 30C and up\"", cli.Error);
    }

    // a key of one table and a usual other name of something in the next
    [Theory]
    [InlineData("voltage", "robot.motor.voltage", "[battery]: give the number of cells")]
    [InlineData("current_limit", "robot.controller.current_limit", "[battery]: the limit of a controller stands in [[controller]]")]
    [InlineData("friction", "scenario.floor.friction", "[tyre]: write static_friction")]
    public void A_word_that_is_a_key_and_another_name_too_is_answered_by_both(string word, string path, string advice)
    {
        Cli cli = Cli.Run("explain", word);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.Contains(path, cli.Output);
        Assert.Contains("\nnot in " + advice, cli.Output.ReplaceLineEndings("\n"));
        Assert.Contains("\nnot in " + advice, Cli.Run("explain", word, "--quiet").Output.ReplaceLineEndings("\n"));
        using JsonDocument json = JsonDocument.Parse(Cli.Run("explain", word, "--json").Output);
        JsonElement other = Assert.Single(json.RootElement.GetProperty("other_names").EnumerateArray());
        Assert.StartsWith($"[{other.GetProperty("table").GetString()}]: ", advice);
        Assert.DoesNotContain("not in", Cli.Run("explain", path).Output);
    }

    [Fact]
    public void Json_without_a_key_is_the_whole_table()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("explain", "--json").Output);
        Assert.Equal(KeySearch.All.Count, json.RootElement.GetProperty("keys").GetArrayLength());
    }

    [Fact]
    public void Quiet_is_a_line_for_each_key() =>
        Assert.Equal("robot.chassis.mass: Mass of the whole robot with wheels and battery.", Cli.Run("explain", "chassis.mass", "--quiet").Output.TrimEnd());
}
