using System.CommandLine;
using System.Text.Json;
using PushSim.Cli.Run;
using PushSim.Cli.Shared;
using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Explain;

/// <summary>`pushsim explain KEY`: a row of the table of keys, to read.</summary>
internal static class ExplainCommand
{
    private const int Width = 79;
    private const int LabelWidth = 11;

    public static Command Create(TextWriter output, TextWriter error)
    {
        var key = new Argument<string?>("KEY") { Description = "Name of a key or table; none lists them all.", Arity = ArgumentArity.ZeroOrOne };
        var json = new Option<bool>("--json") { Description = "Print one JSON document." };
        var quiet = new Option<bool>("--quiet") { Description = "Print one line for each key." };
        var command = new Command(
            "explain",
            "Says what a key of a robot or scenario file means.\n\n"
            + "Prints what it takes, its allowed and usual range, its default and an example.\n\n"
            + "Examples:\n  pushsim explain body_stiffness\n  pushsim explain tyre.body_stiffness\n  pushsim explain robot.motor.gear_ratio --json\n  pushsim explain tyre\n  pushsim explain")
        {
            key, json, quiet,
        };
        command.SetAction(parsed => Explain(parsed.GetValue(key), parsed.GetValue(json), parsed.GetValue(quiet), output, error));
        return command;
    }

    private static int Explain(string? words, bool json, bool quiet, TextWriter output, TextWriter error)
    {
        IReadOnlyList<KeyMatch> matches = words is null ? KeySearch.All : KeySearch.Find(words);
        IReadOnlyList<(string Section, string Advice)> others = words is null ? [] : OtherNames.Find(words);
        if (matches.Count == 0)
        {
            IReadOnlyList<string> near = KeySearch.Nearest(words!);
            error.WriteLine($"pushsim: error: there is no key \"{PlainText.Of(words!)}\"");
            if (others.Count > 0)
            {
                error.WriteLine("advice: " + string.Join("; ", others.Select(o => $"in [{o.Section}]: {o.Advice}")));
                return ExitCode.WrongCommandLine;
            }

            error.WriteLine(near.Count > 0 ? $"advice: did you mean {string.Join(" or ", near)}?" : "advice: pushsim explain lists all keys");
            return ExitCode.WrongCommandLine;
        }

        string verdict = words is null ? $"{matches.Count} keys." : $"{matches.Count} {(matches.Count == 1 ? "key" : "keys")} of that name.";
        if (json)
        {
            output.WriteLine(JsonReport.Write(writer => WriteJson(writer, verdict, matches, others)));
        }
        else if (quiet)
        {
            foreach (KeyMatch match in matches)
            {
                output.WriteLine($"{match.Path}: {match.Key.Meaning}");
            }

            foreach ((string section, string advice) in others)
            {
                output.WriteLine($"not in [{section}]: {advice}");
            }
        }
        else if (words is null)
        {
            WriteList(output);
        }
        else
        {
            WriteBlocks(output, matches);
            foreach ((string section, string advice) in others)
            {
                output.WriteLine();
                WriteWrapped(output, "", "  ", $"not in [{section}]: {advice}");
            }
        }

        return ExitCode.Done;
    }

    private static void WriteList(TextWriter output)
    {
        foreach (FileKind file in Enum.GetValues<FileKind>())
        {
            foreach (KeySection section in KeySection.Of(file))
            {
                output.WriteLine(section.Key is null ? $"{section.FileWord} file" : $"{section.FileWord} file, {section.Header}");
                WriteWrapped(output, "  ", "  ", string.Join(", ", section.Keys.Select(k => k.Name)));
                output.WriteLine();
            }
        }

        output.WriteLine("more: pushsim explain KEY");
    }

    private static void WriteBlocks(TextWriter output, IReadOnlyList<KeyMatch> matches)
    {
        for (int i = 0; i < matches.Count; i++)
        {
            if (i > 0)
            {
                output.WriteLine();
            }

            WriteBlock(output, matches[i]);
        }
    }

    private static void WriteBlock(TextWriter output, KeyMatch match)
    {
        KeyDefinition key = match.Key;
        output.WriteLine(match.Path);
        WriteWrapped(output, "  ", "  ", key.Meaning);
        Row("takes", KeyText.Takes(key));
        Row("allowed", KeyText.Allowed(key));
        Row("usual", KeyText.Usual(key));
        Row("default", KeyText.Default(key));
        Row("stands in", Place(match.Section));
        Row("example", KeyText.Example(key, match.Section));
        if (key.Kind is KeyKind.Table or KeyKind.Tables)
        {
            Row("keys", string.Join(", ", match.Section.Inner(key).Keys.Select(k => k.Name)));
        }

        void Row(string label, string text)
        {
            if (text.Length > 0)
            {
                WriteWrapped(output, "  " + label.PadRight(LabelWidth), new string(' ', LabelWidth + 2), text);
            }
        }
    }

    private static string Place(KeySection section) =>
        section.Key is null ? $"the top level of a {section.FileWord} file" : $"{section.Header} of a {section.FileWord} file";

    private static void WriteWrapped(TextWriter output, string first, string next, string text)
    {
        string line = first;
        bool isEmpty = true;
        foreach (string word in text.Split(' '))
        {
            if (!isEmpty && line.Length + 1 + word.Length > Width)
            {
                output.WriteLine(line);
                line = next;
                isEmpty = true;
            }

            line += isEmpty ? word : " " + word;
            isEmpty = false;
        }

        output.WriteLine(line);
    }

    private static void WriteJson(Utf8JsonWriter writer, string verdict, IReadOnlyList<KeyMatch> matches, IReadOnlyList<(string Section, string Advice)> others)
    {
        JsonReport.WriteHead(writer, "explain", verdict, []);
        writer.WriteStartArray("keys");
        foreach (KeyMatch match in matches)
        {
            KeyDefinition key = match.Key;
            writer.WriteStartObject();
            writer.WriteString("path", match.Path);
            writer.WriteString("file", match.Section.FileWord);
            writer.WriteString("table", match.Section.Key is null ? "" : match.Section.Name);
            writer.WriteString("key", key.Name);
            writer.WriteString("meaning", key.Meaning);
            writer.WriteString("takes", KeyText.Takes(key));
            writer.WriteString("unit_family", KeyText.UnitFamily(key));
            Texts(writer, "units", KeyText.UnitNames(key));
            Texts(writer, "choices", key.Choices);
            writer.WriteString("si_unit", KeyText.SiUnit(key));
            Bound(writer, "allowed_min", key.Min);
            Bound(writer, "allowed_max", key.Max);
            Bound(writer, "usual_min", key.UsualMin);
            Bound(writer, "usual_max", key.UsualMax);
            writer.WriteBoolean("required", key.IsRequired);
            writer.WriteString("default", key.Default);
            writer.WriteString("example", KeyText.Example(key, match.Section));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        JsonReport.WriteRows(writer, "other_names", others, o =>
        {
            writer.WriteString("table", o.Section);
            writer.WriteString("advice", o.Advice);
        });
    }

    private static void Texts(Utf8JsonWriter writer, string name, IReadOnlyList<string> texts)
    {
        writer.WriteStartArray(name);
        foreach (string text in texts)
        {
            writer.WriteStringValue(text);
        }

        writer.WriteEndArray();
    }

    private static void Bound(Utf8JsonWriter writer, string name, double value)
    {
        if (double.IsFinite(value))
        {
            writer.WriteNumber(name, value);
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
