using System.Text.RegularExpressions;
using Xunit;

namespace PushSim.Cli.Tests.Conventions;

/// <summary>The guide names what exists, and its pages stay short enough to be read.</summary>
public partial class GuideTests
{
    private const int Columns = 110;

    // rows of generated tables are as long as what they tell
    private static readonly string[] Generated = ["accuracy.md", "answers.md"];

    private static readonly Lazy<HashSet<string>> Types = new(() =>
    [
        .. new[] { "src", "tests" }.SelectMany(f => Directory.EnumerateFiles(Path.Combine(Repository.Root, f), "*.cs", SearchOption.AllDirectories))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(f => TypeName().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value).Append(Path.GetFileName(f))),
    ]);

    public static TheoryData<string> Names => [.. Named().Matches(Repository.Page("DEVELOPERS.md")).Select(m => m.Groups[1].Value).Where(n => !n.StartsWith("Xxx", StringComparison.Ordinal)).Distinct()];

    public static TheoryData<string> Pages =>
    [
        "README.md", "DEVELOPERS.md",
        .. Directory.GetFiles(Path.Combine(Repository.Root, "src", "docs"), "*.md", SearchOption.AllDirectories).Where(f => !Generated.Contains(Path.GetFileName(f)))
            .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/')).Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_name_of_the_guide_exists(string name) => Assert.Contains(name, Types.Value);

    [Theory]
    [InlineData("DEVELOPERS.md", 200)]
    [InlineData("README.md", 120)]
    public void The_first_pages_are_short(string page, int lines) => Assert.InRange(Repository.Page(page).TrimEnd('\n').Split('\n').Length, 1, lines);

    // commands, tables, code and addresses are not broken
    [Theory]
    [MemberData(nameof(Pages))]
    public void Prose_fits_its_columns(string page) => Assert.DoesNotContain(
        Fenced().Replace(Repository.Page(page), "").Split('\n'), l => l.Length > Columns && !l.StartsWith('|') && !l.StartsWith("    ", StringComparison.Ordinal) && !l.Contains("](", StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(Pages))]
    public void Links_lead_to_files(string page)
    {
        string folder = Path.GetDirectoryName(Path.Combine(Repository.Root, page))!;
        Assert.All(Link().Matches(Repository.Page(page)).Select(m => m.Groups[1].Value), l => Assert.True(Path.Exists(Path.Combine(folder, l)), $"{page}: {l}"));
    }

    [GeneratedRegex(@"(?:class|record|struct|interface|enum) (?:class |struct )?([A-Z]\w+)")]
    private static partial Regex TypeName();

    // type and file names in code marks
    [GeneratedRegex("`([A-Z][a-z][A-Za-z0-9]+(?:\\.cs)?)`")]
    private static partial Regex Named();

    [GeneratedRegex("^```.*?^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fenced();

    [GeneratedRegex(@"\]\((?!https?:)([^)#]+)[^)]*\)")]
    private static partial Regex Link();
}
