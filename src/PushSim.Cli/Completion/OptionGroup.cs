namespace PushSim.Cli.Completion;

/// <summary>Under which head help and man page show an option: one rule for all commands, so that an option stands under the same head everywhere.</summary>
internal static class OptionGroup
{
    private const string What = "What";

    private static readonly (string Head, string[] Options)[] s_groups =
    [
        (What, []),
        ("How many", ["--matches", "--within", "--seed", "--threads", "--points", "--odds", "--part", "--merge", "--check"]),
        ("With whom", ["--against", "--beside", "--scene", "--contest"]),
        ("Files and output", ["--out", "--force", "--json", "--quiet", "--details", "--no-plots", "--report", "--format", "--help", "--version"]),
    ];

    /// <summary>The heads in their order.</summary>
    public static IEnumerable<string> Heads => s_groups.Select(g => g.Head);

    /// <summary>Head of an option; what no group names is what the command itself asks.</summary>
    /// <param name="option">Name of the option with its dashes.</param>
    public static string Of(string option) => Array.Find(s_groups, g => g.Options.Contains(option)).Head ?? What;
}
