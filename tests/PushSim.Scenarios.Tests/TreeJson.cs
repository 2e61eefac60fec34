using System.Globalization;
using System.Text.Json;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Tests;

/// <summary>A file's tree as JSON, for the schema check.</summary>
internal static class TreeJson
{
    /// <summary>The JSON; null if the text is no TOML, or if JSON cannot say it (a date, a number that is not finite).</summary>
    public static string? Of(string toml)
    {
        var context = new ReadContext(new ReadOptions());
        TomlTable? tree = TomlTree.Parse(context, new SourceFile("file", toml));
        return tree is null || context.Errors > 0 || !IsSayable(tree) ? null : Json(tree);
    }

    private static bool IsSayable(TomlNode node) => node switch
    {
        TomlDate => false,
        TomlNumber n => double.IsFinite(n.Value),
        TomlTable t => t.Entries.All(e => IsSayable(e.Value)),
        TomlArray a => a.Items.All(IsSayable),
        _ => true,
    };

    private static string Json(TomlNode node) => node switch
    {
        TomlText t => JsonSerializer.Serialize(t.Value),
        TomlFlag f => f.Value ? "true" : "false",
        TomlNumber { IsWhole: true } n => n.Value.ToString("F0", CultureInfo.InvariantCulture),
        TomlNumber n => n.Value.ToString("0.0###############", CultureInfo.InvariantCulture),
        TomlTable t => "{" + string.Join(',', t.Entries.Select(e => JsonSerializer.Serialize(e.Key) + ":" + Json(e.Value))) + "}",
        TomlArray a => "[" + string.Join(',', a.Items.Select(Json)) + "]",
        _ => throw new ArgumentException(node.Words, nameof(node)),
    };
}
