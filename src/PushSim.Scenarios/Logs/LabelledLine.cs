using System.Text.RegularExpressions;

namespace PushSim.Scenarios.Logs;

/// <summary>A line whose values have names: "Weight: 12.3 g", "t=0.012, F=1.5 N", "weight 12.3 g raw 8123", {"t_ms":12,"force_g":15.7}.</summary>
internal static partial class LabelledLine
{
    // More values than this in one line are no print of a load cell [1].
    private const int MostValues = 24;

    /// <summary>Takes a line apart.</summary>
    /// <param name="line">The line, without the time of its arrival.</param>
    /// <param name="values">Name, text of the value and its unit; name or unit empty where the line has none.</param>
    /// <returns>Whether the line is nothing but values, one of them with a name.</returns>
    public static bool TryParse(string line, List<(string Name, string Value, string Unit)> values)
    {
        values.Clear();
        string text = line.Trim();
        if (text is ['{', .., '}'])
        {
            text = text[1..^1].Replace("\"", "", StringComparison.Ordinal);
        }

        bool hasName = false;
        int at = 0;
        while (at < text.Length && values.Count < MostValues)
        {
            if (text[at] is ' ' or ',' or ';' or '|' or '\t')
            {
                at++;
                continue;
            }

            Match name = NameBefore().Match(text, at);
            if (!name.Success && BareName().Match(text, at) is { Success: true } bare && IsKnown(bare.Groups[1].Value))
            {
                name = bare;
            }

            int from = name.Success ? at + name.Length : at;
            Match number = Number().Match(text, from);
            Match value = number.Success ? number : name.Success ? Word().Match(text, from) : Match.Empty;
            if (!value.Success || value.Length == 0)
            {
                return false;
            }

            at = from + value.Length;
            string unit = "";
            if (number.Success && Unit().Match(text, at) is { Success: true } u && (LogColumn.IsUnit(u.Groups[1].Value) || at + u.Length == text.Length || text[at + u.Length] is ',' or ';' or '|' or '\t'))
            {
                unit = u.Groups[1].Value;
                at += u.Length;
            }

            hasName |= name.Success;
            values.Add((name.Success ? name.Groups[1].Value.Trim() : "", value.Value, unit));
        }

        return hasName && at >= text.Length;
    }

    // "weight 12.3" has a name, "soft 12.3" is a row of a table
    private static bool IsKnown(string word) => LogColumn.OfHeader([word, "x"], null)[0].Role is LogRole.Force or LogRole.Time;

    [GeneratedRegex(@"\G([\p{L}_][\p{L}\p{N}_. ]*?(?:\s*[\[(][^\])]*[\])])?)\s*[:=]\s*")]
    private static partial Regex NameBefore();

    [GeneratedRegex(@"\G([\p{L}_]+)\s+(?=[-+]?[.,]?\d)")]
    private static partial Regex BareName();

    [GeneratedRegex(@"\G(?:\d{1,2}:\d\d(?::\d\d(?:[.,]\d+)?)?|[-+\u2212]?(?:\d+(?:[.,'\u2019\u00A0\u202F]\d+)*|[.,]\d+)(?:[eE][-+]?\d+)?)(?![\p{L}\p{N}]*[:=])")]
    private static partial Regex Number();

    [GeneratedRegex(@"\G[^\s,;|]+")]
    private static partial Regex Word();

    [GeneratedRegex(@"\G\s*([\p{L}µ%°][\p{L}\p{N}/µ%°²·^]*)(?!\s*[:=]|[\p{L}\p{N}/])")]
    private static partial Regex Unit();
}
