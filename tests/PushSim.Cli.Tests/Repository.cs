namespace PushSim.Cli.Tests;

/// <summary>Finds the checkout that the tests run from.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Scenario(string name) => Path.Combine(Root, "scenarios", name + ".toml");

    /// <summary>Text of a file of the checkout, with plain line ends.</summary>
    public static string Page(string relative) => File.ReadAllText(Path.Combine(Root, relative)).ReplaceLineEndings("\n");

    private static string Find()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "PushSim.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new InvalidOperationException("PushSim.sln not found above the tests");
    }
}
