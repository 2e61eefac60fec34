using System.Text;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Keys;

/// <summary>The key reference, scenarios/KEYS.md, made from the table of keys.</summary>
public static class KeyReference
{
    private const string Head = """
        # Keys of robot and scenario files

        Made from the table of keys in src/PushSim.Scenarios/Keys: edit there, not here.

        Files are TOML. A quantity is a text with its unit, such as `"48 mm"` or `"1.2 kgf·cm"`; a pure number may also be bare, such as `0.85`, or a
        percentage, such as `"85 %"`. Any quantity may carry a tolerance: `"0.85 ± 0.05"`, `"350 g ± 2 %"` (or `+/-`). Where a value has none, drawn matches
        take the usual one of its kind, if there is one, and list it; `"0.15 s exact"` has none. A value outside the allowed range is an error; one outside
        the usual range (robots of a few hundred grams to a few kilograms) draws a warning. Lengths in a robot file are in plan: x forward, y left.

        The same rows on the screen: `pushsim explain KEY`, for example `pushsim explain tyre.body_stiffness`.

        """;

    /// <summary>The whole document.</summary>
    public static string Make()
    {
        var text = new StringBuilder(Head.ReplaceLineEndings("\n"));
        foreach (FileKind file in Enum.GetValues<FileKind>())
        {
            foreach (KeySection section in KeySection.Of(file))
            {
                Append(text, section);
            }
        }

        AppendUnits(text);
        return text.ToString();
    }

    private static void Append(StringBuilder text, KeySection section)
    {
        string title = section.Key is null ? $"## {char.ToUpperInvariant(section.FileWord[0])}{section.FileWord[1..]} file" : $"### {section.FileWord}: `{section.Header}`";
        text.Append('\n').Append(title).Append("\n\n");
        if (section.Key is not null)
        {
            text.Append(section.Key.Meaning).Append(section.Key.IsRequired ? " Required." : "").Append("\n\n");
        }

        text.Append("| Key | Takes | Allowed | Usual | Default | Meaning | Example |\n|---|---|---|---|---|---|---|\n");
        foreach (KeyDefinition key in section.Keys)
        {
            string[] cells =
            [
                $"`{key.Name}`", Takes(key), KeyText.Allowed(key), KeyText.Usual(key), KeyText.Default(key) == "none" ? "" : KeyText.Default(key), key.Meaning,
                $"`{KeyText.Example(key, section)}`",
            ];
            text.Append("| ").AppendJoin(" | ", cells.Select(c => c.Replace("|", "\\|", StringComparison.Ordinal))).Append(" |\n");
        }
    }

    // The units stand once, at the end.
    private static string Takes(KeyDefinition key)
    {
        string takes = KeyText.Takes(key);
        int colon = key.Kind is KeyKind.Quantity or KeyKind.Quantities ? takes.IndexOf(':') : -1;
        return colon < 0 ? takes : takes[..colon];
    }

    private static void AppendUnits(StringBuilder text)
    {
        text.Append("\n## Units\n\nThe product of two units may be written with a blank, a dot, a full stop, a hyphen or nothing: `kgf cm`, `kgf·cm`, `kgf.cm`, `kgf-cm`. Letter case counts.\n\n");
        text.Append("| Family | Units | Also read |\n|---|---|---|\n");
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            IReadOnlyList<string> names = UnitTable.Names(dimension);
            IEnumerable<string> others = UnitTable.Spellings(dimension).Except(names);
            text.Append("| ").Append(UnitTable.Words(dimension)).Append(" | ").AppendJoin(", ", names.Select(Code)).Append(" | ").AppendJoin(", ", others.Select(Code)).Append(" |\n");
        }
    }

    private static string Code(string unit) => $"`{unit}`";
}
