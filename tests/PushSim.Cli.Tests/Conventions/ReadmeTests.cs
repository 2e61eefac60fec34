using System.Diagnostics;
using System.Text.RegularExpressions;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Conventions;

/// <summary>Every command of the README does what it says; the test command is the one that runs this.</summary>
public partial class ReadmeTests
{
    private const string Prefix = "dotnet run --project src/PushSim.Cli -c Release -- ";

    private const string Walk = "my-garage";

    // Of one picture [byte].
    private const long MostBytes = 400_000;

    private static readonly string[] Pages = ["README.md", "src/docs/questions.md"];

    private static IEnumerable<string> All => Pages.SelectMany(p => Command().Matches(Repository.Page(p)).Select(m => m.Groups[1].Value.Trim()));

    public static TheoryData<string> Commands() => [.. All.Where(c => !c.Contains(Walk, StringComparison.Ordinal)).Distinct()];

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task A_command_of_the_readme_works(string command)
    {
        using var scratch = new ScratchFolder();
        string[] words = [.. Words(command).Select(w => w.StartsWith("scenarios/", StringComparison.Ordinal) ? Path.Combine(Repository.Root, w) : w)];
        string[] args = words[0] is "run" or "new" or "limits" or "fit" or "odds" or "sweep" or "ladder" or "plan" or "advise" ? [.. words, "--out", scratch["out"]] : words;
        if (words[0] == "open")
        {
            await Opens(words);
            return;
        }

        bool isOfShipped = words is ["run", _] && Path.GetDirectoryName(words[1]) == Path.Combine(Repository.Root, "scenarios");
        Cli cli = isOfShipped ? Shipped.Text(Path.GetFileNameWithoutExtension(words[1])).Cli : Cli.Run(args);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.NotEqual("", cli.Output);
        if (words[0] == "run")
        {
            string named = Assert.Single(cli.Output.Split('\n'), l => l.StartsWith("picture: ", StringComparison.Ordinal) || l.StartsWith("page: ", StringComparison.Ordinal));
            Assert.True(File.Exists(named[(named.IndexOf(' ', StringComparison.Ordinal) + 1)..].Trim()));
        }
    }

    // a program of its own, whose first line is its address
    private static async Task Opens(string[] words)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(CommandLineApp).Assembly.Location, .. words, "--no-browser"]) { WorkingDirectory = Repository.Root, RedirectStandardOutput = true };
        using Process process = Process.Start(start)!;
        try
        {
            string line = await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) ?? "";
            Assert.Matches(@"^http://127\.0\.0\.1:\d+/\?token=\w+$", line);
            using var client = new HttpClient();
            string page = await client.GetStringAsync(new Uri(line), TestContext.Current.CancellationToken);
            Assert.Contains("<title>PushSim", page, StringComparison.Ordinal);
        }
        finally
        {
            process.Kill();
        }
    }

    // one after the other in one folder, as a person does it, with an edit of the robot between
    [Fact]
    public void The_walk_to_a_garage_works()
    {
        using var scratch = new ScratchFolder();
        string[] commands = [.. All.Where(c => c.Contains(Walk, StringComparison.Ordinal))];
        Assert.Equal(["garage", "garage", "check", "limits", "run", "odds", "advise", "garage"], commands.Select(c => c.Split(' ')[0]));
        foreach (string command in commands)
        {
            Cli cli = Cli.Run([.. Words(command).Select(w => w.StartsWith(Walk, StringComparison.Ordinal) ? scratch[w] : w)]);
            Assert.True(cli.Code == ExitCode.Done, command + "\n" + cli.Error);
            if (command.StartsWith("garage new", StringComparison.Ordinal))
            {
                string robot = File.ReadAllText(scratch[Walk + "/robots/mole.toml"]);
                Assert.Contains("\"1360 g ± 10 g\"", robot);
                File.WriteAllText(scratch[Walk + "/robots/mole.toml"], robot.Replace("name = \"mole\"", "name = \"mine\"", StringComparison.Ordinal).Replace("\"1360 g ± 10 g\"", "\"1353 g ± 2 g\"", StringComparison.Ordinal));
            }
        }

        Assert.Contains("mine", File.ReadAllText(scratch[Walk + "/shove/report.html"]));
    }

    [Fact]
    public void All_other_commands_are_the_test_command()
    {
        string[] others = [.. Regex.Matches(Repository.Page("README.md"), "^    (dotnet .*)$", RegexOptions.Multiline).Select(m => m.Groups[1].Value.Trim())
            .Where(c => !c.StartsWith(Prefix, StringComparison.Ordinal))];
        Assert.Equal(["dotnet test -c Release", .. InstallTests.Commands], others);
        Assert.Contains("dotnet test -c Release", Repository.Page(".ci/run"));
    }

    // every clone carries what lies there
    [Fact]
    public void The_folder_of_pictures_holds_what_pages_show_and_no_more()
    {
        string[] pages = [Path.Combine(Repository.Root, "README.md"), .. Directory.GetFiles(Path.Combine(Repository.Root, "src", "docs"), "*.md")];
        string[] shown = [.. pages.SelectMany(p => Regex.Matches(File.ReadAllText(p), @"\]\((?:\.\./)*plots/([^)]+)\)")).Select(m => m.Groups[1].Value).Distinct().Order(StringComparer.Ordinal)];
        FileInfo[] kept = [.. new DirectoryInfo(Path.Combine(Repository.Root, "plots")).GetFiles().Where(f => f.Name != "remake.sh")];
        Assert.Equal(shown, kept.Select(f => f.Name).Order(StringComparer.Ordinal));
        Assert.All(kept, f => Assert.InRange(f.Length, 1, MostBytes));
        string script = File.ReadAllText(Path.Combine(Repository.Root, "plots", "remake.sh"));
        Assert.All(kept, f => Assert.Contains($"\npicture {Path.GetFileNameWithoutExtension(f.Name)} ", script));
    }

    // a star outside quotes is a pattern of file names to some shells, and an error where no file fits
    private static IEnumerable<string> Words(string command)
    {
        Assert.All(command.Split(' '), w => Assert.True(!w.Contains('*') || (w.StartsWith('"') && w.EndsWith('"')), w));
        return command.Split(' ').Select(w => w.Trim('"'));
    }

    [GeneratedRegex("^ {4,}(?:dotnet run --project src/PushSim\\.Cli -c Release -- |pushsim )([^\\n]+)$", RegexOptions.Multiline)]
    private static partial Regex Command();
}
