using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Explain;

/// <summary>Keys as text for a person, wrapped.</summary>
internal static class ExplainText
{
    private const int Width = 79;
    private const int LabelWidth = 11;

    public static void WriteList(TextWriter output)
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

    public static void WriteBlocks(TextWriter output, IReadOnlyList<KeyMatch> matches)
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

    public static void WriteWrapped(TextWriter output, string first, string next, string text)
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
}
