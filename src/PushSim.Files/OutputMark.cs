namespace PushSim.Files;

/// <summary>
/// The mark of an output folder: which files we wrote there, with the hash of each, from which source, and whether the result is whole. What does not have its hash is the user's.
/// </summary>
/// <param name="State">How far the result is.</param>
/// <param name="Source">Tells the source from others of the same name; empty where none is known.</param>
/// <param name="Entries">The files.</param>
public sealed record OutputMark(OutputState State, string Source, IReadOnlyList<OutputEntry> Entries)
{
    /// <summary>Name of its file.</summary>
    public const string Name = ".pushsim-output";

    private const string Head = "pushsim output 2";
    private const int MostBytes = 4_000_000;

    /// <summary>As text.</summary>
    public string Text => string.Concat(new[] { Head, "state " + State.ToString().ToLowerInvariant() }
        .Concat(Source.Length > 0 ? ["source " + Source] : [])
        .Concat(Entries.Select(e => $"{(e.IsForm ? "form" : "file")} {(e.Hash.Length > 0 ? e.Hash : "-")} {e.Name}")).Select(l => l + "\n"));

    /// <summary>The entry of a name; null without.</summary>
    public OutputEntry? Of(string name) => Entries.FirstOrDefault(e => e.Name == name);

    /// <summary>The mark of a folder; null if it has none that is a regular file.</summary>
    public static OutputMark? Read(string folder) => Disk.Text(Path.Combine(folder, Name), MostBytes) is string text ? Parse(text) : null;

    /// <summary>Whether a name is that of a file directly in a folder.</summary>
    public static bool IsPlain(string name) => name.Length > 0 && name == Path.GetFileName(name) && name is not ("." or "..") && !name.Any(char.IsControl);

    private static OutputMark Parse(string text)
    {
        string[] lines = text.Split('\n');
        if (lines[0].TrimEnd('\r') != Head)
        {
            // of an earlier version: names alone, so that nothing is known of their content
            return new OutputMark(OutputState.Whole, "", [.. lines.Select(l => l.TrimEnd('\r')).Where(IsPlain).Select(n => new OutputEntry(n, "", false))]);
        }

        OutputState state = OutputState.Begun;
        string source = "";
        List<OutputEntry> entries = [];
        foreach (string[] words in lines.Skip(1).Select(l => l.TrimEnd('\r').Split(' ', 3)))
        {
            if (words is ["state", var s])
            {
                state = s switch { "whole" => OutputState.Whole, "partial" => OutputState.Partial, _ => OutputState.Begun };
            }
            else if (words is ["source", var from])
            {
                source = from;
            }
            else if (words is ["file" or "form", var hash, var name] && IsPlain(name))
            {
                entries.Add(new OutputEntry(name, hash == "-" ? "" : hash, words[0] == "form"));
            }
        }

        return new OutputMark(state, source, entries);
    }
}
