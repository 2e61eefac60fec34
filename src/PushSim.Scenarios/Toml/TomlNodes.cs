namespace PushSim.Scenarios.Toml;

/// <summary>A value of a file with its place.</summary>
internal abstract class TomlNode(Place place)
{
    /// <summary>Where the value stands.</summary>
    public Place Place { get; } = place;

    /// <summary>What it is, in words with article.</summary>
    public abstract string Words { get; }
}

/// <summary>A text.</summary>
internal sealed class TomlText(Place place, string value) : TomlNode(place)
{
    public string Value { get; } = value;

    public override string Words => "a text";
}

/// <summary>A bare number.</summary>
internal sealed class TomlNumber(Place place, double value, bool isWhole) : TomlNode(place)
{
    public double Value { get; } = value;

    public bool IsWhole { get; } = isWhole;

    public override string Words => "a bare number";
}

/// <summary>true or false.</summary>
internal sealed class TomlFlag(Place place, bool value) : TomlNode(place)
{
    public bool Value { get; } = value;

    public override string Words => "true or false";
}

/// <summary>A date or time, of no use here.</summary>
internal sealed class TomlDate(Place place) : TomlNode(place)
{
    public override string Words => "a date or time";
}

/// <summary>A list. Tables under double brackets are a list of tables.</summary>
internal sealed class TomlArray(Place place, bool isOfHeaders) : TomlNode(place)
{
    public List<TomlNode> Items { get; } = [];

    /// <summary>True if built from [[headers]].</summary>
    public bool IsOfHeaders { get; } = isOfHeaders;

    public override string Words => "a list";
}

/// <summary>A table in the order of the file.</summary>
internal sealed class TomlTable(Place place, bool isExplicit) : TomlNode(place)
{
    private readonly Dictionary<string, TomlEntry> _byKey = new(StringComparer.Ordinal);

    public List<TomlEntry> Entries { get; } = [];

    /// <summary>True once a header or braces have defined it; false while only a longer header or a dotted key has named it.</summary>
    public bool IsExplicit { get; set; } = isExplicit;

    public override string Words => "a table";

    public TomlEntry? Find(string key) => _byKey.GetValueOrDefault(key);

    public void Add(TomlEntry entry)
    {
        _byKey.Add(entry.Key, entry);
        Entries.Add(entry);
    }

    /// <summary>Adds an entry, in place of one of the same key if there is one.</summary>
    public void Put(TomlEntry entry)
    {
        Entries.RemoveAll(e => e.Key == entry.Key);
        _byKey[entry.Key] = entry;
        Entries.Add(entry);
    }
}

/// <summary>A key with its place and value.</summary>
internal sealed record TomlEntry(string Key, Place KeyPlace, TomlNode Value);
