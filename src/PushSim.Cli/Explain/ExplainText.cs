using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Explain;

/// <summary>Keys as text for a person, wrapped.</summary>
internal static class ExplainText
{
    private const int LabelWidth = 11;

    // Keys of one name that are told in full without --details [1].
    private const int MostBlocks = 2;

    /// <summary>The tables of the files; every key of each with --details.</summary>
    public static void WriteList(TextWriter output, bool isDetailed)
    {
        foreach (FileKind file in Enum.GetValues<FileKind>())
        {
            IReadOnlyList<KeySection> sections = [.. KeySection.Of(file)];
            if (!isDetailed)
            {
                WrappedText.Write(output, $"{sections[0].FileWord} file: ", "  ", string.Join(", ", sections.Select(s => s.Key is null ? "top level" : s.Header)));
                continue;
            }

            foreach (KeySection section in sections)
            {
                output.WriteLine(section.Key is null ? $"{section.FileWord} file" : $"{section.FileWord} file, {section.Header}");
                WrappedText.Write(output, "  ", "  ", string.Join(", ", section.Keys.Select(k => k.Name)));
                output.WriteLine();
            }
        }

        output.WriteLine("keys of a table: pushsim explain TABLE; of all tables: pushsim explain --details");
        output.WriteLine("more of a key: pushsim explain KEY");
    }

    /// <summary>All that is known of keys; of many that share a name a line each without --details.</summary>
    public static void WriteBlocks(TextWriter output, IReadOnlyList<KeyMatch> matches, bool isDetailed)
    {
        if (!isDetailed && matches.Count > MostBlocks)
        {
            foreach (KeyMatch match in matches)
            {
                WrappedText.Write(output, match.Path + ": ", "  ", match.Key.Meaning);
            }

            output.WriteLine("More of one: pushsim explain TABLE.KEY; of all: --details");
            return;
        }

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
        WrappedText.Write(output, "  ", "  ", key.Meaning);
        Row("called", key.Label == key.Name.Replace('_', ' ') ? "" : key.Label);
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
                WrappedText.Write(output, "  " + label.PadRight(LabelWidth), new string(' ', LabelWidth + 2), text);
            }
        }
    }

    private static string Place(KeySection section) =>
        section.Key is null ? $"the top level of a {section.FileWord} file" : $"{section.Header} of a {section.FileWord} file";
}
