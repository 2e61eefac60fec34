namespace PushSim.Scenarios.Toml;

/// <summary>A value of a file with its place.</summary>
internal abstract class TomlNode(Place place)
{
    /// <summary>Where the value stands.</summary>
    public Place Place { get; } = place;

    /// <summary>What it is, in words with article.</summary>
    public abstract string Words { get; }

    /// <summary>Number of the drawn quantity that stands here; -1 for a fixed value. Set when draws are prepared, then only read.</summary>
    public int Slot { get; set; } = -1;

    /// <summary>The value in SI, kept once it was read, so that reading it again for a draw is quick; NaN before.</summary>
    public double Known { get; set; } = double.NaN;

    /// <summary>The same value with a drawn quantity of its own.</summary>
    public virtual TomlNode Copy() => this;
}

/// <summary>A text.</summary>
internal sealed class TomlText(Place place, string value) : TomlNode(place)
{
    public string Value { get; } = value;

    /// <summary>True if the value is the shelf's and only its place the file's.</summary>
    public bool IsOfShelf { get; init; }

    /// <summary>True if no file gives the value: it is the usual one of its kind, with the usual tolerance.</summary>
    public bool IsOfClass { get; init; }

    public override string Words => "a text";

    public override TomlNode Copy() => new TomlText(Place, Value) { IsOfShelf = IsOfShelf, IsOfClass = IsOfClass };
}

/// <summary>A bare number.</summary>
internal sealed class TomlNumber(Place place, double value, bool isWhole) : TomlNode(place)
{
    public double Value { get; } = value;

    public bool IsWhole { get; } = isWhole;

    public override string Words => "a bare number";

    public override TomlNode Copy() => new TomlNumber(Place, Value, IsWhole);
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

    public override TomlNode Copy()
    {
        var copy = new TomlArray(Place, IsOfHeaders);
        copy.Items.AddRange(Items.Select(i => i.Copy()));
        return copy;
    }
}

/// <summary>A table in the order of the file.</summary>
internal sealed class TomlTable(Place place, bool isExplicit) : TomlNode(place)
{
    /// <summary>Between a block's name and the part that it was copied for; an invisible character that no one types.</summary>
    public const char PartSeparator = '\u2063';

    private readonly Dictionary<string, TomlEntry> _byKey = new(StringComparer.Ordinal);

    public List<TomlEntry> Entries { get; } = [];

    /// <summary>True once a header or braces have defined it; false while only a longer header or a dotted key has named it.</summary>
    public bool IsExplicit { get; set; } = isExplicit;

    public override string Words => "a table";

    /// <summary>Whose part this is, where one block of a file stands for several parts with errors of their own; empty for one error of all.</summary>
    public string Part { get; init; } = "";

    /// <summary>Share of the variance that each of those parts has for itself [1].</summary>
    public double OwnShare { get; init; }

    /// <summary>True for a block whose parts stand beside it; nothing of it is drawn.</summary>
    public bool IsReplaced { get; set; }

    /// <summary>Keys that are missing because of another mistake: a misspelled key, a part that is not on the shelf. That one is complained about.</summary>
    public HashSet<string> Meant { get; init; } = [];

    /// <summary>A copy as one part of the block, under a name of its own.</summary>
    public TomlTable AsPart(string part, double ownShare)
    {
        var copy = new TomlTable(Place, IsExplicit) { Part = part, OwnShare = ownShare, Meant = Meant };
        foreach (TomlEntry e in Entries)
        {
            TomlNode value = e is { Key: "name", Value: TomlText t } ? new TomlText(t.Place, t.Value + PartSeparator + part) : e.Value.Copy();
            copy.Add(e with { Value = value });
        }

        return copy;
    }

    /// <summary>Takes a key out, if it is there.</summary>
    public void Remove(string key)
    {
        _byKey.Remove(key);
        Entries.RemoveAll(e => e.Key == key);
    }

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
