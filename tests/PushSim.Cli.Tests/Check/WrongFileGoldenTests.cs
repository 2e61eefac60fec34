using System.Text;
using PushSim.Scenarios.Tests;
using Xunit;

namespace PushSim.Cli.Tests.Check;

/// <summary>Every wrong file of Golden/wrong-files.txt, with all that the check prints.</summary>
public class WrongFileGoldenTests
{
    private const string Shove = """
        question = "Who gives ground?"
        robot = "shrew.toml"
        [opponent]
        robot = "shrew.toml"
        [override]
        "chassis.mass" = "900 g"
        [manoeuvre]
        kind = "shove"
        [shove]
        gap = "50 mm"

        """;

    private static readonly List<Block> Blocks = ReadBlocks();

    public static TheoryData<string> Titles => [.. Blocks.Select(b => b.Title)];

    [Fact]
    public void There_are_eighty_wrong_files_each_told_apart()
    {
        Assert.InRange(Blocks.Count, 80, int.MaxValue);
        Assert.Equal(Blocks.Count, Blocks.Select(b => b.Title).Distinct().Count());
        Assert.Equal(Blocks.Count, Blocks.Select(b => string.Join("\n", b.Edits)).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Titles))]
    public void Everything_printed_is_as_kept(string title)
    {
        Block block = Blocks.Single(b => b.Title == title);
        string printed = Print(block);
        if (Environment.GetEnvironmentVariable("PUSHSIM_REWRITE") == "1")
        {
            Keep(title, printed);
            return;
        }

        Assert.Equal(block.Output, printed);
    }

    private static string Print(Block block)
    {
        using var files = new SmallFiles();
        File.WriteAllText(Path.Combine(files.Folder, "shove.toml"), Shove);
        string check = "move.toml";
        foreach (string line in block.Edits)
        {
            if (line.StartsWith("check ", StringComparison.Ordinal))
            {
                check = line["check ".Length..];
                continue;
            }

            (string file, string edit) = Split(line, ": ");
            (string old, string by) = Split(edit, "=> ");
            string path = Path.Combine(files.Folder, file);
            string text = old.Length == 0 ? by : SmallFiles.With(File.ReadAllText(path), old.EndsWith(' ') ? old[..^1] : old, by);
            File.WriteAllText(path, text);
        }

        Cli cli = Cli.Run("check", Path.Combine(files.Folder, check));
        string all = $"{cli.Error}{cli.Output}exit {cli.Code}\n";
        return all.ReplaceLineEndings("\n").Replace(files.Folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);
    }

    private static (string, string) Split(string text, string by)
    {
        int at = (text + " ").IndexOf(by, StringComparison.Ordinal);
        Assert.True(at >= 0, $"no '{by}' in '{text}'");
        return (Unescape(text[..at]), Unescape(text[Math.Min(text.Length, at + by.Length)..]));
    }

    private static string Unescape(string text) => text.Replace("\\n", "\n", StringComparison.Ordinal);

    private static string GoldenPath() => Path.Combine(Repository.Root, "tests", "PushSim.Cli.Tests", "Golden", "wrong-files.txt");

    private static List<Block> ReadBlocks()
    {
        string[] parts = File.ReadAllText(GoldenPath()).ReplaceLineEndings("\n").Split("\n=== ");
        return [.. parts.Skip(1).Select(part =>
        {
            int dashes = part.IndexOf("\n---\n", StringComparison.Ordinal);
            string[] head = part[..dashes].Split('\n');
            return new Block(head[0], head[1..], part[(dashes + 5)..].TrimEnd('\n') + "\n");
        })];
    }

    private static readonly Lock Writing = new();

    private static void Keep(string title, string printed)
    {
        lock (Writing)
        {
            Blocks[Blocks.FindIndex(b => b.Title == title)] = Blocks.Single(b => b.Title == title) with { Output = printed };
            string head = File.ReadAllText(GoldenPath()).ReplaceLineEndings("\n").Split("\n=== ")[0];
            var text = new StringBuilder(head.TrimEnd('\n')).Append("\n\n");
            foreach (Block b in Blocks)
            {
                text.Append("=== ").Append(b.Title).Append('\n').AppendJoin('\n', b.Edits).Append("\n---\n").Append(b.Output).Append('\n');
            }

            File.WriteAllText(GoldenPath(), text.ToString());
        }
    }

    private sealed record Block(string Title, string[] Edits, string Output);
}
