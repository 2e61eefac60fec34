using PushSim.Scenarios.Shelf;
using Spectre.Console;

namespace PushSim.Cli.Shelf;

/// <summary>`pushsim shelf [NAME]`: the generic parts that robot files can refer to, with the source of each number.</summary>
internal static class ShelfCommand
{
    // Lines of names of each kind, where all kinds are listed, and of a kind alone [1].
    private const int MostOfEach = 3;
    private const int MostOfOne = 20;

    public static Command Create(TextWriter output, TextWriter error)
    {
        var name = new Argument<string?>("NAME") { Description = "A part, an alias, words of either, or a kind; none lists all.", Arity = ArgumentArity.ZeroOrOne };
        var json = new Option<bool>("--json") { Description = "Print one JSON document." };
        var quiet = new Option<bool>("--quiet") { Description = "Print the names only." };
        var details = new Option<bool>("--details") { Description = "Print all parts with their numbers, not the names alone." };
        var command = new Command(
            "shelf",
            "Lists generic parts with the source of each number.\n\n"
            + "A [[tyre]], [[motor]], [[controller]], [battery] or [floor] takes one over\nby shelf = \"NAME\", or one of its aliases; own values stand.\n\n"
            + "Kinds: " + string.Join(", ", PartShelf.All.Select(s => s.File)) + "\n\n"
            + "Examples:\n  pushsim shelf\n  pushsim shelf motors\n  pushsim shelf \"TPU 95A\"\n  pushsim shelf cast --json")
        {
            name, json, quiet, details,
        };
        command.SetAction(parsed => List(parsed.GetValue(name), parsed.GetValue(json), parsed.GetValue(quiet), parsed.GetValue(details), output, error));
        return command;
    }

    private static int List(string? name, bool json, bool quiet, bool isDetailed, TextWriter output, TextWriter error)
    {
        List<(PartShelf Shelf, IReadOnlyList<ShelfPart> Parts)> found = [.. PartShelf.All.Select(s => (s, Find(s, name))).Where(f => f.Item2.Count > 0)];
        if (found.Count == 0)
        {
            error.WriteLine($"pushsim: error: there is no \"{PlainText.Of(name!)}\" on the shelf");
            string? near = NearestWord.Find(name!, PartShelf.All.SelectMany(s => s.Parts.SelectMany(p => p.Names)).Concat(PartShelf.All.Select(s => s.File)));
            error.WriteLine(near is null ? "advice: pushsim shelf lists all names" : $"advice: did you mean \"{near}\"? pushsim shelf lists all names");
            return ExitCode.WrongCommandLine;
        }

        bool isKind = name is null || PartShelf.All.Any(s => IsKind(s, name));
        string verdict = string.Join(", ", found.Select(f => $"{f.Parts.Count} {(f.Parts.Count == 1 ? f.Shelf.One : f.Shelf.Many)}")) + (isKind ? " on the shelf." : " of that name.");
        if (json)
        {
            output.WriteLine(CommandJson.Write(writer => ShelfJson.Write(writer, verdict, found)));
        }
        else if (quiet)
        {
            foreach (ShelfPart part in found.SelectMany(f => f.Parts))
            {
                output.WriteLine(part.Name);
            }
        }
        else
        {
            IAnsiConsole console = CommandText.Console(output);
            CommandText.Wrapped(console, verdict, Decoration.Bold);
            foreach ((PartShelf shelf, IReadOnlyList<ShelfPart> parts) in found)
            {
                if (!isDetailed && (isKind || parts.Count + found.Count > 2))
                {
                    ShelfText.WriteNames(output, shelf, parts, name is null || found.Count > 1 ? MostOfEach : MostOfOne);
                }
                else if (isKind)
                {
                    ShelfText.WriteList(console, shelf, parts);
                }
                else
                {
                    ShelfText.WriteParts(console, shelf, parts, isDetailed);
                }
            }

            if (!isDetailed)
            {
                CommandText.Line(console, "Numbers: pushsim shelf NAME; sources: --details. In a file: shelf = \"NAME\".", Decoration.Dim);
            }
        }

        return ExitCode.Done;
    }

    private static bool IsKind(PartShelf shelf, string name) =>
        new[] { shelf.File, shelf.File.TrimEnd('s'), shelf.Section }.Contains(name, StringComparer.OrdinalIgnoreCase);

    // All of a kind, the part of that very name or alias, else all of which one has its words in a row, else all with every word of it.
    private static IReadOnlyList<ShelfPart> Find(PartShelf shelf, string? name)
    {
        if (name is null || IsKind(shelf, name))
        {
            return shelf.Parts;
        }

        if (PartShelf.All.Any(s => IsKind(s, name) || s.Find(name) is not null))
        {
            return shelf.Find(name) is ShelfPart part ? [part] : [];
        }

        string[] words = name.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0)
        {
            return [];
        }

        // "25 mm" means these words in a row where a name has them so
        ShelfPart[] inARow = [.. shelf.Parts.Where(p => p.Names.Any(n => n.Contains(name.Trim(), StringComparison.OrdinalIgnoreCase)))];
        return inARow.Length > 0 ? inARow : [.. shelf.Parts.Where(p => p.Names.Any(n => words.All(w => n.Contains(w, StringComparison.OrdinalIgnoreCase))))];
    }
}
