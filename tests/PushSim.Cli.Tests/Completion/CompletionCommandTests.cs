using System.ComponentModel;
using System.Diagnostics;
using System.Text.RegularExpressions;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Completion;

public partial class CompletionCommandTests
{
    private static readonly string[] Commands = ["run", "check", "limits", "fit", "odds", "sweep", "ladder", "cluster", "new", "explain", "shelf", "completion"];

    // an option whose value is a file completes files, whatever its help calls it
    [Theory]
    [InlineData("fit", "--against")]
    [InlineData("fit", "--robot")]
    [InlineData("plan", "--from")]
    public void A_file_is_completed(string command, string option) =>
        Assert.Contains($"from {command}' -l {option[2..]} -r -F", Cli.Run("completion", "fish").Output);

    // every command and option that any help shows must be in every script
    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    [InlineData("powershell")]
    [InlineData("man")]
    public void Scripts_have_all_that_the_help_shows(string shell)
    {
        Cli cli = Cli.Run("completion", shell);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.DoesNotContain("\r", cli.Output);
        string script = cli.Output.Replace("\\-", "-", StringComparison.Ordinal);
        foreach (string command in Commands)
        {
            Assert.Contains(command, script);
            string[] options = [.. Cli.Run(command, "--help").Output.Split('\n').Where(l => l.StartsWith("  --", StringComparison.Ordinal)).Select(l => l.Trim().Split(' ')[0]).Where(o => o != "--help")];
            Assert.Equal(command == "completion", options.Length == 0);
            Assert.All(options.Concat(["--help"]), o => Assert.Contains(shell == "fish" ? $"from {command}' -l {o[2..]}" : o, script));
        }
    }

    // help, scripts and man page come from one tree: what the sources name must be in it
    [Fact]
    public void Every_option_of_the_sources_is_in_the_man_page()
    {
        string man = Cli.Run("completion", "man").Output.Replace("\\-", "-", StringComparison.Ordinal);
        string[] names = [.. Directory.GetFiles(Path.Combine(Repository.Root, "src", "PushSim.Cli"), "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(f => Named().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value)).Distinct()];
        Assert.True(names.Length > 40, $"{names.Length}");
        Assert.All(names, n => Assert.Contains($".B {n}", man));
        Assert.All(new[] { "What:", "How many:", "With whom:", "Files and output:" }, head => Assert.Contains(head, man));
    }

    [Fact]
    public void An_unknown_shell_is_refused_with_the_list()
    {
        Cli cli = Cli.Run("completion", "tcsh");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("powershell", cli.Error);
    }

    [Theory]
    [InlineData("pushsim ''", "run|open|check|limits|compare|fit|plan|odds|sweep|ladder|bench|garage|advise|cluster|new|explain|shelf|completion|--help|--version")]
    [InlineData("pushsim sh", "shelf")]
    [InlineData("pushsim run --no", "--no-plots")]
    [InlineData("pushsim new --kind sp", "spot")]
    [InlineData("pushsim new --tyre PET", "PETG")]
    [InlineData("pushsim new --kind pull-test --f", "--force")]
    [InlineData("pushsim completion f", "fish")]
    [InlineData("pushsim shelf neo", "neoprene|neoprene\\ sponge")]
    [InlineData("pushsim explain rotor", "rotor_inertia")]
    [InlineData("pushsim run my", "my\u00a0own.toml")]
    [InlineData("pushsim check --json my", "my\u00a0own.toml")]
    [InlineData("pushsim fit --unit ''", "")]
    [InlineData("pushsim run --out res", "results")]
    public void Bash_completes_what_it_is_given(string line, string expected)
    {
        using var folder = new ScratchFolder();
        File.WriteAllText(folder["my own.toml"], "");
        File.WriteAllText(folder["results.txt"], "");
        Directory.CreateDirectory(folder["results"]);
        File.WriteAllText(folder["script"], Cli.Run("completion", "bash").Output + $"\nCOMP_WORDS=({line})\nCOMP_CWORD=$(( ${{#COMP_WORDS[@]}} - 1 ))\n_pushsim\nprintf '%s\\n' \"${{COMPREPLY[@]}}\"\n");
        string? answer = Output("bash", folder.Path, "--norc", "script");
        Assert.SkipWhen(answer is null, "no bash here");
        Assert.Equal(expected.Replace('\u00a0', ' '), string.Join('|', answer!.Split('\n', StringSplitOptions.RemoveEmptyEntries)));
    }

    [Theory]
    [InlineData("zsh", "-n")]
    [InlineData("fish", "--no-execute")]
    public void Other_shells_find_no_mistake(string shell, string check)
    {
        using var folder = new ScratchFolder();
        File.WriteAllText(folder["script"], Cli.Run("completion", shell).Output);
        string? answer = Output(shell, folder.Path, check, "script");
        Assert.SkipWhen(answer is null, $"no {shell} here");
        Assert.Equal("", answer);
    }

    [Fact]
    public void The_man_page_formats_without_a_complaint()
    {
        using var folder = new ScratchFolder();
        File.WriteAllText(folder["pushsim.1"], Cli.Run("completion", "man").Output);
        string? page = Output("groff", folder.Path, "-man", "-Tascii", "-P-cbou", "-ww", "pushsim.1");
        Assert.SkipWhen(page is null, "no groff here");
        Assert.DoesNotContain("warning", page);
        Assert.All(new[] { "NAME", "SYNOPSIS", "EXIT STATUS", "pushsim shelf [NAME] [options]", "--rank-tyres", "pushsim new --kind pull-test --out my-robot" }, t => Assert.Contains(t, page));
    }

    // Both outputs of a program; null if it is not on this machine.
    private static string? Output(string program, string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            using Process process = Process.Start(start)!;
            Task<string> errors = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return output + errors.Result;
        }
        catch (Win32Exception)
        {
            return null;
        }
    }

    [GeneratedRegex("(?:new(?: Option<[^>]+>)?|Whole|WholeOrNone)\\(\"(--[a-z-]+)\"")]
    private static partial Regex Named();
}
