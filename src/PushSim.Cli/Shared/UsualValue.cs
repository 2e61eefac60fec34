using PushSim.Plotting.Report;
using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Shared;

/// <summary>What would hold without an input, so that a page shows first what is a file's own.</summary>
internal static class UsualValue
{
    // Words of defaults that are no value, and too long for a table [1].
    private const int Longest = 40;

    /// <summary>The input with its default, and whether it differs from it.</summary>
    public static ReportInput Told(ReportInput input)
    {
        string plain = input.Key.StartsWith("opponent.", StringComparison.Ordinal) ? input.Key["opponent.".Length..] : input.Key;
        string[] parts = plain.Split('.');
        string name = parts[^1].Split('[')[0];
        string[] sections = [string.Join('.', parts[..^1]), parts[0]];
        KeyDefinition? key = parts.Length < 2 ? null : sections.Select(s => KeyTable.All.FirstOrDefault(k => k.Section == s && k.Name == name)).FirstOrDefault(k => k is not null);
        string usual = key is null || key.IsRequired ? "" : key.Default;
        return input with { Usual = usual.Length <= Longest ? usual : "", IsOwn = usual.Length == 0 || Plain(usual) != Plain(input.Text) };
    }

    private static string Plain(string text) => text.Trim('"').Replace(" ", "", StringComparison.Ordinal);
}
