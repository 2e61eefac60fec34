namespace PushSim.Cli.Shared;

/// <summary>Text broken at blanks, for a terminal.</summary>
internal static class WrappedText
{
    /// <summary>Columns of a line [1]; the eightieth stays free, where some terminals break.</summary>
    public const int Width = 79;

    /// <summary>Its lines; a word that is longer than a line stands alone and is not cut.</summary>
    /// <param name="first">What stands before the first word.</param>
    /// <param name="next">What stands before each further line.</param>
    /// <param name="text">The text.</param>
    public static IEnumerable<string> Lines(string first, string next, string text)
    {
        string line = first;
        bool isEmpty = true;
        foreach (string word in text.Split(' '))
        {
            if (!isEmpty && line.Length + 1 + word.Length > Width)
            {
                yield return line.TrimEnd();
                line = next;
                isEmpty = true;
            }

            line += isEmpty ? word : " " + word;
            isEmpty = false;
        }

        yield return line.TrimEnd();
    }

    /// <summary>Writes them.</summary>
    public static void Write(TextWriter output, string first, string next, string text)
    {
        foreach (string line in Lines(first, next, text))
        {
            output.WriteLine(line);
        }
    }
}
