using CsCheck;
using PushSim.Scenarios.Scenes;
using Xunit;

namespace PushSim.Scenarios.Tests;

public class BrokenTextTests
{
    // pieces that a file is made of, so that random edits often stay valid TOML and reach the deeper checks
    private static readonly string[] Pieces =
    [
        "", "\n", "\"", "[", "]", "{", "}", "=", ",", ".", "0", "-1", "1e999", "nan", "\"0 m\"", "\"-1 mm\"", "\"left\"", "\"port\"", "\"port/2\"", "\"small\"", "\"foam\"",
        "[[wheel]]\n", "[[drive]]\n", "[[controller]]\n", "[battery]\n", "[chassis]\n", "skid = true\n", "[]", "[\"left\"]", "{}", "\u0000", "\u001b", "é", "±", "#",
    ];

    private static readonly Gen<(string Robot, string Scenario)> Broken =
        Gen.Select(Gen.Int[0, SmallFiles.Robot.Length - 1], Gen.Int[0, 30], Gen.Int[0, Pieces.Length - 1], Gen.Bool, Gen.Int[0, 400])
            .Select(e => e.Item4
                ? (SmallFiles.Robot, Edit(SmallFiles.Scenario, e.Item5 % SmallFiles.Scenario.Length, e.Item2, Pieces[e.Item3]))
                : (Edit(SmallFiles.Robot, e.Item1, e.Item2, Pieces[e.Item3]), SmallFiles.Scenario));

    [Fact]
    public void Any_text_is_either_right_or_complained_about()
    {
        using var files = new SmallFiles();
        Broken.Sample(
            t =>
            {
                File.WriteAllText(files.RobotPath, t.Robot);
                File.WriteAllText(files.ScenarioPath, t.Scenario);
                ReadResult result = ScenarioReader.Read(files.ScenarioPath);
                Assert.Equal(result.HasErrors, result.Scenario is null);
                Assert.All(result.Problems, p => Assert.DoesNotContain(p.ToString() + p.Help + p.SourceLine, char.IsControl));
                Assert.All(result.Inputs, i => Assert.True(i.Value is null || double.IsFinite(i.Value.Value)));
            },
            seed: "0000KOIPe3P2",
            iter: 3000,
            threads: 1);
    }

    private static string Edit(string text, int at, int length, string by) =>
        text[..at] + by + text[Math.Min(text.Length, at + length)..];
}
