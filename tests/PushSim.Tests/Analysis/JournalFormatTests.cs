using System.Text;
using PushSim.Analysis.Chance;
using PushSim.Simulation;
using PushSim.Words.Matches;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Journals as versions wrote them, read by this one. The files lie beside this test; a format that is given up loses its line here and in the promise.</summary>
public class JournalFormatTests
{
    // 40 matches of DrawnOutcomes, seed 1, print "print0"; of the engine of that day
    [Theory]
    [InlineData("journal-4.csv")]
    public void A_journal_of_each_promised_format_is_read(string file)
    {
        using var reader = new StreamReader(typeof(JournalFormatTests).Assembly.GetManifestResourceStream(file)!);
        string text = reader.ReadToEnd();
        string[] head = text.Split('\n', 2);
        int at = head[0].IndexOf("engine ", StringComparison.Ordinal) + "engine ".Length;
        var memory = new MatchMemory();
        using (Stream stream = memory.Append("part-1-of-1.csv", 0))
        {
            // the hash of that engine gives way to today's; the closing line held the old first line, and goes
            string rows = string.Concat(head[1].Split('\n').Where(l => l.Length > 0 && l[0] != '#').Select(l => l + "\n"));
            stream.Write(Encoding.UTF8.GetBytes(head[0][..at] + EngineSelfTest.Hash(Precision.Double) + head[0][(at + EngineSelfTest.Hash(Precision.Double).Length)..] + "\n" + rows));
        }

        var drawn = new DrawnOutcomes(1);
        var work = new MatchWork(new MatchPlan("odds", 40, 1, 1), () => ["print0"], [drawn], KeptMatchWords.Instance, memory, _ => drawn);
        Assert.Equal(ResumeState.Plain, work.Resume());
        Assert.Equal(Enumerable.Range(0, 40).Select(n => drawn.End(n)), work.Of(0));
    }
}
