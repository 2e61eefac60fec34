using System.Text;
using PushSim.Scenarios.Tests;
using Xunit;

namespace PushSim.Cli.Tests;

/// <summary>Every wrong command line of Golden/wrong-commands.txt, with all that it prints.</summary>
public class WrongCommandGoldenTests
{
    private static readonly List<(string Line, string Output)> s_blocks = Read();

    private static readonly Lock s_writing = new();

    public static TheoryData<string> Lines => [.. s_blocks.Select(b => b.Line)];

    [Fact]
    public void There_are_twenty_each_told_apart()
    {
        Assert.InRange(s_blocks.Count, 20, int.MaxValue);
        Assert.Equal(s_blocks.Count, s_blocks.Select(b => b.Line).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void Everything_printed_is_as_kept_and_short(string line)
    {
        string printed = Print(line);
        Assert.InRange(printed.Split('\n').Length, 2, 25);
        Assert.All(printed.Split('\n'), l => Assert.True(l.Length <= 79 || l.StartsWith("pushsim: error:", StringComparison.Ordinal), l));
        if (Environment.GetEnvironmentVariable("PUSHSIM_REWRITE") == "1")
        {
            Keep(line, printed);
            return;
        }

        Assert.Equal(s_blocks.Single(b => b.Line == line).Output, printed);
    }

    private static string Print(string line)
    {
        using var files = new SmallFiles();
        string[] words = [.. Words(line).Select(w => w is "shrew.toml" or "move.toml" ? Path.Combine(files.Folder, w) : w)];
        Cli cli = Cli.Run(words);
        return $"{cli.Output}{cli.Error}exit {cli.Code}\n".ReplaceLineEndings("\n").Replace(files.Folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);
    }

    // as a shell parts them: double quotes hold blanks together
    private static IEnumerable<string> Words(string line)
    {
        var word = new StringBuilder();
        bool isQuoted = false;
        foreach (char c in line["pushsim ".Length..] + " ")
        {
            if (c == '"')
            {
                isQuoted = !isQuoted;
            }
            else if (c == ' ' && !isQuoted)
            {
                yield return word.ToString();
                word.Clear();
            }
            else
            {
                word.Append(c);
            }
        }
    }

    private static string GoldenPath() => Path.Combine(Repository.Root, "tests", "PushSim.Cli.Tests", "Golden", "wrong-commands.txt");

    private static List<(string Line, string Output)> Read() =>
    [
        .. File.ReadAllText(GoldenPath()).ReplaceLineEndings("\n").Split("\n$ ").Skip(1).Select(p => (p[..p.IndexOf('\n', StringComparison.Ordinal)], p[(p.IndexOf('\n', StringComparison.Ordinal) + 1)..].TrimEnd('\n') + "\n")),
    ];

    private static void Keep(string line, string printed)
    {
        lock (s_writing)
        {
            s_blocks[s_blocks.FindIndex(b => b.Line == line)] = (line, printed);
            string head = File.ReadAllText(GoldenPath()).ReplaceLineEndings("\n").Split("\n$ ")[0];
            File.WriteAllText(GoldenPath(), head.TrimEnd('\n') + "\n\n" + string.Join('\n', s_blocks.Select(b => $"$ {b.Line}\n{b.Output}")));
        }
    }
}
