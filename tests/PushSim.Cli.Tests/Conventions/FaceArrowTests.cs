using System.Text.RegularExpressions;
using Xunit;

namespace PushSim.Cli.Tests.Conventions;

/// <summary>Which folders of the command line, of the plots and of the words may know which, read from the sources.</summary>
public class FaceArrowTests
{
    private const string Commands = "Check|Cluster|Compare|Completion|Explain|Fit|Ladder|Limits|New|Odds|Open|Plan|Run|Shelf|Sweep";

    private const string Answers = "Answers|Turns|Runs|Limits|Fits|Wear|Matches|Sweeps|Plans|Designs";

    // Commands share by Shared and Matches. Three know another one: a drawn match is shown as a run is,
    // a plan reads earlier pulls, completion names the kinds of new.
    private static readonly Dictionary<string, string> s_known = new()
    {
        ["Odds"] = "Run", ["Plan"] = "Fit", ["Completion"] = "New",
    };

    // Terms are the words that many share, Tables what a table is; the others one answer each.
    // Style is letters and colours, Drawing charts and panels, Plots what an answer looks like, Report the page.
    [Theory]
    [InlineData("PushSim.Words", "Terms", "Tables|" + Answers)]
    [InlineData("PushSim.Words", "Tables", Answers)]
    [InlineData("PushSim.Words", "Answers", "Turns|Runs|Limits|Fits|Wear|Matches|Sweeps|Plans|Designs")]
    [InlineData("PushSim.Words", "Turns", "Runs|Limits|Fits|Wear|Matches|Sweeps|Plans|Designs")]
    [InlineData("PushSim.Words", "Runs", "Limits|Fits|Wear|Matches|Sweeps|Plans|Designs")]
    [InlineData("PushSim.Words", "Limits", "Turns|Runs|Fits|Wear|Matches|Sweeps|Plans|Designs")]
    [InlineData("PushSim.Words", "Fits", "Turns|Limits|Matches|Sweeps|Plans|Designs")]
    [InlineData("PushSim.Words", "Wear", "Turns|Limits|Fits|Matches|Sweeps|Plans|Designs")]
    [InlineData("PushSim.Words", "Matches", "Turns|Runs|Limits|Fits|Wear|Sweeps|Plans|Designs")]
    [InlineData("PushSim.Words", "Sweeps", "Turns|Limits|Fits|Wear|Matches|Plans|Designs")]
    [InlineData("PushSim.Words", "Plans", "Turns|Runs|Limits|Fits|Wear|Matches|Sweeps|Designs")]
    [InlineData("PushSim.Words", "Designs", "Turns|Runs|Fits|Wear|Matches|Sweeps|Plans")]
    [InlineData("PushSim.Plotting", "Style", "Svg|Drawing|Plots|Report")]
    [InlineData("PushSim.Plotting", "Svg", "Drawing|Plots|Report")]
    [InlineData("PushSim.Plotting", "Drawing", "Plots|Report")]
    [InlineData("PushSim.Plotting", "Plots", "Report")]
    [InlineData("PushSim.Plotting", "Report", "Plots")]
    [InlineData("PushSim.Workbench", "Wire", "Events|Answers|Designs|Behind|Bench|State|Start|Serving")]
    [InlineData("PushSim.Workbench", "Events", "Answers|Designs|Behind|State|Start|Serving")]
    [InlineData("PushSim.Workbench", "Answers", "Designs|Behind|State|Start|Serving")]
    [InlineData("PushSim.Workbench", "Designs", "Answers|Behind|State|Start|Serving")]
    [InlineData("PushSim.Workbench", "Behind", "State|Start|Serving")]
    [InlineData("PushSim.Workbench", "Bench", "Answers|Behind|State|Start|Serving")]
    [InlineData("PushSim.Workbench", "State", "Start|Serving")]
    [InlineData("PushSim.Workbench", "Start", "Answers|Designs|Behind|State|Serving")]
    [InlineData("PushSim.Cli", "Shared", "Matches|" + Commands)]
    [InlineData("PushSim.Cli", "Matches", Commands)]
    public void Folders_know_only_those_before_them(string project, string folder, string later)
    {
        string[] files = Directory.GetFiles(Path.Combine(Repository.Root, "src", project, folder), "*.cs", SearchOption.AllDirectories);
        Assert.NotEmpty(files);
        Assert.All(later.Split('|'), l => Assert.True(Directory.Exists(Path.Combine(Repository.Root, "src", project, l)), l));
        Regex named = Names(project, later);
        Assert.All(files, f => Assert.DoesNotMatch(named, Code(f)));
    }

