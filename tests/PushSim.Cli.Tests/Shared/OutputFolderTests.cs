using System.Diagnostics;
using System.Globalization;
using PushSim.Cli.Tests.Faults;
using PushSim.Files;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>What a command does to a folder that is there: nothing of the user's is lost, whatever leads where.</summary>
public class OutputFolderTests
{
    private static readonly string s_scenario = Repository.Scenario("launch-soft");

    private const string Readings = "tyre,force [gf]\nsoft,900\nhard,700\nsoft,905\nhard,702\n";

    [Fact]
    public void A_plan_that_is_filled_in_stays()
    {
        using var scratch = new ScratchFolder();
        string[] plan = ["plan", "soft", "hard", "--quiet", "--out", scratch["plan"]];
        Assert.Equal(0, Cli.Run(plan).Code);
        Assert.Equal("", Cli.Run(plan).Error);
        File.AppendAllText(scratch["plan/plan.csv"], "# 13.2 N\n");
        string filled = File.ReadAllText(scratch["plan/plan.csv"]);
        foreach (string[] args in new[] { plan, [.. plan, "--force"], plan })
        {
            Cli again = Cli.Run(args);
            Assert.Equal(0, again.Code);
            Assert.Contains("plan.csv", again.Error);
            Assert.Equal(filled, File.ReadAllText(scratch["plan/plan.csv"]));
            Assert.True(File.Exists(scratch["plan/plan-2.csv"]));
        }

        Assert.Equal([".pushsim-output", "plan-2.csv", "plan.csv"], Names(scratch["plan"]));
    }

