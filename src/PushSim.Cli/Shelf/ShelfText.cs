using PushSim.Scenarios.Shelf;
using Spectre.Console;

namespace PushSim.Cli.Shelf;

/// <summary>Parts of the shelf as tables for a person.</summary>
internal static class ShelfText
{
    public static void WriteList(IAnsiConsole console, PartShelf shelf, IReadOnlyList<ShelfPart> parts)
    {
        (string Title, string Key)[] shown = Columns(shelf);

        // the name of a part that has aliases says what it is
        bool isAliased = parts.Any(p => p.Aliases.Count > 0);
        string one = char.ToUpperInvariant(shelf.One[0]) + shelf.One[1..];
        AnswerTable list = new AnswerTable($"{one} {shelf.Header}").AddColumn("Name").AddColumn(isAliased ? "Also called" : "What it is");
        foreach ((string title, string _) in shown)
        {
            list.AddNumberColumn(title);
        }

        foreach (ShelfPart p in parts)
        {
            list.AddRow([p.Name, isAliased ? string.Join(", ", p.Aliases) : p.About, .. shown.Select(c => string.Join(", ", c.Key.Split(' ').Select(k => Middle(p, k)).Where(t => t.Length > 0)))]);
        }

        ScreenTable.Write(console, list);
    }

    /// <summary>The names of a kind in a few lines, the last of which tells how many more there are.</summary>
    public static void WriteNames(TextWriter output, PartShelf shelf, IReadOnlyList<ShelfPart> parts, int most)
    {
        string head = $"{shelf.File} ({shelf.Header}): ";
        for (int shown = parts.Count; shown > 0; shown--)
        {
            string[] names = [.. parts.Take(shown).Select(p => p.Name.Contains(',', StringComparison.Ordinal) ? $"\"{p.Name}\"" : p.Name)];
            string more = shown < parts.Count ? $"; {parts.Count - shown} more: pushsim shelf {shelf.File}" : "";
            string[] lines = [.. WrappedText.Lines(head, "  ", string.Join(", ", names) + more)];
            if (lines.Length <= most || shown == 1)
            {
                Array.ForEach(lines, output.WriteLine);
                return;
            }
        }
    }

    // Title and the keys whose values stand in the column.
    private static (string Title, string Key)[] Columns(PartShelf shelf) => shelf.Section switch
    {
        "tyre" => [("Friction", "static_friction kinetic_friction"), ("Wear", "wear")],
        "motor" => [("Resistance", "resistance"), ("Constant", "speed_constant torque_constant")],
        "controller" => [("Limit", "current_limit"), ("On-resistance", "on_resistance")],
        "battery" => [("Resistance at 1 A h", "resistance")],
        _ => [("Friction", "friction"), ("Dust", "dust")],
    };

    public static void WriteParts(IAnsiConsole console, PartShelf shelf, IReadOnlyList<ShelfPart> parts, bool isDetailed)
    {
        foreach (ShelfPart p in parts)
        {
            console.WriteLine();
            string also = p.Aliases.Count > 0 ? $" Also: {string.Join(", ", p.Aliases)}." : "";
            string[] lines = [.. WrappedText.Lines("", "  ", $"{p.Name} ({shelf.Header}): {p.About}{also}")];
            int bold = Math.Min(p.Name.Length, lines[0].Length);
            console.Write(new Paragraph(lines[0][..bold], new Style(decoration: Decoration.Bold)).Append(lines[0][bold..] + Environment.NewLine));
            foreach (string line in lines.Skip(1))
            {
                CommandText.Line(console, line);
            }

            AnswerTable table = new AnswerTable("Key").AddColumn("Key").AddColumn("Value");
            _ = isDetailed ? table.AddColumn("Source") : table;
            foreach (ShelfNumber n in p.Numbers)
            {
                table.AddRow([n.Key, n.Text, .. isDetailed ? [n.Source] : Array.Empty<string>()]);
            }

            ScreenTable.Write(console, table);
        }
    }

    private static string Middle(ShelfPart part, string key) => part.Find(key)?.Text.Split('±')[0].Trim() ?? "";
}
