namespace PushSim.Words.Terms;

/// <summary>A command line as it may be pasted into a shell.</summary>
public static class CommandLine
{
    /// <summary>The whole line.</summary>
    /// <param name="command">The command, for example "odds".</param>
    /// <param name="words">Files, options and their values.</param>
    /// <param name="garage">Folder of the garage that names come from; null: the nearest one upwards, which needs no word.</param>
    public static string Of(string command, IEnumerable<string> words, string? garage = null) =>
        string.Join(' ', ["pushsim", command, .. words.Select(Word), .. garage is null ? Array.Empty<string>() : ["--garage", Word(garage)]]);

    /// <summary>A file as a word: one that begins like an option is named by its folder.</summary>
    public static string File(string file) => file.StartsWith('-') ? "./" + file : file;

    /// <summary>A word that a shell takes as it is: in quotes where it has blanks or signs that mean something to it.</summary>
    public static string Word(string text)
    {
        if (text.Length > 0 && text.All(c => char.IsLetterOrDigit(c) || "_./:=,@%+-\\".Contains(c, StringComparison.Ordinal)) && (!text.Contains('\\') || Path.DirectorySeparatorChar == '\\'))
        {
            return text;
        }

        // the apostrophe ends the quotes, stands by itself and begins them again
        return text.Any(c => "$`\"!\\".Contains(c, StringComparison.Ordinal)) && Path.DirectorySeparatorChar != '\\' ? "'" + text.Replace("'", "'\\''", StringComparison.Ordinal) + "'" : $"\"{text}\"";
    }
}