    [Fact]
    public void The_plan_that_was_written_is_the_one_that_is_told()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("plan", "soft", "hard", "--out", scratch["plan"]);
        File.AppendAllText(scratch["plan/plan.csv"], "# filled in\n");
        Assert.Contains("plan-2.csv", Cli.Run("plan", "soft", "hard", "--out", scratch["plan"]).Output);
    }

    // Also where the input has the name of a result, or is reached by a link
    [Theory]
    [InlineData("mine.csv", false)]
    [InlineData("tyres.toml", false)]
    [InlineData("mine.csv", true)]
    public void A_fit_into_the_folder_of_its_input_leaves_it(string name, bool isLinked)
    {
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["out"]);
        string input = scratch["out/" + (name == "tyres.toml" ? "mine.csv" : name)];
        File.WriteAllText(input, Readings);
        File.WriteAllText(scratch["out/tyres.toml"], "# of the user\n");
        if (isLinked)
        {
            File.CreateSymbolicLink(scratch["link.csv"], input);
        }

        string[] fit = ["fit", isLinked ? scratch["link.csv"] : input, "--load", "13 N", "--no-plots", "--quiet", "--out", scratch["out"]];
        Assert.Equal(4, Cli.Run(fit).Code);
        for (int i = 0; i < 3; i++)
        {
            Cli run = Cli.Run(i == 0 ? [.. fit, "--force"] : fit);
            Assert.True(run.Code == 0, run.Error);
            Assert.Equal(Readings, File.ReadAllText(input));
            Assert.Equal("# of the user\n", File.ReadAllText(scratch["out/tyres.toml"]));
        }
    }

    // What an earlier command wrote is ours, but not while a command reads it
    [Fact]
    public void A_result_that_is_read_is_not_removed()
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(0, Cli.Run("run", Repository.Scenario("pull-test"), "--no-plots", "--quiet", "--out", scratch["out"]).Code);
        string log = scratch["out/history.csv"];
        byte[] before = File.ReadAllBytes(log);
        Cli fit = Cli.Run("fit", log, "--load", "13 N", "--no-plots", "--quiet", "--out", scratch["out"]);
        Assert.Equal(before, File.ReadAllBytes(log));
        Assert.True(fit.Code is 0 or 2 or 3, fit.Error);
    }

    [Fact]
    public void What_the_user_changed_or_added_is_kept_and_told()
    {
        using var scratch = new ScratchFolder();
        string[] run = ["run", s_scenario, "--no-plots", "--quiet", "--out", scratch["out"]];
        Cli.Run(run);
        File.AppendAllText(scratch["out/history.csv"], "changed\n");
        File.WriteAllText(scratch["out/notes.txt"], "notes");
        byte[] changed = File.ReadAllBytes(scratch["out/history.csv"]);
        string told = Cli.Run(run).Error;
        Assert.Contains("history.kept-1.csv", told);
        Assert.Contains("notes.txt", told);
        Assert.Equal(changed, File.ReadAllBytes(scratch["out/history.kept-1.csv"]));
        Assert.Equal([".pushsim-output", "history.csv", "history.kept-1.csv", "notes.txt"], Names(scratch["out"]));
        Assert.DoesNotContain("changed", File.ReadAllText(scratch["out/history.csv"]));
    }

    [Fact]
    public void A_result_of_an_earlier_version_is_kept_since_nothing_is_known_of_it()
    {
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["out"]);
        File.WriteAllText(scratch["out/.pushsim-output"], "history.csv\nplot.png\n");
        File.WriteAllText(scratch["out/history.csv"], "old");
        Assert.Equal(0, Cli.Run("run", s_scenario, "--no-plots", "--quiet", "--out", scratch["out"]).Code);
        Assert.Equal("old", File.ReadAllText(scratch["out/history.kept-1.csv"]));
    }

    [Fact]
    public void With_force_what_is_in_the_way_is_moved_aside()
    {
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["mine"]);
        File.WriteAllText(scratch["mine/history.csv"], "mine");
        Cli run = Cli.Run("run", s_scenario, "--no-plots", "--quiet", "--force", "--out", scratch["mine"]);
        Assert.Equal(0, run.Code);
        Assert.Equal("mine", File.ReadAllText(scratch["mine/history.kept-1.csv"]));
        Assert.Contains("history.kept-1.csv", run.Error);
    }

    [Fact]
    public void New_with_force_moves_what_is_there_aside()
    {
        using var scratch = new ScratchFolder();
        string[] make = ["new", "--quiet", "--out", scratch["new"]];
        Assert.Equal(0, Cli.Run(make).Code);
        string robot = Directory.GetFiles(scratch["new"], "*.toml").First(f => File.ReadAllText(f).Contains("[chassis]"));
        File.AppendAllText(robot, "# measured\n");
        Assert.Equal(4, Cli.Run(make).Code);
        Cli forced = Cli.Run([.. make, "--force"]);
        Assert.Equal(0, forced.Code);
        string kept = Path.ChangeExtension(robot, ".kept-1.toml");
        Assert.Contains("# measured", File.ReadAllText(kept));
        Assert.Contains(Path.GetFileName(kept), forced.Error);
    }

    [Theory]
    [InlineData("plot.pdf.part")]
    [InlineData("history.csv.part")]
    [InlineData("history.csv")]
    [InlineData(".pushsim-output.part")]
    public void No_link_in_the_folder_is_written_through(string name)
    {
        using var scratch = new ScratchFolder();
        string[] run = ["run", s_scenario, "--quiet", "--no-plots", "--out", scratch["out"]];
        Cli.Run(run);
        File.WriteAllText(scratch["precious.txt"], "precious");
        File.Delete(scratch["out/" + name]);
        File.CreateSymbolicLink(scratch["out/" + name], scratch["precious.txt"]);
        Assert.Equal(0, Cli.Run(run).Code);
        Assert.Equal("precious", File.ReadAllText(scratch["precious.txt"]));
    }

    [Theory]
    [InlineData(false, true)]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public void A_mark_that_is_a_link_or_a_pipe_is_none(bool isPipe, bool force)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs mkfifo");
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["out"]);
        File.WriteAllText(scratch["precious.txt"], "pushsim output 2\nstate whole\n");
        if (isPipe)
        {
            Process.Start("mkfifo", [scratch["out/.pushsim-output"]]).WaitForExit();
        }
        else
        {
            File.CreateSymbolicLink(scratch["out/.pushsim-output"], scratch["precious.txt"]);
        }

        Cli run = Cli.Run(["run", s_scenario, "--quiet", "--no-plots", "--out", scratch["out"], .. force ? (string[])["--force"] : []]);
        Assert.Equal(force ? 0 : 4, run.Code);
        Assert.Equal("pushsim output 2\nstate whole\n", File.ReadAllText(scratch["precious.txt"]));
    }

    [Fact]
    public void A_link_for_a_folder_is_refused()
    {
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["elsewhere"]);
        Directory.CreateSymbolicLink(scratch["out"], scratch["elsewhere"]);
        Cli run = Cli.Run("run", s_scenario, "--quiet", "--no-plots", "--force", "--out", scratch["out"]);
        Assert.Equal(4, run.Code);
        Assert.Contains("is a link", run.Error);
        Assert.Empty(Names(scratch["elsewhere"]));
    }

    [Fact]
    public async Task Six_runs_at_once_leave_a_whole_result()
    {
        using var scratch = new ScratchFolder();
        string[] run = ["run", s_scenario, "--quiet", "--no-plots", "--out", scratch["out"]];
        Cli[] all = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() => Cli.Run(run))));
        Assert.All(all, r => Assert.True(r.Code == 0, r.Error));
        Assert.Equal([".pushsim-output", "history.csv"], Names(scratch["out"]));
        Assert.Equal(["out"], Names(scratch.Path));
    }

    [Fact]
    public void A_lock_names_its_holder_and_a_second_command_ends_with_4()
    {
        using var scratch = new ScratchFolder();
        using HeldLock held = HeldLock.Take(scratch[".out.pushsim-lock"], new LockAsk("out", "pushsim odds long.toml", _ => { }, CancellationToken.None));
        LockAsk.Patience(0.3);
        Cli run = Cli.Run("run", s_scenario, "--quiet", "--no-plots", "--out", scratch["out"]);
        LockAsk.Patience(null);
        Assert.Equal(4, run.Code);
        Assert.Contains("pushsim odds long.toml", run.Error);
        Assert.Contains($"process {Environment.ProcessId} on {Environment.MachineName}", run.Error);
        Assert.Contains("waiting up to", run.Error);
    }

    [Fact]
    public void An_interrupt_ends_the_wait_for_a_lock()
    {
        using var scratch = new ScratchFolder();
        using HeldLock held = HeldLock.Take(scratch[".out.pushsim-lock"], new LockAsk("out", "pushsim", _ => { }, CancellationToken.None));
        using var cancel = new CancellationTokenSource(300);
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        Assert.Equal(130, CommandLineApp.Invoke(["plan", "a", "b", "--quiet", "--out", scratch["out"]], output, output, cancel.Token));
    }

    // By hand, as after a fall of the machine: no process of that number, or another one
    [Theory]
    [InlineData("pid 999999999\nhost {0}\nticks 5\ncommand pushsim run a\n", 0)]
    [InlineData("pid 1\nhost {0}\nticks 987654321987\ncommand pushsim run a\n", 0)]
    [InlineData("pid 77\nhost elsewhere\ncommand pushsim run a\n", 0)]
    [InlineData("", 0)]
    [InlineData("pid 1\nhost {0}\ncommand pushsim run a\n", 4)]
    public void A_lock_of_a_dead_process_is_taken_over(string text, int code)
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch[".out.pushsim-lock"], string.Format(CultureInfo.InvariantCulture, text, Environment.MachineName));
        LockAsk.Patience(0.1);
        Cli run = Cli.Run("plan", "a", "b", "--quiet", "--out", scratch["out"]);
        LockAsk.Patience(null);
        Assert.Equal(code, run.Code);
    }

    // The default folder goes by the source
    [Fact]
    public async Task The_same_source_has_the_same_folder_and_another_of_its_name_a_second_one()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        File.WriteAllText(scratch["short.toml"], FaultCommand.Launch);
        Directory.CreateDirectory(scratch["other/robots"]);
        foreach (string file in new[] { "short.toml", "robots/mole.toml" })
        {
            File.Copy(scratch[file], scratch["other/" + file]);
        }

        File.CreateSymbolicLink(scratch["short-link.toml"], scratch["short.toml"]);
        foreach (string file in new[] { "short.toml", "other/short.toml", "short.toml", "other/short.toml" })
        {
            Assert.Equal(0, ShortMatches.Finish(ShortMatches.Start(scratch, "run", file, "--no-plots", "--quiet")).Code);
        }

        Assert.Equal(["short", "short-2"], Names(scratch["pushsim-out"]));
        await Task.CompletedTask;
        Assert.DoesNotContain(scratch.Path, File.ReadAllText(scratch["pushsim-out/short/.pushsim-output"]));

        // both may move together
        string moved = scratch.Path + " moved";
        Directory.Move(scratch.Path, moved);
        Directory.Move(moved, scratch.Path);
        Assert.Equal(0, ShortMatches.Finish(ShortMatches.Start(scratch, "run", scratch["other/short.toml"], "--no-plots", "--quiet")).Code);
        Assert.Equal(["short", "short-2"], Names(scratch["pushsim-out"]));
    }

    [Fact]
    public void A_command_in_its_own_output_folder_stays_there()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        Directory.CreateDirectory(scratch["here"]);
        for (int i = 0; i < 2; i++)
        {
            var start = new ProcessStartInfo("dotnet", [typeof(CommandLineApp).Assembly.Location, "run", scratch["short.toml"], "--no-plots", "--quiet", "--out", "."]) { WorkingDirectory = scratch["here"], RedirectStandardOutput = true, RedirectStandardError = true };
            start.Environment[ShortMatches.Narrow] = "0";
            (int code, string error) = ShortMatches.Finish(Process.Start(start)!);
            Assert.Equal((0, ""), (code, error));
        }

        Assert.Equal([".pushsim-output", "history.csv"], Names(scratch["here"]));
    }

    // Two renames: after the first one, and with a private folder that is complete or half written
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_swap_that_was_cut_off_is_finished_or_undone(bool isComplete)
    {
        using var scratch = new ScratchFolder();
        string[] run = ["run", s_scenario, "--quiet", "--no-plots", "--out", scratch["out"]];
        Cli.Run(run);
        byte[] history = File.ReadAllBytes(scratch["out/history.csv"]);
        Directory.Move(scratch["out"], scratch[".out.pushsim-old"]);
        if (isComplete)
        {
            Cli.Run(run);
            Directory.Move(scratch["out"], scratch[".out.pushsim-new"]);
            Directory.CreateDirectory(scratch[".out.pushsim-old"]);
        }

        Assert.Equal(0, Cli.Run(run).Code);
        Assert.Equal(["out"], Names(scratch.Path));
        Assert.Equal(history, File.ReadAllBytes(scratch["out/history.csv"]));
    }

    [Theory]
    [InlineData("odds", "--matches", "10", "--part", "3/16")]
    [InlineData("odds", "--matches", "10", "--part", "11/11")]
    public void More_parts_than_matches_are_a_wrong_command_line(string command, params string[] more)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        Cli run = Cli.Run([command, scratch["short.toml"], .. more, "--out", scratch["out"]]);
        Assert.Equal(2, run.Code);
        Assert.Contains("up to 10", run.Error);
    }

    // Twice the same command: the same bytes, page and pictures included
    [Theory]
    [InlineData("run", "launch-soft")]
    [InlineData("limits", "pull-test")]
    [InlineData("odds", "shove-equals", "--matches", "12")]
    public void The_same_command_writes_the_same_bytes(string command, string scenario, params string[] more)
    {
        using var scratch = new ScratchFolder();
        foreach (string folder in new[] { "a", "b" })
        {
            Assert.Equal(0, Cli.Run([command, Repository.Scenario(scenario), .. more, "--report", "--quiet", "--out", scratch[folder]]).Code);
        }

        Assert.Equal(Names(scratch["a"]), Names(scratch["b"]));
        // a journal tells how long its matches took
        Assert.All(Names(scratch["a"]).Where(n => !n.StartsWith("part-", StringComparison.Ordinal)), n => Assert.True(File.ReadAllBytes(scratch["a/" + n]).SequenceEqual(File.ReadAllBytes(scratch["b/" + n])), n));
        Assert.All(Names(scratch["a"]).Where(n => n.EndsWith(".csv", StringComparison.Ordinal) || n.EndsWith(".html", StringComparison.Ordinal)), n => Assert.DoesNotContain("\r", File.ReadAllText(scratch["a/" + n])));
    }

    private static string[] Names(string folder) => [.. Directory.GetFileSystemEntries(folder).Select(e => Path.GetFileName(e)).Order(StringComparer.Ordinal)];
}
