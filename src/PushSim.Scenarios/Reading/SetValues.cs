using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>Values that a caller sets anew by their paths: "floor.friction", "tyre.soft.static_friction", "opponent.heading", "opponent.chassis.mass".</summary>
internal static class SetValues
{
    private const string Opponent = "opponent.";

    /// <summary>The values as nodes of a file: a bare number, true or false, else a text.</summary>
    public static IReadOnlyList<(string Path, TomlNode Value)> Nodes(IReadOnlyList<(string Path, string Text)> set) => [.. set.Select(s => (s.Path, Node(s.Path, s.Text)))];

    /// <summary>Whose value it is: "" for the scenario, "robot" or "opponent".</summary>
    public static string OwnerOf(string path)
    {
        if (path.StartsWith(Opponent, StringComparison.Ordinal))
        {
            return KeyTable.Find("opponent", Head(path[Opponent.Length..])) is null ? "opponent" : "";
        }

        return KeyTable.Find("scenario", Head(path)) is null ? "robot" : "";
    }

    /// <summary>The path inside the robot's file.</summary>
    public static string WithoutOwner(string path) => path.StartsWith(Opponent, StringComparison.Ordinal) ? path[Opponent.Length..] : path;

    private static TomlNode Node(string path, string text)
    {
        var place = new Place(new SourceFile(ReadOptions.CommandLine, $"{path} = {text}"), 1, 1, Math.Max(1, path.Length));
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
        {
            return new TomlNumber(place, number, number == Math.Floor(number));
        }

        return text is "true" or "false" ? new TomlFlag(place, text == "true") : new TomlText(place, text);
    }

    private static string Head(string path) => path.Split('.')[0];
}
