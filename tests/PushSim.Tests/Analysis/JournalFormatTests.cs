using System.Text;
using PushSim.Analysis.Chance;
using PushSim.Simulation;
using PushSim.Words.Matches;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Journals as versions wrote them, read by this one. The files lie beside this test; a format that is given up loses its line here and in the promise.</summary>
public class JournalFormatTests
{
    // 40 matches of DrawnOutcomes, seed 1, print "print0"; of the engine and the draws of that day, whose places in the first line today's take
    [Theory]
    [InlineData("journal-4.csv")]
    public void A_journal_of_each_promised_format_is_read(string file)
    {
        KeptMatches work = Work(file, isOfTodaysDraws: true);
        Assert.Equal(ResumeState.Plain, work.Resume());
        Assert.Equal(Enumerable.Range(0, 40).Select(n => new DrawnOutcomes(1).End(n)), work.Of(0));
    }

    [Theory]
    [InlineData("journal-4.csv")]
    public void Matches_of_another_scheme_of_draws_are_not_taken(string file) => Assert.Equal(JournalMisfit.Draws, Work(file, isOfTodaysDraws: false).Resume().Misfit);

    private static KeptMatches Work(string file, bool isOfTodaysDraws)
    {
        using var reader = new StreamReader(typeof(JournalFormatTests).Assembly.GetManifestResourceStream(file)!);
        string[] text = reader.ReadToEnd().Split('\n', 2);
        int at = text[0].IndexOf("engine ", StringComparison.Ordinal) + "engine ".Length;
        string head = text[0][..at] + EngineSelfTest.Hash(Precision.Double) + text[0][(at + EngineSelfTest.Hash(Precision.Double).Length)..];
        var memory = new MatchMemory();
        using (Stream stream = memory.Append("part-1-of-1.csv", 0))
        {
            // the closing line held the old first line, and goes
            string rows = string.Concat(text[1].Split('\n').Where(l => l.Length > 0 && l[0] != '#').Select(l => l + "\n"));
            stream.Write(Encoding.UTF8.GetBytes((isOfTodaysDraws ? head.Replace("draws 1;", $"draws {DrawnQuantity.Scheme};", StringComparison.Ordinal) : head) + "\n" + rows));
        }

        var drawn = new DrawnOutcomes(1);
        return new KeptMatches(new MatchPlan("odds", 40, 1, 1), () => ["print0"], [drawn], KeptMatchWords.Instance, memory, _ => drawn);
    }
}
