using System.Runtime.CompilerServices;
using Xunit;

namespace PushSim.Tests.Accuracy;

/// <summary>The rows of src/docs/accuracy.md against their bounds, and the page against the rows.</summary>
public class AccuracyTests
{
    public static TheoryData<string> Whats => [.. AccuracyTable.Rows.Select(r => r.What)];

    [Theory]
    [MemberData(nameof(Whats))]
    public void The_outside_value_is_met(string what)
    {
        AccuracyRow row = Assert.Single(AccuracyTable.Rows, r => r.What == what);
        Assert.True(Math.Abs(row.Measured - row.Outside) <= row.Bound, FormattableString.Invariant($"outside {row.Outside:R}, PushSim {row.Measured:R}, bound {row.Bound:G3} {row.Unit}; {row.Source}"));
    }

    [Fact]
    public void The_page_is_what_the_table_makes()
    {
        string path = Path.Combine(Root(), "src", "docs", "accuracy.md");
        string text = AccuracyPage.Text(AccuracyTable.Groups);
        if (Environment.GetEnvironmentVariable("PUSHSIM_REWRITE") == "1")
        {
            File.WriteAllText(path, text);
        }

        string[] made = text.Split('\n');
        string[] kept = File.Exists(path) ? File.ReadAllText(path).ReplaceLineEndings("\n").Split('\n') : [];
        int line = Enumerable.Range(0, made.Length).FirstOrDefault(i => i >= kept.Length || kept[i] != made[i], -1);
        Assert.True(line < 0 && kept.Length == made.Length, $"src/docs/accuracy.md, line {line + 1}, is not what the table makes: {made.ElementAtOrDefault(line)}; make it anew with {AccuracyPage.Command}");
    }

    [Fact]
    public void The_page_covers_enough()
    {
        Assert.True(AccuracyTable.Rows.Count() >= 25);
        Assert.All(AccuracyTable.Groups, g => Assert.True(g.Rows.Length >= 3, g.Title));
        Assert.All(AccuracyTable.Rows, r => Assert.False(string.IsNullOrWhiteSpace(r.Source) || r.Source.Contains('|', StringComparison.Ordinal) || r.What.Contains('|', StringComparison.Ordinal), r.What));
    }

    [Theory]
    [InlineData(0.0999000999, "0.0999")]
    [InlineData(51.7489, "51.749")]
    [InlineData(7.2668688436e-6, "7.2669e-6")]
    [InlineData(73490.0, "73490")]
    [InlineData(-1.5, "-1.5")]
    public void Values_have_five_digits(double value, string text) => Assert.Equal(text, AccuracyPage.Value(value));

    [Theory]
    [InlineData(2.0, "< 1e-9")]
    [InlineData(2.0 + 1e-9, "< 1e-9")]
    [InlineData(2.0 - 6.4e-6, "-3.2e-6")]
    [InlineData(2.02, "1 %")]
    [InlineData(1.9974, "-0.13 %")]
    public void Differences_are_shares(double measured, string text) => Assert.Equal(text, AccuracyPage.Difference(new AccuracyRow("a", "m", 2.0, 1.0, "computed here", () => measured)));

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", ".."));
}
