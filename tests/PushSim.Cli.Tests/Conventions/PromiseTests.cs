using System.Text.RegularExpressions;
using Xunit;

namespace PushSim.Cli.Tests.Conventions;

/// <summary>Each promise of src/docs/promise.md names a test that there is.</summary>
public partial class PromiseTests
{
    private static readonly string s_page = File.ReadAllText(Path.Combine(Repository.Root, "src", "docs", "promise.md"));

    private static readonly Lazy<ILookup<string, string>> s_sources = new(() => Directory.EnumerateFiles(Path.Combine(Repository.Root, "tests"), "*Tests.cs", SearchOption.AllDirectories)
        .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)).ToLookup(f => Path.GetFileNameWithoutExtension(f), File.ReadAllText));

    public static TheoryData<string> Named => [.. Test().Matches(s_page).Select(m => m.Groups[1].Value).Distinct()];

    [Theory]
    [MemberData(nameof(Named))]
    public void A_named_test_exists(string test)
    {
        string[] parts = test.Split('.');
        Assert.Contains(s_sources.Value[parts[0]], s => Regex.IsMatch(s, $@"\[(Fact|Theory)\][^{{}}]*public (async )?(void|Task) {parts[1]}\("));
    }

    [Fact]
    public void Every_promise_names_a_test()
    {
        string[] rows = [.. s_page.Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal) && !l.StartsWith("| promise ", StringComparison.Ordinal))];
        Assert.True(rows.Length > 20);
        Assert.All(rows, r => Assert.Matches(Test(), r.Split('|')[2]));
    }

    [GeneratedRegex(@"`(\w+Tests\.\w+)`")]
    private static partial Regex Test();
}
