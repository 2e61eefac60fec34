using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Scenes;

/// <summary>Puts entries of a scenario that have an old name where they belong by now; what is said of them keeps their place in the file.</summary>
internal static class RenamedEntries
{
    /// <summary>Moves them. One that stands there under both names is complained about.</summary>
    /// <param name="context">Gathers complaints.</param>
    /// <param name="scenario">The scenario's tree.</param>
    public static void Move(ReadContext context, TomlTable scenario)
    {
        foreach ((string section, string old, string now) in RenamedKeys.All)
        {
            if ((scenario.Find(section)?.Value as TomlTable) is not TomlTable outer || outer.Find(old) is not TomlEntry entry)
            {
                continue;
            }

            if (outer.Find(RenamedKeys.Table) is null)
            {
                outer.Add(new TomlEntry(RenamedKeys.Table, entry.KeyPlace, new TomlTable(entry.KeyPlace, isExplicit: true)));
            }

            // a driver that is no table is complained about when it is read
            if (outer.Find(RenamedKeys.Table)!.Value is TomlTable inner)
            {
                if (inner.Find(now) is not null)
                {
                    context.Error(entry.KeyPlace, $"\"{old}\" is the old name of \"{now}\" in [{section}.{RenamedKeys.Table}], which is there too", "take one of the two out");
                }
                else
                {
                    inner.Add(entry with { Key = now });
                }
            }

            outer.Remove(old);
        }
    }
}
