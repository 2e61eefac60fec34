using System.Collections.Immutable;
using PushSim.Scenarios.Editing;

namespace PushSim.Workbench.Designs;

/// <summary>The open files at one moment. Never changes: a change makes another one.</summary>
/// <param name="Main">The file that was opened, links followed.</param>
/// <param name="Shown">The same as the user named it.</param>
/// <param name="Texts">The files by path.</param>
internal sealed record Design(string Main, string Shown, ImmutableSortedDictionary<string, OpenText> Texts)
{
    /// <summary>Folder of the garage that names come from; null: the nearest one upwards.</summary>
    public string? Garage { get; init; }

    /// <summary>How the files are read: with their changes.</summary>
    public ReadOptions Options => new() { Garage = Garage, Texts = Texts.ToDictionary(t => t.Key, t => t.Value.Text, StringComparer.Ordinal) };

    /// <summary>Whether anything differs from the disk.</summary>
    public bool IsChanged => Texts.Values.Any(t => t.IsChanged);

    /// <summary>The files as they are on the disk.</summary>
    public Design AsSaved => this with { Texts = Texts.ToImmutableSortedDictionary(t => t.Key, t => t.Value with { Text = t.Value.Saved }, StringComparer.Ordinal) };

    /// <summary>Reads the files.</summary>
    public ReadResult Read() => ScenarioReader.Check(Shown, Options);

    /// <summary>The design with another value; null if the value cannot be put into any of the files.</summary>
    /// <param name="row">The value as it is read now.</param>
    /// <param name="text">The new value, as it would be written without quotes.</param>
    /// <param name="read">What was read of this design.</param>
    public Design? With(EditRow row, string text, ReadResult read)
    {
        if (row.Members.Count > 0)
        {
            return WithAll(row, text, read);
        }

        bool isShared = row.Owner.Length > 0 && Robot("opponent", read) is string other && other == Robot("robot", read);
        string? file = row.Line == 0 ? null : PathOf(row.File, read);
        if (file is not null && Texts.TryGetValue(file, out OpenText? open) && !(isShared && file != Main)
            && EditText.Replace(open.Text, row.Line, row.Column, row.Definition, text) is string replaced)
        {
            return Put(open with { Text = replaced });
        }

        return Inserted(row, text, read, isShared);
    }

    /// <summary>The same texts, but with what is on the disk as another design knows it: a step back does not undo a save.</summary>
    public Design OnDiskOf(Design now) => this with { Texts = Texts.ToImmutableSortedDictionary(t => t.Key, t => now.Texts.TryGetValue(t.Key, out OpenText? known) ? t.Value with { Saved = known.Saved } : t.Value, StringComparer.Ordinal) };

    /// <summary>The design with the text that another program has written.</summary>
    public Design Taking(OpenText file, string theirs) => Put(file with { Saved = theirs, Text = theirs });

    /// <summary>The design with every file that a reading opened.</summary>
    public Design WithFilesOf(ReadResult read)
    {
        Design all = this;
        foreach ((string name, string path) in read.Files.Where(f => !Texts.ContainsKey(f.Path)))
        {
            if (DesignFiles.Text(path) is (string text, bool mark))
            {
                all = all.Put(new OpenText(path, name, text, mark, text));
            }
        }

        return all;
    }

    /// <summary>Where the file of a robot lies; null where there is none.</summary>
    public string? Robot(string owner, ReadResult read) => read.Inputs.Where(i => i.Owner == owner).Select(i => PathOf(i.File, read))
        .OfType<string>().Where(p => p != Main || read.Files.Count == 1).GroupBy(p => p).MaxBy(g => g.Count())?.Key;

    // each in its place, from the end of the files on so that places stay; else the scenario sets all of them anew
    private Design? WithAll(EditRow row, string text, ReadResult read)
    {
        Design? all = this;
        foreach (EditRow member in row.Members.DistinctBy(m => (m.File, m.Line, m.Column)).OrderByDescending(m => m.Line).ThenByDescending(m => m.Column))
        {
            all = all?.With(member, text, read);
        }

        bool isShared = Robot("opponent", read) is string other && other == Robot("robot", read);
        return isShared && row.Members.All(m => PathOf(m.File, read) != Main) ? Inserted(row, text, read, isShared) : all;
    }

    private static string? PathOf(string name, ReadResult read) => read.Files.FirstOrDefault(f => f.Name == name).Path;

    // a key more: in the file that has the others of its table, or set anew by the scenario
    private Design? Inserted(EditRow row, string text, ReadResult read, bool isShared)
    {
        OpenText main = Texts[Main];
        int last = row.Path.LastIndexOf('.');
        string section = row.Definition.Section;
        string table = last < 0 ? "" : row.Path[..last];
        string part = table.Length > section.Length && section is not ("robot" or "scenario") ? table[(section.Length + 1)..] : "";
        if (row.Owner.Length == 0)
        {
            return EditText.Insert(main.Text, section == "scenario" ? "" : section, part, row.Definition.Name, row.Definition, text) is string own ? Put(main with { Text = own }) : null;
        }

        // not into the robot's own file if that is the opponent's too
        if (!isShared && Robot(row.Owner, read) is string robot && Texts.TryGetValue(robot, out OpenText? open)
            && EditText.Insert(open.Text, section, part, row.Definition.Name, row.Definition, text) is string inside)
        {
            return Put(open with { Text = inside });
        }

        // of a robot that is open alone: whichever of its files has the table, its own first
        if (read.Scenario is null)
        {
            foreach (OpenText one in Texts.Values.OrderByDescending(t => t.Path == Main))
            {
                if (EditText.Insert(one.Text, section, part, row.Definition.Name, row.Definition, text) is string added)
                {
                    return Put(one with { Text = added });
                }
            }
        }

        string header = row.Owner == "opponent" ? "opponent.override" : "override";
        return read.Scenario is not null && EditText.Insert(main.Text, header, "", $"\"{row.Path}\"", row.Definition, text) is string set ? Put(main with { Text = set }) : null;
    }

    private Design Put(OpenText text) => this with { Texts = Texts.SetItem(text.Path, text) };
}
