using PushSim.Scenarios.Scenes;
using Spectre.Console;

namespace PushSim.Cli.Shared;

/// <summary>What of an answer's numbers is estimated, after the answer.</summary>
internal static class EstimateText
{
    // More lines than this would bury the warnings above them.
    private const int MostLines = 3;

    /// <summary>The estimates line by line if they are few, else how many they are and what lists them; then what was taken for granted of a log.</summary>
    /// <param name="console">Terminal or file.</param>
    /// <param name="read">What reading the file gave.</param>
    /// <param name="file">The file as the user named it.</param>
    public static void Write(IAnsiConsole console, ReadResult read, string file)
    {
        IEnumerable<string> estimates = read.Notes.Count <= MostLines
            ? read.Notes.Select(n => "estimate: " + n)
            : [$"estimates: {read.Derived.Count} numbers are estimated, converted or from the shelf; with their uncertainties: pushsim check --derived {(file.Any(char.IsWhiteSpace) ? $"\"{file}\"" : file)}"];
        foreach (string line in estimates.Concat(read.Remarks.Select(r => "note: " + r)))
        {
            console.MarkupLine("[dim]" + PlainText.Marked(line) + "[/]");
        }
    }
}
