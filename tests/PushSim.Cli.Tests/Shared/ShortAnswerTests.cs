using PushSim.Cli.Shared;
using PushSim.Scenarios.Keys;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>What a person sees without --details fits a window of 24 lines of 80 columns (a common terminal's size; common practice, no source), for every shipped scenario and every command.</summary>
public class ShortAnswerTests
{
    private const int Lines = 24;
    private const int Columns = 80;

    public static TheoryData<string> Scenarios => [.. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Robots => [.. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios", "robots"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Keys => [.. KeySearch.All.Select(m => m.Key.Name).Distinct()];

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void A_run_fits(string name) => Fits(Shipped.Text(name).Cli, Shipped.Text(name).Folder);

    [Theory]
    [MemberData(nameof(Robots))]
    public void Limits_of_a_robot_fit(string robot) => FitsOf("limits", Path.Combine(Repository.Root, "scenarios", "robots", robot + ".toml"), "--no-plots");

    [Theory]
    [InlineData("odds", "shove-equals.toml", "--matches", "25")]
    [InlineData("odds", "shove-ramp-flat.toml", "--matches", "25", "--beside", "shove-heavy-grippy.toml")]
    [InlineData("sweep", "pull-test.toml", "--vary", "drive.*.gear_ratio=6,12,40")]
    [InlineData("sweep", "shove-equals.toml", "--vary", "chassis.mass=1 kg,1.3 kg", "--odds", "10")]
    [InlineData("ladder", "robots/mole.toml", "robots/badger.toml", "robots/wombat.toml", "--matches", "5")]
    [InlineData("limits", "shove-heavy-grippy.toml")]
    [InlineData("limits", "wall-push.toml", "--beside", "pull-test.toml")]
    [InlineData("fit", "logs/soft-tyre.csv", "--load", "1360 gf")]
    [InlineData("fit", "logs/soft-tyre.csv", "--robot", "pull-test.toml")]
    [InlineData("fit", "logs/readings.csv", "--load", "13.3N")]
    [InlineData("run", "spot-turn.toml", "--beside", "arc.toml")]
    [InlineData("run", "robots/mole.toml", "--against", "robots/badger.toml")]
    public void An_answer_fits(params string[] words) => FitsOf([.. words.Select(w => w.Contains('.') && Path.Exists(Scenario(w)) ? Scenario(w) : w), "--no-plots"]);

    [Theory]
    [InlineData("plan", "soft", "neoprene", "tape")]
    [InlineData("plan", "a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l", "m", "n", "o", "p", "--difference", "2%")]
    [InlineData("new", "--kind", "shove")]
    public void A_form_fits(params string[] words) => FitsOf(words);

    [Theory]
    [InlineData("shelf")]
    [InlineData("shelf", "motors")]
    [InlineData("shelf", "tyres")]
    [InlineData("shelf", "25 mm")]
    [InlineData("shelf", "TPU 95A")]
    [InlineData("explain")]
    [InlineData("check", "robots/gopher.toml")]
    [InlineData("cluster", "--", "odds", "shove-equals.toml", "--out", "no-such-folder")]
    public void A_list_fits(params string[] words) => Fits(Cli.Run([.. words.Select(w => w.EndsWith(".toml", StringComparison.Ordinal) ? Scenario(w) : w)]), "");

    [Theory]
    [MemberData(nameof(Keys))]
    public void What_a_key_is_fits(string key) => Fits(Cli.Run("explain", key), "");

    // a path stands on a line of its own and is never broken
    private static void Fits(Cli cli, string folder)
    {
        Assert.Equal(ExitCode.Done, cli.Code);
        string[] lines = cli.Output.TrimEnd('\n').Split('\n');
        Assert.True(lines.Length <= Lines, $"{lines.Length} lines:\n{cli.Output}");
        Assert.All(lines, l => Assert.True(l.Length <= Columns || l.Contains('/', StringComparison.Ordinal) || (folder.Length > 0 && l.Contains(folder, StringComparison.Ordinal)), l));
        Assert.All(lines, l => Assert.Equal(l.TrimEnd(), l));
    }

    private static void FitsOf(params string[] words)
    {
        using var scratch = new ScratchFolder();
        Fits(Cli.Run([.. words, "--out", scratch["out"]]), scratch.Path);
    }

    private static string Scenario(string name) => Path.Combine(Repository.Root, "scenarios", name);
}