    public static TheoryData<string> EachCommand => [.. Commands.Split('|')];

    [Theory]
    [MemberData(nameof(EachCommand))]
    public void A_command_knows_no_other_but_as_stated(string command) => Folders_know_only_those_before_them(
        "PushSim.Cli", command, string.Join('|', Commands.Split('|').Where(c => c != command && c != s_known.GetValueOrDefault(command))));

    // An arrow that is stated and gone would hide the next one.
    [Fact]
    public void What_is_stated_is_so() => Assert.All(s_known, k => Assert.Contains(
        Directory.GetFiles(Path.Combine(Repository.Root, "src", "PushSim.Cli", k.Key), "*.cs"), f => Names("PushSim.Cli", k.Value).IsMatch(Code(f))));

    [Theory]
    [InlineData("PushSim.Cli", "Shared|Matches|" + Commands)]
    [InlineData("PushSim.Words", "Terms|Tables|" + Answers)]
    [InlineData("PushSim.Plotting", "Style|Svg|Drawing|Plots|Report")]
    [InlineData("PushSim.Workbench", "Wire|Events|Answers|Designs|Behind|Bench|State|Start|Serving")]
    public void Every_folder_has_its_row(string project, string rows)
    {
        string[] all = [.. Directory.GetDirectories(Path.Combine(Repository.Root, "src", project)).Where(d => Directory.GetFiles(d, "*.cs").Length > 0).Select(d => Path.GetFileName(d)!)];
        Assert.Equal(rows.Split('|').Order(StringComparer.Ordinal), all.Order(StringComparer.Ordinal));
    }

    // What stands at the top of a project its folders see without a using: nothing but the command line itself may be there.
    [Fact]
    public void Folders_do_not_know_the_top()
    {
        Assert.Empty(Directory.GetFiles(Path.Combine(Repository.Root, "src", "PushSim.Words"), "*.cs"));
        Assert.Empty(Directory.GetFiles(Path.Combine(Repository.Root, "src", "PushSim.Plotting"), "*.cs"));
        string cli = Path.Combine(Repository.Root, "src", "PushSim.Cli");
        string[] top = [.. Directory.GetFiles(cli, "*.cs").Select(f => Path.GetFileNameWithoutExtension(f))];
        Assert.Equal(["CommandLineApp", "CommandLineErrors", "Program", "ShortHelp"], top.Order(StringComparer.Ordinal));
        var named = new Regex($@"\b({string.Join('|', top)})\b");
        foreach (string folder in ("Shared|Matches|" + Commands).Split('|'))
        {
            Assert.All(Directory.GetFiles(Path.Combine(cli, folder), "*.cs"), f => Assert.DoesNotMatch(named, Code(f)));
        }
    }

    // By a using, by the whole name, or by the part of it that a namespace around both leaves over, before a type of that folder.
    private static Regex Names(string project, string folders)
    {
        string[] types = [.. folders.Split('|').SelectMany(f => Directory.GetFiles(Path.Combine(Repository.Root, "src", project, f), "*.cs")).Select(f => Path.GetFileName(f).Split('.')[0])];
        string whole = Regex.Escape(project) + @"\.";
        string part = Regex.Escape(project.Split('.')[1]) + @"\.";
        return new($@"^(global )?using [^;]*{whole}({folders})\b|(?<![\w.])({whole}|{part})?({folders})\.({string.Join('|', types)})\b", RegexOptions.Multiline);
    }

    private static string Code(string file) => Regex.Replace(File.ReadAllText(file), "//.*", string.Empty);
}
