using System.Text.RegularExpressions;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>Complains about the keys of a table that the table of keys does not know there.</summary>
internal static class UnknownKeys
{
    // tables that only a garage has: nobody who writes a robot or scenario meant them
    private static readonly string[] s_ofGarage = ["garage", "rival", "price"];

    public static void Report(ReadContext context, string section, TomlTable table)
    {
        foreach (TomlEntry entry in table.Entries)
        {
            if (KeyTable.Find(section, entry.Key) is null)
            {
                string? guess = Guess(section, entry.Key);
                table.Meant.UnionWith(KeyTable.In(section).Select(k => k.Name).Where(k => guess is not null && IsNamed(k, guess)));
                string where = section is "robot" or "scenario" or "garage" ? $"the top level of a {section} file" : $"[{section}]";
                context.Error(entry.KeyPlace, $"unknown key \"{SourceFile.Clean(entry.Key, 60)}\" in {where}", guess ?? Elsewhere(section, entry.Key));
            }
        }
    }

    // What a usual other name stands for, or the nearest key here; null if neither is known.
    private static string? Guess(string section, string key) =>
        OtherNames.Advice(section, key) ?? (NearestWord.Find(key, KeyTable.In(section).Select(k => k.Name)) is string near ? $"did you mean \"{near}\"?" : null);

    private static bool IsNamed(string key, string advice) => Regex.IsMatch(advice, $@"\b{key}\b");

    // The tables that do have the key; else all keys here.
    private static string Elsewhere(string section, string key)
    {
        List<string> tables = [.. KeyTable.All.Where(k => k.Name == key && k.Section != section && (s_ofGarage.Contains(section) || !s_ofGarage.Contains(k.Section))).Select(k => $"[{k.Section}]").Distinct().Take(3)];
        return tables.Count > 0 ? $"it belongs in {string.Join(" or ", tables)}" : "keys here: " + string.Join(", ", KeyTable.In(section).Select(k => k.Name));
    }
}
