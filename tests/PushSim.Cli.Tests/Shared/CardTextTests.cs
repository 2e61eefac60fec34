using PushSim.Cli.Shared;
using PushSim.Words.Tables;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>A card on a terminal of 80 columns (a common terminal's size; common practice, no source).</summary>
public class CardTextTests
{
    [Fact]
    public void A_warning_without_room_keeps_what_to_do()
    {
        string long_ = string.Join(' ', Enumerable.Repeat("much of this stands between the beginning and the end,", 12));
        string text = Written(new AnswerCard("It is so."), $"it begins: {long_}; raise the clearance");
        Assert.Contains("warning: it begins", text, StringComparison.Ordinal);
        Assert.Contains(" …; raise the clearance", text.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.True(text.Split('\n').Length <= CardText.MostLines + 1);
    }

    // notes begin in one column, whatever stands in a line without one
    [Fact]
    public void Notes_stand_in_a_column()
    {
        string[] lines = Written(new AnswerCard("It is so.")
        {
            Numbers = [new CardNumber("pull", "11.7 N", "1188 gf", "steady"), new CardNumber("10 % more load on the wheels that drive", "-6.9 %", "of the time for the first metre"), new CardNumber("speed", "1.19 m/s", "", "from 1 s on")],
        }).Split('\n');
        int[] columns = [.. new[] { "steady", "from 1 s on" }.Select(n => lines.Single(l => l.Contains(n, StringComparison.Ordinal)).IndexOf(n, StringComparison.Ordinal))];
        Assert.Equal(columns[0], columns[1]);
        Assert.All(lines, l => Assert.True(l.Length < 80));
    }

    // the opponent's number goes before the moment does, and neither is cut
    [Fact]
    public void A_note_without_room_loses_its_last_clause()
    {
        string text = Written(new AnswerCard("It is so.") { Numbers = [new CardNumber("lowest battery voltage under load", "10.63 V", "", "at 0.110 s, limit 9.90 V; badger: 10.83 V")] });
        Assert.Contains("10.63 V  at 0.110 s, limit 9.90 V\n", text, StringComparison.Ordinal);
    }

    private static string Written(AnswerCard card, params string[] warnings)
    {
        using var text = new StringWriter();
        CardText.Write(text, card, warnings, []);
        return text.ToString().ReplaceLineEndings("\n");
    }
}
