namespace PushSim.Scenarios.Keys;

/// <summary>One table of a kind of file, and how its header is written.</summary>
/// <param name="File">The kind of file.</param>
/// <param name="Name">Name in the table of keys, for example "tyre"; "robot" or "scenario" at the top level.</param>
/// <param name="Header">How a file writes it, for example "[[tyre]]"; empty at the top level.</param>
/// <param name="Key">The key that holds it; null at the top level.</param>
public sealed record KeySection(FileKind File, string Name, string Header, KeyDefinition? Key)
{
    /// <summary>Its keys in the order of the table.</summary>
    public IReadOnlyList<KeyDefinition> Keys => KeyTable.In(Name);

    /// <summary>Full name of one of its keys, for example "robot.tyre.body_stiffness".</summary>
    public string PathOf(KeyDefinition key) => Key is null ? $"{Name}.{key.Name}" : $"{FileWord}.{Name}.{key.Name}";

    /// <summary>The kind of file in a word: "robot", "scenario" or "garage".</summary>
    public string FileWord => WordOf(File);

    /// <summary>The tables of a kind of file, the top level first, each before the tables inside it.</summary>
    public static IReadOnlyList<KeySection> Of(FileKind file)
    {
        List<KeySection> sections = [];
        Add(sections, new KeySection(file, WordOf(file), "", null));
        return sections;
    }

    /// <summary>The table that a key of this one holds. Throws <see cref="KeyNotFoundException"/> if the key holds none.</summary>
    public KeySection Inner(KeyDefinition key)
    {
        string name = Key is null ? key.Name : $"{Name}.{key.Name}";
        _ = KeyTable.In(name);
        return new KeySection(File, name, key.Kind == KeyKind.Tables ? $"[[{name}]]" : $"[{name}]", key);
    }

    private static string WordOf(FileKind file) => file switch { FileKind.Robot => "robot", FileKind.Scenario => "scenario", _ => "garage" };

    private static void Add(List<KeySection> sections, KeySection section)
    {
        sections.Add(section);
        foreach (KeyDefinition key in section.Keys.Where(k => k.Kind is KeyKind.Table or KeyKind.Tables))
        {
            Add(sections, section.Inner(key));
        }
    }
}
