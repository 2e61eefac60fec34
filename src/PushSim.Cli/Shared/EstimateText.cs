namespace PushSim.Cli.Shared;

/// <summary>What of an answer's numbers is estimated, after the answer.</summary>
internal static class EstimateText
{
    // More lines than this would bury the warnings above them.
    private const int MostLines = 3;

    /// <summary>The estimates line by line if they are few, else how many they are; then what was taken for granted of a log.</summary>
    /// <param name="read">What reading the file gave.</param>
    public static IEnumerable<string> Lines(ReadResult read)
    {
        IEnumerable<string> estimates = read.Notes.Count <= MostLines
            ? read.Notes.Select(n => "estimate: " + n)
            : [$"estimates: {read.Derived.Count} numbers are estimated, converted or from the shelf"];
        return estimates.Concat(read.Remarks.Select(r => "note: " + r));
    }

    /// <summary>The command that lists them where they are many.</summary>
    /// <param name="read">What reading the file gave.</param>
    /// <param name="asked">The files as the user named them.</param>
    public static IEnumerable<Suggestion> Suggestions(ReadResult read, AskedFiles asked) => read.Notes.Count <= MostLines ? [] : [asked.Derived("Estimates with their uncertainties")];
}
