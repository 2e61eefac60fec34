using System.Runtime.CompilerServices;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Files that are made from the table of keys: compared with what it makes now, or written anew when PUSHSIM_REWRITE=1.</summary>
internal static class Generated
{
    public static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));

    /// <summary>Whether the files are written anew. What a build takes into the program is then older than they are.</summary>
    public static bool IsRewritten => Environment.GetEnvironmentVariable("PUSHSIM_REWRITE") == "1";

    public static void Expect(string relativePath, string text)
    {
        string path = Path.Combine(Root(), relativePath);
        if (IsRewritten)
        {
            File.WriteAllText(path, text);
        }

        Assert.True(File.Exists(path) && File.ReadAllText(path).ReplaceLineEndings("\n") == text, $"{relativePath} is not what the table of keys makes: run these tests once with PUSHSIM_REWRITE=1 and commit it");
    }
}
