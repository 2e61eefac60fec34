using PushSim.Analysis.Limits;
using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Check;

/// <summary>What files leave to estimates and what their robots can do, as text for a person.</summary>
internal static class CheckText
{
    public static void WriteRobots(TextWriter output, IEnumerable<Plausibility> robots, List<string> doubts)
    {
        foreach (string line in robots.Select(PlausibilityWords.Line).Concat(doubts.Select(d => "warning: " + d)).Distinct())
        {
            WrappedText.Write(output, "", "  ", PlainText.Of(line));
        }
    }

    public static void WriteDerived(TextWriter output, List<(string File, DerivedValue Value)> derived)
    {
        output.WriteLine(derived.Count == 0 ? "Nothing is derived: every number stands in the files." : $"{derived.Count} derived numbers; give a key of your own to replace one.");
        string? last = null;
        foreach ((string file, DerivedValue value) in derived)
        {
            if (file != last)
            {
                output.WriteLine(PlainText.Of(file));
                last = file;
            }

            WrappedText.Write(output, "  ", "    ", PlainText.Of(value.Text));
            WrappedText.Write(output, "      uncertainty: ", "        ", PlainText.Of(value.Error));
        }
    }
}
