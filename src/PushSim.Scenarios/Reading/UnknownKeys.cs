using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>Complains about the keys of a table that the table of keys does not know there.</summary>
internal static class UnknownKeys
{
    public static void Report(ReadContext context, string section, TomlTable table)
    {
        foreach (TomlEntry entry in table.Entries)
        {
            if (KeyTable.Find(section, entry.Key) is null)
            {
                string where = section is "robot" or "scenario" ? $"the top level of a {section} file" : $"[{section}]";
                context.Error(entry.KeyPlace, $"unknown key \"{SourceFile.Clean(entry.Key, 60)}\" in {where}", Advice(section, entry.Key));
            }
        }
    }

    // What a usual other name stands for; the nearest key here; else the table that does have it; else all keys here.
    private static string Advice(string section, string key)
    {
        if (OtherNames.Advice(section, key) is string other)
        {
            return other;
        }

        IEnumerable<string> names = KeyTable.In(section).Select(k => k.Name);
        if (NearestWord.Find(key, names) is string near)
        {
            return $"did you mean \"{near}\"?";
        }

        List<string> elsewhere = [.. KeyTable.All.Where(k => k.Name == key && k.Section != section).Select(k => $"[{k.Section}]").Distinct().Take(3)];
        return elsewhere.Count > 0 ? $"it belongs in {string.Join(" or ", elsewhere)}" : "keys here: " + string.Join(", ", names);
    }
}
