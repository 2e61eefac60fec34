namespace PushSim.Scenarios.Sources;

/// <summary>A file's text, by the name that messages use.</summary>
internal sealed class SourceFile(string name, string text)
{
    private readonly string[] _lines = text.Split('\n');

    /// <summary>The name that messages use.</summary>
    public string Name { get; } = name;

    /// <summary>The whole text.</summary>
    public string Text { get; } = text;

    /// <summary>A line from 1, without control characters; empty outside.</summary>
    public string Line(int line) => line >= 1 && line <= _lines.Length ? Clean(_lines[line - 1]) : "";

    /// <summary>A text for the screen: no control characters (a tab becomes one blank, so that columns stay), bounded.</summary>
    public static string Clean(string text, int most = 200)
    {
        string cut = text.Length > most ? text[..most] + "..." : text;
        return string.Create(cut.Length, cut, (span, s) =>
        {
            for (int i = 0; i < s.Length; i++)
            {
                span[i] = char.IsControl(s[i]) ? (s[i] == '\r' && i == s.Length - 1 ? ' ' : s[i] == '\t' ? ' ' : '?') : s[i];
            }
        }).TrimEnd(' ');
    }
}
