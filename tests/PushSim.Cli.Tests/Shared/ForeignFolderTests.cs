using PushSim.Cli.Shared;
using PushSim.Cli.Tests.Faults;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>A folder that is not ours is refused before a command works, whichever command it is.</summary>
public class ForeignFolderTests
{
    private static readonly FaultCommand[] s_all =
    [
        .. FaultCommand.All.Where(c => c.Name is not ("new" or "fit inside")),
        new("odds match", "odds", "@short.toml", "--match", "2", "--out", "@work/out"),
        new("fit --simulate", "fit", Logs("mole-pulls.csv"), "--robot", Repository.Scenario("pull-test"), "--simulate", "--out", "@work/out"),
        new("fit of a notebook", "fit", Path.Combine(Repository.Root, "scenarios", "garage", "readings.csv"), "--out", "@work/out"),
        new("plan after a log", "plan", "soft", "hard", "--from", "@readings.csv", "--out", "@work/out"),
        new("advise", "advise", "@robots/mole.toml", "--against", "@robots/vole.toml", "--out", "@work/out"),
        new("bench", "bench", "--port", "none", "--out", "@work/out"),
        new("garage", "garage", "--garage", Path.Combine(Repository.Root, "scenarios", "garage"), "--report", "--out", "@work/out"),
    ];

    public static TheoryData<string> Commands => [.. s_all.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Commands))]
    public void A_foreign_folder_is_refused_before_any_answer(string name)
    {
        using var scratch = new ScratchFolder();
        FaultCommand command = s_all.First(c => c.Name == name);
        string root = scratch["place"];
        command.Prepare(root, name == "odds merge" ? "none" : "foreign");
        string folder = Path.Combine(root, "work", "out");
        File.WriteAllText(Path.Combine(folder, "letter.txt"), "the user's own letter");
        File.Delete(Path.Combine(folder, Files.OutputMark.Name));
        Dictionary<string, string> before = Bytes(root);

        Cli refused = command.Run(root);

        Assert.Equal((ExitCode.CannotReadOrWrite, ""), (refused.Code, refused.Output));
        Assert.EndsWith($"pushsim: error: {folder} exists and is not an output of pushsim; give another with --out, or --force to write into it\n", refused.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("from the pulls alone", refused.Error);
        Assert.Equal(before, Bytes(root));
    }

    // what another command began there is left to the opening, which knows how to mend it
    [Theory]
    [InlineData(".out.pushsim-new")]
    [InlineData("out/.pushsim-old")]
    public void A_folder_at_which_another_command_was_killed_is_not_judged_early(string left)
    {
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["out"]);
        File.WriteAllText(scratch["out/history.csv"], "ours, its mark not there yet");
        Assert.Throws<IOException>(() => Files.FreshFolder.Expect(scratch["out"], force: false, _ => false));
        Files.FreshFolder.Expect(scratch["out"], force: true, _ => false);
        Directory.CreateDirectory(scratch[left]);
        Files.FreshFolder.Expect(scratch["out"], force: false, _ => false);
        Files.FreshFolder.Expect(scratch["no/such/folder"], force: false, _ => false);
        Assert.False(Directory.Exists(scratch["no"]));
    }

    private static string Logs(string name) => Path.Combine(Repository.Root, "scenarios", "logs", name);

    private static Dictionary<string, string> Bytes(string root) => Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories).ToDictionary(f => f, f => Files.Disk.Hash(f));
}
