using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Keys;

/// <summary>
/// JSON Schema of each kind of file, made from the table of keys, so that editors complete and check while a file is typed. Draft 4: the newest
/// that the common TOML plug-ins of editors read. A schema cannot see ranges of texts with units, nor what one part of a file says about another:
/// `pushsim check` does.
/// </summary>
public static class JsonSchema
{
    // The reader's own limit, so that an editor complains before the reader does [character].
    private static readonly int LongestText = new ReadOptions().MaxText;

    /// <summary>Name of the schema's file, also that of the embedded resource.</summary>
    public static string FileName(FileKind file) => file switch { FileKind.Robot => "pushsim-robot.schema.json", FileKind.Scenario => "pushsim-scenario.schema.json", _ => "pushsim-garage.schema.json" };

    /// <summary>The schema that this program was built with.</summary>
    public static string Shipped(FileKind file)
    {
        using Stream stream = typeof(JsonSchema).Assembly.GetManifestResourceStream(FileName(file))
            ?? throw new InvalidOperationException($"the program lacks {FileName(file)}");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    /// <summary>The schema made from the table of keys.</summary>
    public static string Make(FileKind file)
    {
        IReadOnlyList<KeySection> sections = KeySection.Of(file);
        JsonObject root = new()
        {
            ["$schema"] = "http://json-schema.org/draft-04/schema#",
            ["title"] = $"PushSim {sections[0].FileWord} file",
            ["description"] = "Made from the table of keys; see scenarios/KEYS.md.",
        };
        Add(root, Table(sections[0]));
        root["definitions"] = Definitions(sections);
        return Text(root);
    }

    private static string Text(JsonObject root)
    {
        using var stream = new MemoryStream();
        var options = new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var writer = new Utf8JsonWriter(stream, options))
        {
            root.WriteTo(writer);
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Add(JsonObject to, JsonObject from)
    {
        foreach ((string name, JsonNode? value) in from)
        {
            to[name] = value?.DeepClone();
        }
    }

    private static JsonObject Table(KeySection section)
    {
        JsonObject properties = [];
        JsonArray required = [];

        // tyres, and the diameter that one gives its wheels, may stand in the garage; a skid needs none
        foreach (KeyDefinition key in section.Keys)
        {
            properties[key.Name] = Property(section, key);
            if (key.IsRequired && (section.Name, key.Name) is not (("robot", "tyre") or ("wheel", "diameter") or ("wheel", "tyre")))
            {
                required.Add((JsonNode)key.Name);
            }
        }

        JsonObject table = new() { ["type"] = "object", ["additionalProperties"] = false, ["properties"] = properties };
        if (required.Count > 0 && section.Keys.FirstOrDefault(k => k.Name == "include" || (k.Name == "shelf" && section.Name == "tyre")) is KeyDefinition other)
        {
            // an included file, or the shelf of tyres, may hold what this one lacks
            JsonArray least = other.Name == "shelf" ? new JsonArray("name", "shelf") : new JsonArray("include");
            table["anyOf"] = new JsonArray(new JsonObject { ["required"] = required }, new JsonObject { ["required"] = least });
        }
        else if (required.Count > 0)
        {
            table["required"] = required;
        }

        return table;
    }

    private static JsonObject Property(KeySection section, KeyDefinition key)
    {
        JsonObject property = new() { ["description"] = Description(section, key) };
        Add(property, Value(section, key));
        return property;
    }

    private static string Description(KeySection section, KeyDefinition key)
    {
        var text = new StringBuilder(key.Meaning);
        text.Append(" Takes ").Append(KeyText.Takes(key)).Append('.');
        Append("Allowed", KeyText.Allowed(key));
        Append("Usual", KeyText.Usual(key));
        Append("Default", key.IsRequired || key.Default.Length == 0 ? "" : key.Default);
        Append("Example", key.Example.Length > 0 ? KeyText.Example(key, section) : "");
        return text.ToString();

        void Append(string word, string what)
        {
            if (what.Length > 0)
            {
                text.Append(' ').Append(word).Append(": ").Append(what).Append('.');
            }
        }
    }

    private static JsonObject Value(KeySection section, KeyDefinition key) => key.Kind switch
    {
        KeyKind.Quantity => Quantity(key.Dimension, key.Min, key.Max),
        KeyKind.Whole => Whole(key),
        KeyKind.Text => NonEmptyText(),
        KeyKind.Flag => new JsonObject { ["type"] = "boolean" },
        KeyKind.Choice => Words(key),
        KeyKind.Texts => Array(key.Choices.Count > 0 ? Words(key) : new JsonObject { ["type"] = "string" }),
        KeyKind.Quantities => Array(Quantity(key.Dimension, key.Min, key.Max)),
        KeyKind.Curve => Curve(key),
        KeyKind.Table => Table(section.Inner(key)),
        KeyKind.Tables => Array(Table(section.Inner(key))),
        KeyKind.Overrides => new JsonObject { ["type"] = "object" },
        _ => throw new ArgumentOutOfRangeException(nameof(key)),
    };

    private static JsonObject Words(KeyDefinition key) => new() { ["enum"] = new JsonArray([.. key.Choices.Select(c => (JsonNode)c)]) };

    private static JsonObject NonEmptyText() => new() { ["type"] = "string", ["pattern"] = "\\S", ["maxLength"] = LongestText };

    private static JsonObject Array(JsonObject items) => new() { ["type"] = "array", ["items"] = items };

    private static JsonObject Curve(KeyDefinition key)
    {
        const double None = double.PositiveInfinity;
        JsonObject pair = new()
        {
            ["type"] = "array",
            ["items"] = new JsonArray(Quantity(key.Dimension, -None, None), Quantity(key.SecondDimension, -None, None)),
            ["additionalItems"] = false,
            ["minItems"] = 2,
        };
        JsonObject curve = Array(pair);
        curve["minItems"] = 1;
        return curve;
    }

    private static JsonObject Whole(KeyDefinition key)
    {
        JsonObject bare = Bounded(new JsonObject { ["type"] = "integer" }, key.Min, key.Max);
        if (key.CountWords.Count == 0)
        {
            return bare;
        }

        string pattern = $@"^\s*[0-9]{{1,9}}\s*({string.Join('|', key.CountWords)})\s*$";
        return new JsonObject { ["anyOf"] = new JsonArray(bare, new JsonObject { ["type"] = "string", ["pattern"] = pattern }) };
    }

    private static JsonObject Quantity(Dimension dimension, double min, double max)
    {
        JsonObject text = new() { ["$ref"] = "#/definitions/" + DefinitionName(dimension) };
        return dimension == Dimension.Ratio
            ? new JsonObject { ["anyOf"] = new JsonArray(Bounded(new JsonObject { ["type"] = "number" }, min, max), text) }
            : new JsonObject { ["allOf"] = new JsonArray(text) };
    }

    private static JsonObject Bounded(JsonObject schema, double min, double max)
    {
        if (double.IsFinite(min))
        {
            schema["minimum"] = min;
        }

        if (double.IsFinite(max))
        {
            schema["maximum"] = max;
        }

        return schema;
    }

    private static JsonObject Definitions(IReadOnlyList<KeySection> sections)
    {
        KeyDefinition[] keys = [.. sections.SelectMany(s => s.Keys).Where(k => k.Kind is KeyKind.Quantity or KeyKind.Quantities or KeyKind.Curve)];
        IEnumerable<Dimension> used = keys.Select(k => k.Dimension).Concat(keys.Where(k => k.Kind == KeyKind.Curve).Select(k => k.SecondDimension)).Distinct().Order();
        JsonObject definitions = [];
        foreach (Dimension dimension in used)
        {
            definitions[DefinitionName(dimension)] = new JsonObject
            {
                ["type"] = "string",
                ["description"] = UnitTable.Words(dimension) + " as a text: " + string.Join(", ", UnitTable.Names(dimension)),
                ["maxLength"] = Units.Quantity.LongestText,
                ["pattern"] = UnitPattern.Of(dimension),
            };
        }

        return definitions;
    }

    private static string DefinitionName(Dimension dimension) => UnitTable.Words(dimension).Replace(' ', '_');
}
