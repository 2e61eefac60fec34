using System.CommandLine;
using System.Text.Json;
using PushSim.Scenarios.Shelf;
using Spectre.Console;

namespace PushSim.Cli;

/// <summary>`pushsim shelf [NAME]`: the generic parts that robot files can refer to, with the source of each number.</summary>
internal static class ShelfCommand
{
    public static Command Create(TextWriter output, TextWriter error)
    {
        var name = new Argument<string?>("NAME") { Description = "A part, or words of its name; none lists them all.", Arity = ArgumentArity.ZeroOrOne };
        var json = new Option<bool>("--json") { Description = "Print one JSON document." };
        var quiet = new Option<bool>("--quiet") { Description = "Print the names only." };
        var command = new Command(
            "shelf",
            "Lists generic parts with the source of each number.\n\n"
            + "A tyre of a robot file takes one over by shelf = \"NAME\"; own values stand.\n\n"
            + "Examples:\n  pushsim shelf\n  pushsim shelf \"foamed elastomer, soft\"\n  pushsim shelf urethane --json")
        {
            name, json, quiet,
        };
        command.SetAction(parsed => List(parsed.GetValue(name), parsed.GetValue(json), parsed.GetValue(quiet), output, error));
        return command;
    }

    private static int List(string? name, bool json, bool quiet, TextWriter output, TextWriter error)
    {
        IReadOnlyList<ShelfPart> parts = Find(name);
        if (parts.Count == 0)
        {
            error.WriteLine($"pushsim: error: there is no \"{PlainText.Of(name!)}\" on the shelf");
            error.WriteLine("help: pushsim shelf lists all names");
            return ExitCode.WrongCommandLine;
        }

        string verdict = $"{parts.Count} tyre {(parts.Count == 1 ? "material" : "materials")}{(name is null ? " on the shelf" : " of that name")}.";
        if (json)
        {
            output.WriteLine(JsonReport.Write(writer => WriteJson(writer, verdict, parts)));
        }
        else if (quiet)
        {
            foreach (ShelfPart part in parts)
            {
                output.WriteLine(part.Name);
            }
        }
        else
        {
            WriteText(output, verdict, parts, isShort: name is null);
        }

        return ExitCode.Done;
    }

    // The part of that very name, else all whose name has every word of it.
    private static IReadOnlyList<ShelfPart> Find(string? name)
    {
        if (name is null)
        {
            return TyreShelf.All;
        }

        string[] words = name.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        return TyreShelf.Find(name) is ShelfPart part ? [part]
            : words.Length == 0 ? []
            : [.. TyreShelf.All.Where(p => words.All(w => p.Name.Contains(w, StringComparison.OrdinalIgnoreCase)))];
    }

    private static void WriteText(TextWriter output, string verdict, IReadOnlyList<ShelfPart> parts, bool isShort)
    {
        IAnsiConsole console = TextReport.Console(output);
        console.MarkupLine("[bold]" + Markup.Escape(verdict) + "[/]");
        if (isShort)
        {
            Table list = new Table().Border(TableBorder.Minimal).AddColumn("Tyre material").AddColumn("What it is").AddColumn(new TableColumn("Friction\nfrom, to").RightAligned()).AddColumn(new TableColumn("Wear\n(ISO 4649)").RightAligned());
            foreach (ShelfPart p in parts)
            {
                list.AddRow(Markup.Escape(p.Name), Markup.Escape(p.About), Markup.Escape($"{Middle(p, "static_friction")}, {Middle(p, "kinetic_friction")}"), Markup.Escape(Middle(p, "wear")));
            }

            console.Write(list);
            console.MarkupLine("[dim]Most numbers are estimates. With sources: pushsim shelf NAME. In a robot file: shelf = \"NAME\" in a [[[[tyre]]]].[/]");
            return;
        }

        foreach (ShelfPart p in parts)
        {
            console.WriteLine();
            console.MarkupLine("[bold]" + Markup.Escape(p.Name) + "[/]: " + Markup.Escape(p.About));
            Table table = new Table().Border(TableBorder.Minimal).AddColumn("Key").AddColumn("Value").AddColumn("Source");
            foreach (ShelfNumber n in p.Numbers)
            {
                table.AddRow(Markup.Escape(n.Key), Markup.Escape(n.Text), Markup.Escape(n.Source));
            }

            console.Write(table);
        }
    }

    private static string Middle(ShelfPart part, string key) => part.Find(key)?.Text.Split('±')[0].Trim() ?? "";

    private static void WriteJson(Utf8JsonWriter writer, string verdict, IReadOnlyList<ShelfPart> parts)
    {
        JsonReport.WriteHead(writer, "shelf", verdict, []);
        writer.WriteStartArray("tyres");
        foreach (ShelfPart part in parts)
        {
            writer.WriteStartObject();
            writer.WriteString("name", part.Name);
            writer.WriteString("about", part.About);
            writer.WriteStartArray("values");
            foreach (ShelfNumber n in part.Numbers)
            {
                writer.WriteStartObject();
                writer.WriteString("key", n.Key);
                writer.WriteString("text", n.Text);
                writer.WriteString("unit", n.Unit);
                if (n.Value is double value)
                {
                    writer.WriteNumber("value", value);
                    writer.WriteNumber("tolerance", n.Tolerance);
                }
                else
                {
                    writer.WriteNull("value");
                    writer.WriteNull("tolerance");
                }

                writer.WriteString("origin", n.Origin switch { ShelfOrigin.Source => "source", ShelfOrigin.CommonPractice => "common practice, no source", _ => "estimate" });
                writer.WriteString("source", n.Source);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
