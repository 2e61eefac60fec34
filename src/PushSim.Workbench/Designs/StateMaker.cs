using PushSim.Scenarios.Editing;
using PushSim.Scenarios.Keys;

namespace PushSim.Workbench.Designs;

/// <summary>Puts the values of the open files into parts and rows. Words, ranges and units are those of the key table, so that a new key is shown without a line here.</summary>
internal static class StateMaker
{
    // Tables of the key table and the part of the drawing that they belong to; any other is a part of its own.
    private static readonly Dictionary<string, string> s_part = new(StringComparer.Ordinal)
    {
        ["chassis"] = "body", ["outline"] = "nose", ["tyre"] = "tyres", ["wheel"] = "tyres", ["motor"] = "motors", ["drive"] = "motors", ["controller"] = "controllers", ["battery"] = "battery",
    };

    private static readonly Dictionary<string, string> s_words = new(StringComparer.Ordinal)
    {
        ["body"] = "Body", ["nose"] = "Nose", ["tyres"] = "Tyres", ["motors"] = "Motors", ["controllers"] = "Controllers", ["battery"] = "Battery",
        ["scenario"] = "Match", ["opponent"] = "The other's driving", ["tyre_life"] = "Tyre life", ["manoeuvre"] = "Driving", ["shove"] = "Start and lines", ["numerics"] = "How it is computed",
    };

    // A bare number of a part's button says nothing without these words.
    private static readonly Dictionary<string, string> s_told = new(StringComparer.Ordinal) { ["static_friction"] = "grip {0}", ["gear_ratio"] = "{0} : 1", ["cells"] = "{0} cells" };

    // The value that stands for a part, the first that is there.
    private static readonly Dictionary<string, string[]> s_head = new(StringComparer.Ordinal)
    {
        ["body"] = ["mass"], ["tyres"] = ["static_friction"], ["motors"] = ["gear_ratio", "resistance"], ["controllers"] = ["current_limit"], ["battery"] = ["cells", "capacity"],
    };

    /// <summary>The key of a row on the page.</summary>
    public static string KeyOf(EditRow row) => (row.Owner == "robot" ? "a." : row.Owner == "opponent" ? "b." : "scene.") + row.Path;

    /// <summary>The parts of an owner.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="owner">Whose.</param>
    /// <param name="saved">The same rows as the files have them, by key.</param>
    /// <param name="before">The same rows of the pinned design; null: none is pinned.</param>
    /// <param name="faults">What was refused, by key.</param>
    /// <param name="names">Names of the two robots.</param>
    public static IReadOnlyList<PartMessage> Parts(
        IReadOnlyList<EditRow> rows, string owner, IReadOnlyDictionary<string, EditRow> saved, IReadOnlyDictionary<string, EditRow>? before, IReadOnlyDictionary<string, RowErrorMessage> faults, (string Own, string? Other) names) =>
        [.. rows.Where(r => r.Owner == owner).GroupBy(PartOf).Select(g => Part(g.Key, [.. g], saved, before, faults, names))];

    /// <summary>The words of a row: "mass", "grip before it slides: soft".</summary>
    public static string Words(EditRow row) => row.Members.Count > 0 ? $"{row.Definition.Label} of {(row.Members.Count == 2 ? "both" : string.Create(CultureInfo.InvariantCulture, $"all {row.Members.Count}"))} {row.Definition.Section}s" : NameOf(row) is { Length: > 0 } name ? $"{row.Definition.Label}: {name}" : row.Definition.Label;

    /// <summary>A row.</summary>
    public static RowMessage Row(EditRow row, IReadOnlyDictionary<string, EditRow> saved, IReadOnlyDictionary<string, EditRow>? before, IReadOnlyDictionary<string, RowErrorMessage> faults)
    {
        string key = KeyOf(row);
        bool wasThere = saved.TryGetValue(key, out EditRow? old);
        bool isChanged = !wasThere || old!.Text != row.Text;
        (string value, string mark, string tolerance) = row.Parts;
        EditRow? held = before?.GetValueOrDefault(key) ?? (isChanged ? old : null);
        return new RowMessage
        {
            Key = key,
            Words = Words(row),
            Text = value,
            Unit = row.Unit,
            Value = row.Value,
            Low = row.Low,
            High = row.High,
            Track = [.. row.Track.Select(p => new TrackMessage(p.From, p.To, p.Low, p.High, p.IsLogarithmic))],
            Whole = row.Definition.Kind == KeyKind.Whole,
            Tolerance = tolerance.Length > 0 ? new ToleranceMessage(tolerance, row.Tolerance, mark) : null,
            Choices = row.Choices.Count > 0 ? row.Choices : null,
            Source = Source(row, isChanged, old),
            Explain = row.Definition.Meaning,
            Changed = isChanged,
            OldValue = held?.Value is double v && held.Unit == row.Unit && v != row.Value ? v : null,
            Error = faults.GetValueOrDefault(key),
        };
    }

    private static PartMessage Part(string id, EditRow[] rows, IReadOnlyDictionary<string, EditRow> saved, IReadOnlyDictionary<string, EditRow>? before, IReadOnlyDictionary<string, RowErrorMessage> faults, (string Own, string? Other) names)
    {
        RowMessage[] messages = [.. rows.Select(r => Row(r, saved, before, faults))];
        string value = "";
        foreach (string name in s_head.GetValueOrDefault(id, []))
        {
            string found = value.Length > 0 ? "" : messages.FirstOrDefault(m => m.Key.EndsWith("." + name, StringComparison.Ordinal))?.Text ?? "";
            bool isBare = found.Length > 0 && char.IsAsciiDigit(found[^1]);
            value = found.Length == 0 ? value : isBare && s_told.TryGetValue(name, out string? told) ? told.Replace("{0}", found, StringComparison.Ordinal) : found;
        }

        string words = s_words.GetValueOrDefault(id) ?? char.ToUpperInvariant(id[0]) + id[1..].Replace('_', ' ');
        return new PartMessage(id, id == "opponent" && names.Other is string other ? $"{other}'s driving" : words, value, messages.Any(m => m.Changed), messages);
    }

    private static string PartOf(EditRow row) => row.Owner.Length > 0 ? s_part.GetValueOrDefault(row.Section, row.Section) : row.Section;

    private static string NameOf(EditRow row)
    {
        int last = row.Path.LastIndexOf('.');
        string table = last < 0 ? "" : row.Path[..last];
        return table.Length > row.Definition.Section.Length && table.StartsWith(row.Definition.Section + ".", StringComparison.Ordinal) ? table[(row.Definition.Section.Length + 1)..] : "";
    }

    private static SourceMessage Source(EditRow row, bool isChanged, EditRow? old)
    {
        if (isChanged)
        {
            string was = old is null || old.Line == 0 ? "not in a file before" : string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(old.File)}, line {old.Line}: {old.Text}");
            return new SourceMessage("changed", $"changed here; {was}", row.File, row.Line);
        }

        return row.Source switch
        {
            EditSource.Default => new SourceMessage("default", "the usual value", "", 0),
            EditSource.Estimate => new SourceMessage("estimate", "an estimate from other values", "", 0),
            EditSource.Shelf => new SourceMessage("shelf", "of the parts shelf", row.File, row.Line),
            _ => new SourceMessage("file", "", row.File, row.Line),
        };
    }
}
