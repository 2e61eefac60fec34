using System.Text.RegularExpressions;
using PushSim.Cli.Shared;
using PushSim.Words.Tables;
using PushSim.Words.Terms;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>What an answer suggests runs as it is printed: each command of each of these cards is taken from the screen and started.</summary>
public class SuggestionTests
{
    private static string Garage => Path.Combine(Repository.Root, "scenarios", "garage");

    // the cards, and how many commands they suggest at least
    public static TheoryData<int, string> Cards => new()
    {
        { 1, "run mole wombat --garage GARAGE" }, { 1, "run mole wombat --garage GARAGE --details" }, { 1, "run mole wombat --garage GARAGE --set chassis.mass=1.3kg" }, { 2, "run SCENARIOS/pull-test.toml" },
        { 1, "run SCENARIOS/tilted-board.toml --details" }, { 1, "limits mole --garage GARAGE --details" }, { 1, "garage --garage GARAGE" }, { 1, "garage new OUT/other" }, { 1, "new --out OUT/own" }, { 1, "plan a b --load 200gf --out OUT/plan" },
        { 0, "advise wombat --against wombat --matches 32 --garage GARAGE" },
    };

    [Theory]
    [MemberData(nameof(Cards))]
    public void Every_suggested_command_runs(int least, string line)
    {
        using var scratch = new ScratchFolder();
        string scenarios = Path.Combine(Repository.Root, "scenarios");
        string Placed(string word) => word.Replace("GARAGE", Garage, StringComparison.Ordinal).Replace("SCENARIOS", scenarios, StringComparison.Ordinal).Replace("OUT", scratch["out"], StringComparison.Ordinal);
        string[] words = [.. line.Split(' ').Select(Placed)];
        bool hasOut = words.Contains("--out") || words[0] == "garage";
        Cli cli = Cli.Run(hasOut ? words : [.. words, "--no-plots", "--out", scratch["first"]]);
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        string[] suggested = [.. cli.Output.Split('\n').Select(l => Regex.Match(l, "^[A-Za-z][A-Za-z ]*: (pushsim .*)$")).Where(m => m.Success).Select(m => m.Groups[1].Value.TrimEnd())];
        Assert.True(suggested.Length >= least, cli.Output);

        // a table that is to be filled in is filled in first
        if (File.Exists(scratch["out/plan/plan.csv"]))
        {
            Fill(scratch["out/plan/plan.csv"]);
        }

        foreach (string command in suggested)
        {
            string[] next = Split(command)[1..];
            Cli run = Cli.Run([.. next, .. next[0] is "check" or "garage" ? Array.Empty<string>() : ["--no-plots", "--out", scratch["second"], "--force"], .. next[0] == "odds" ? ["--matches", "8"] : Array.Empty<string>()]);
            Assert.True(run.Code == ExitCode.Done, $"{command}\n{run.Error}");
        }
    }

    [Theory]
    [InlineData("mole", "mole")]
    [InlineData("big wombat", "\"big wombat\"")]
    [InlineData("chassis.mass=1.3 kg", "\"chassis.mass=1.3 kg\"")]
    [InlineData("a$b", "'a$b'")]
    [InlineData("it's \"so\"", "'it'\\''s \"so\"'")]
    [InlineData("a;b", "\"a;b\"")]
    [InlineData("", "\"\"")]
    public void A_word_is_quoted_where_a_shell_would_take_it_apart(string word, string quoted) => Assert.Equal(quoted, CommandLine.Word(word));

    [Fact]
    public void A_file_that_looks_like_an_option_is_named_by_its_folder() => Assert.Equal("pushsim odds ./-x.toml", new AskedFiles("-x.toml").Odds("More").Line);

    // force and peak of every row, in gf as the head says
    private static void Fill(string plan) => File.WriteAllLines(plan, File.ReadAllLines(plan).Select((line, i) =>
    {
        if (!char.IsAsciiDigit(line[0]))
        {
            return line;
        }

        string[] cells = line.Split(',');
        (cells[4], cells[5]) = (FormattableString.Invariant($"{150 + (i % 7)}"), FormattableString.Invariant($"{170 + (i % 5)}"));
        return string.Join(',', cells);
    }).ToArray());

    // as a shell does: blanks part words but inside quotes
    private static string[] Split(string line) => [.. Regex.Matches(line, "(?:\"[^\"]*\"|'[^']*'|[^ \"'])+").Select(m => m.Value.Replace("\"", "", StringComparison.Ordinal).Replace("'", "", StringComparison.Ordinal))];
}
