using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Keys;

/// <summary>Every key of robot and scenario files. Reading, complaints and explanations all come from here.</summary>
public static class KeyTable
{
    /// <summary>One revolution per minute in rad/s, for bounds that builders think of in rpm.</summary>
    internal const double Rpm = Math.PI / 30.0;

    /// <summary>One degree in rad.</summary>
    internal const double Degree = Math.PI / 180.0;

    /// <summary>In the words of a default, what stands for the default of the key's record.</summary>
    internal const string Own = "{own}";

    /// <summary>The key by which a table names a part of the shelf.</summary>
    internal const string Shelf = "shelf";

    private static readonly Dictionary<string, KeyDefinition[]> Sections =
        RobotKeys.All.Concat(BuilderKeys.All).Concat(ScenarioKeys.All).Concat(GarageKeys.All)
        .GroupBy(k => k.Section)
        .ToDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);

    /// <summary>All keys, in the order of the files.</summary>
    public static IReadOnlyList<KeyDefinition> All { get; } = [.. Sections.Values.SelectMany(k => k)];

    /// <summary>The keys of one table of a file. Throws <see cref="KeyNotFoundException"/> for an unknown table.</summary>
    public static IReadOnlyList<KeyDefinition> In(string section) => Sections[section];

    /// <summary>The key of that name in that table; null if it has none.</summary>
    public static KeyDefinition? Find(string section, string name) =>
        Array.Find(Sections[section], k => k.Name == name);

    /// <summary>The keys of one table of a file, in its order, each with its row if it is one value of that record.</summary>
    internal static (KeyDefinition Key, KeyRow<T>? Row)[] Rows<T>(string section) => RowsOf<T>.Sections[section];

    internal static KeyDefinition Quantity(string section, string name, Dimension dimension, double min, double max, string meaning, string example, string byDefault = "", bool required = false) =>
        new(section, name, KeyKind.Quantity, meaning) { Dimension = dimension, Min = min, Max = max, Example = $"\"{example}\"", Default = byDefault, IsRequired = required };

    internal static KeyDefinition Number(string section, string name, double min, double max, string meaning, string example, string byDefault = "", bool required = false) =>
        new(section, name, KeyKind.Quantity, meaning) { Dimension = Dimension.Ratio, Min = min, Max = max, Example = example, Default = byDefault, IsRequired = required };

    internal static KeyDefinition Whole(string section, string name, double min, double max, string meaning, string example, string byDefault = "", bool required = false) =>
        new(section, name, KeyKind.Whole, meaning) { Min = min, Max = max, Example = example, Default = byDefault, IsRequired = required };

    internal static KeyDefinition Text(string section, string name, string meaning, string example, string byDefault = "", bool required = false) =>
        new(section, name, KeyKind.Text, meaning) { Example = $"\"{example}\"", Default = byDefault, IsRequired = required };

    internal static KeyDefinition Flag(string section, string name, string meaning, string byDefault) =>
        new(section, name, KeyKind.Flag, meaning) { Example = "true", Default = byDefault };

    internal static KeyDefinition Choice(string section, string name, string[] choices, string meaning, string byDefault = "", bool required = false) =>
        new(section, name, KeyKind.Choice, meaning) { Choices = choices, Example = $"\"{choices[0]}\"", Default = byDefault, IsRequired = required };

    internal static KeyDefinition Texts(string section, string name, string meaning, string example, string byDefault = "", bool required = false) =>
        new(section, name, KeyKind.Texts, meaning) { Example = example, Default = byDefault, IsRequired = required };

    internal static KeyDefinition Curve(string section, string name, Dimension first, Dimension second, string meaning, string example, string byDefault) =>
        new(section, name, KeyKind.Curve, meaning) { Dimension = first, SecondDimension = second, Example = example, Default = byDefault };

    internal static KeyDefinition Table(string section, string name, string meaning, bool required = false) =>
        new(section, name, KeyKind.Table, meaning) { IsRequired = required };

    internal static KeyDefinition Tables(string section, string name, string meaning, bool required = false) =>
        new(section, name, KeyKind.Tables, meaning) { IsRequired = required };

    // Kept, since draws walk them many times a millisecond.
    private static class RowsOf<T>
    {
        public static readonly Dictionary<string, (KeyDefinition, KeyRow<T>?)[]> Sections =
            KeyTable.Sections.ToDictionary(s => s.Key, s => s.Value.Select(k => (k, k.Row<T>())).ToArray(), StringComparer.Ordinal);
    }
}
