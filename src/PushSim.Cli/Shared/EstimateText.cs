namespace PushSim.Cli.Shared;

/// <summary>What of an answer's numbers is estimated, after the answer.</summary>
internal static class EstimateText
{
    // More lines than this would bury the warnings above them.
    private const int MostLines = 3;

    /// <summary>The estimates line by line if they are few, else how many they are and what lists them; then what was taken for granted of a log.</summary>
    /// <param name="read">What reading the file gave.</param>
    /// <param name="file">The file as the user named it.</param>
    public static IEnumerable<string> Lines(ReadResult read, string file)
    {
        IEnumerable<string> estimates = read.Notes.Count <= MostLines
            ? read.Notes.Select(n => "estimate: " + n)
            : [$"estimates: {read.Derived.Count} numbers are estimated, converted or from the shelf; with their uncertainties: pushsim check --derived {(file.Any(char.IsWhiteSpace) ? $"\"{file}\"" : file)}"];
        return estimates.Concat(read.Remarks.Select(r => "note: " + r));
    }
}
