using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>Values from the command line as nodes of a file: a bare number, true or false, else a text.</summary>
internal static class SetText
{
    public static IReadOnlyList<(string Path, TomlNode Value)> Nodes(IReadOnlyList<(string Path, string Text)> set) => [.. set.Select(s => (s.Path, Node(s.Path, s.Text)))];

    private static TomlNode Node(string path, string text)
    {
        var place = new Place(new SourceFile(ReadOptions.CommandLine, $"{path} = {text}"), 1, 1, Math.Max(1, path.Length));
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
        {
            return new TomlNumber(place, number, number == Math.Floor(number));
        }

        return text is "true" or "false" ? new TomlFlag(place, text == "true") : new TomlText(place, text);
    }
}
