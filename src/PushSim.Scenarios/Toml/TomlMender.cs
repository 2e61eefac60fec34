using System.Text.RegularExpressions;
using Tomlyn.Syntax;

namespace PushSim.Scenarios.Toml;

/// <summary>
/// What is wrong with a line that is no TOML, in words of our own, and the text without it: reading goes on at the next line, so that one stray quote is one
/// complaint and the other mistakes of the file come at once, too.
/// </summary>
internal static partial class TomlMender
{
    /// <summary>Stands for the value of a line that could not be read: its key is meant, and not missed.</summary>
    public const string Unread = "(unread)";

    // Letters of a line that a complaint repeats [1].
    private const int LongestShown = 60;

    /// <summary>A fault of a line.</summary>
    /// <param name="Line">The line, from 0 [1].</param>
    /// <param name="Column">Its column, from 0 [1].</param>
    /// <param name="Length">Letters to underline [1].</param>
    /// <param name="Message">What is wrong.</param>
    /// <param name="Help">How to mend it.</param>
    public sealed record Fault(int Line, int Column, int Length, string Message, string Help);

    /// <summary>The fault behind what the parser stumbled over.</summary>
    /// <param name="lines">The text as it was parsed.</param>
    /// <param name="d">What the parser says.</param>
    public static Fault Find(string[] lines, DiagnosticMessage d)
    {
        int at = Math.Min(d.Span.Start.Line, lines.Length - 1);
        int open = Opened(lines, at, "\"\"\"");
        if (open >= 0)
        {
            return Whole(lines, open, lines[open].IndexOf("\"\"\"", StringComparison.Ordinal), 3, "three quotes open a text over several lines that is never closed", "one quote on either side is enough: \"170 mm\"");
        }

        // an array that is not closed is told at the next line that cannot belong to it
        int list = Enumerable.Range(0, at + 1).Reverse().Take(LongestShown).FirstOrDefault(i => Code(lines[i]) is var c && !c.TrimStart().StartsWith('[') && c.Count(x => x == '[') > c.Count(x => x == ']'), -1);
        if (list >= 0 && d.Message.Contains("closing", StringComparison.Ordinal))
        {
            return Whole(lines, list, lines[list].IndexOf('[', StringComparison.Ordinal), 1, "a bracket that opens a list is not closed", "a list stands between two brackets: [\"front left\", \"front right\"]");
        }

        string line = lines[at];
        string code = Code(line);
        int column = Math.Clamp(d.Span.Start.Column, 0, line.Length);
        int length = d.Span.End.Line == d.Span.Start.Line ? Math.Max(1, d.Span.End.Column - d.Span.Start.Column + 1) : 1;
        (string message, string help) = Cause(code, line);
        return new Fault(at, column, length, message, help);
    }

    /// <summary>The line in a form that can be read: a table with its brackets, a key whose value is <see cref="Unread"/>, or nothing.</summary>
    public static string Mended(string line)
    {
        if (Header().Match(line) is { Success: true } header)
        {
            bool isOfList = header.Groups[1].Length > 1;
            return $"{(isOfList ? "[[" : "[")}{header.Groups[2].Value}{(isOfList ? "]]" : "]")}";
        }

        return Key().Match(line) is { Success: true } key ? $"{key.Groups[1].Value} = \"{Unread}\"" : "";
    }

    private static Fault Whole(string[] lines, int line, int column, int length, string message, string help) => new(line, Math.Clamp(column, 0, lines[line].Length), length, message, help);

    private static (string Message, string Help) Cause(string code, string line)
    {
        string text = code.Trim();
        if (text.StartsWith('['))
        {
            return Header().Match(text) is { Success: true } h
                ? ("the brackets around the name of a table do not match", $"write [{h.Groups[2].Value}], or [[{h.Groups[2].Value}]] where there are several")
                : ("this is no name of a table", "a name stands between brackets: [chassis], or [[wheel]] where there are several");
        }

        int equals = text.IndexOf('=', StringComparison.Ordinal);
        if (equals < 0)
        {
            return ("there is no equals sign between key and value", Key().Match(text) is { Success: true } k && text.Length > k.Length ? SourceFile.Clean($"write {k.Groups[1].Value} = {text[k.Length..].TrimStart(':', ' ').TrimEnd(',', ' ')}", LongestShown) : "one key = value on each line; a remark begins with #");
        }

        string key = text[..equals].Trim();
        string value = text[(equals + 1)..].Trim();
        if (key.Length == 0 || key.Any(char.IsWhiteSpace))
        {
            return ($"\"{SourceFile.Clean(key, LongestShown)}\" is no key", "a key is one word; words are joined by an underscore");
        }

        if (value.Length == 0)
        {
            return ("there is no value behind the equals sign", "give one, or take the line out: most keys have a default");
        }

        string bare = value.Trim('"', '\'', ' ', '“', '”', '„', '‘', '’');
        string quoted = SourceFile.Clean($"{key} = \"{bare}\"", LongestShown);
        if (value[0] is '“' or '”' or '„' or '‘' or '’')
        {
            return ("curly quotes are no quotes here", quoted);
        }

        if (value.Contains('\\', StringComparison.Ordinal) && value[0] == '"')
        {
            return ("a backslash in a text begins a sign of its own", "write / in its place, or two of them");
        }

        if (CommaNumber().IsMatch(value))
        {
            return ("a comma in a number", $"use a point for the decimals: {key} = {value.Replace(',', '.')}");
        }

        if (value[0] == '[')
        {
            return ("a list does not end as it should", "each text in it has two quotes, and a comma stands between them: [\"front left\", \"front right\"]");
        }

        return line.Count(c => c == '"') % 2 == 1 ? ("a quote is missing: a text stands between two of them", quoted)
            : value.Contains('"', StringComparison.Ordinal) ? ("there is something behind the closing quote", "one value on each line; a remark begins with #")
            : char.IsAsciiDigit(value[0]) || value[0] is '+' or '-' or '.' or '±' ? ("a number with a unit goes in quotes, and a bare number has a point and no comma", quoted)
            : ("a text goes in quotes", quoted);
    }

    // without a remark behind it, where no quote stands before the sign
    private static string Code(string line)
    {
        int sign = line.IndexOf('#', StringComparison.Ordinal);
        return sign >= 0 && line[..sign].Count(c => c == '"') % 2 == 0 ? line[..sign] : line;
    }

    // the last line up to here from which three quotes are open; -1 if none are
    private static int Opened(string[] lines, int at, string quotes)
    {
        int open = -1;
        for (int i = 0; i <= at; i++)
        {
            int count = lines[i].Split(quotes).Length - 1;
            open = count % 2 == 0 ? open : open < 0 ? i : -1;
        }

        return open;
    }

    [GeneratedRegex(@"^[-+]?\d+,\d+$")]
    private static partial Regex CommaNumber();

    [GeneratedRegex(@"^\s*(\[+)\s*([A-Za-z0-9_.\-]+)")]
    private static partial Regex Header();

    [GeneratedRegex("^\\s*\"?([A-Za-z0-9_\\-]+)\"?")]
    private static partial Regex Key();
}
