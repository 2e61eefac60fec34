using System.Collections.Immutable;
using PushSim.Files;

namespace PushSim.Workbench.Designs;

/// <summary>Writes changed files, and finds what others changed. Only files that were opened are written, whole or not at all.</summary>
internal static class Keeper
{
    /// <summary>The files that others changed since they were read, with their text now; without one for a file that is gone.</summary>
    public static IReadOnlyList<(OpenText File, string? Theirs)> Outside(Design design)
    {
        List<(OpenText, string?)> found = [];
        foreach (OpenText file in design.Texts.Values)
        {
            string? now = DesignFiles.Text(file.Path)?.Text;
            if (now != file.Saved)
            {
                found.Add((file, now));
            }
        }

        return found;
    }

    /// <summary>Writes every changed file. Throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/> where the disk refuses; what was written before stays.</summary>
    /// <param name="design">The files.</param>
    /// <param name="saved">Names of the files that were written.</param>
    /// <returns>The design as it is on the disk now.</returns>
    public static Design Save(Design design, out IReadOnlyList<string> saved)
    {
        List<string> names = [];
        ImmutableSortedDictionary<string, OpenText> texts = design.Texts;
        foreach (OpenText file in design.Texts.Values.Where(t => t.IsChanged))
        {
            byte[] bytes = Encoding.UTF8.GetBytes(file.HasMark ? '\uFEFF' + file.Text : file.Text);
            WriteGate.Replace(file.Path, stream => stream.Write(bytes), isSynced: true);
            texts = texts.SetItem(file.Path, file with { Saved = file.Text });
            names.Add(file.Name);
        }

        saved = names;
        return design with { Texts = texts };
    }
}
