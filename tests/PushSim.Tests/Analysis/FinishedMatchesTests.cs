using System.Globalization;
using PushSim.Analysis.Chance;
using PushSim.Binding;
using PushSim.Runs;
using PushSim.Words.Matches;
using PushSim.Words.Terms;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Finished matches as text: rows, heads, names of parts.</summary>
public class FinishedMatchesTests
{
    private static readonly FinishedHead s_head = new("odds", "0123", 1, 10, 1, 1);

    [Fact]
    public void A_row_cut_off_by_a_crash_is_left_out()
    {
        string text = Text(0.0) + "0,2,robot,li";
        IReadOnlyList<(int Contest, MatchEnd End)> read = Read(text, s_head, out _)!;
        Assert.Equal([0, 3], read.Select(r => r.Contest));
        Assert.Equal(0.1 + 0.2, read[0].End.GroundGained);
        Assert.Equal("a cause, with 'quotes'", MatchWords.Cause(read[1].End));
        Assert.Null(Read(text, s_head with { Seed = 2 }, out _));
        Assert.Null(Read(text, s_head with { Command = "ladder" }, out _));
    }

    [Fact]
    public void Time_is_added_up_over_the_runs()
    {
        Read(Text(1.5), s_head, out double seconds);
        Assert.Equal(1.5 + 0.25, seconds);
    }

    [Theory]
    [InlineData("")]
    [InlineData("# finished matches 3 of odds; fingerprint 0123; seed 1; matches 10; part 1 of 1")]
    public void A_text_without_rows_has_no_matches(string text) => Assert.Equal(text.Length == 0, Read(text, s_head, out _) is null);

    [Fact]
    public void A_cause_that_a_spreadsheet_takes_for_a_formula_gets_an_apostrophe() =>
        Assert.EndsWith(",\"'=1+1\"", FinishedMatches.Line(MatchEnd.Failed(4, MatchFailure.Draws, "=1+1"), KeptMatchWords.Instance));

    [Theory]
    [InlineData("part-3-of-16.csv", 16)]
    [InlineData("part-1-of-1.csv", 1)]
    [InlineData("part-3-of-x.csv", 0)]
    [InlineData("part-3-of-16.csv.new", 0)]
    [InlineData("matches.csv", 0)]
    public void A_name_tells_the_count_of_parts(string name, int parts) => Assert.Equal(parts, FinishedHead.PartsOf(name));

    [Fact]
    public void A_table_has_the_plan_in_its_head()
    {
        using var writer = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        FinishedMatches.WriteTable(writer, "0123", new MatchPlan("odds", 10, 7, 1), KeptMatchWords.Instance, [new MatchEnd(2, 1, ShoveEnding.Ground, -0.5, 3.0, BindingKind.Nothing, BindingKind.Nothing)]);
        string nothing = BindingTable.Key(BindingKind.Nothing);
        Assert.Equal($"# matches; fingerprint 0123; seed 7; asked 10\n{FinishedMatches.Columns}\n2,opponent,ground,-0.5,3,{nothing},{nothing},\"\"\n", writer.ToString());
    }

    private static string Text(double before)
    {
        var memory = new MatchMemory();
        using (var matches = FinishedMatches.Begin(memory, s_head, KeptMatchWords.Instance, [[]], before))
        {
            matches.Add(0, new MatchEnd(0, 0, ShoveEnding.Line, 0.1 + 0.2, 1.0, BindingKind.Tyre, BindingKind.Motor));
            matches.Add(3, MatchEnd.Failed(1, MatchFailure.Draws, "a cause, with \"quotes\""));
            matches.AddSeconds(0.25);
        }

        return memory.Open("part-1-of-1.csv")!.ReadToEnd();
    }

    private static IReadOnlyList<(int Contest, MatchEnd End)>? Read(string text, FinishedHead head, out double seconds) => FinishedMatches.Read(new StringReader(text), head, KeptMatchWords.Instance, out seconds);
}
