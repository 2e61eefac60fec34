using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Xunit;

namespace PushSim.Cli.Tests.Conventions;

/// <summary>Who may know whom, read from the assemblies.</summary>
public class ArrowTests
{
    [Theory]
    [InlineData("PushSim", "")]
    [InlineData("PushSim.Files", "")]
    [InlineData("PushSim.Scenarios", "PushSim,PushSim.Files")]
    [InlineData("PushSim.Words", "PushSim")]
    [InlineData("PushSim.Plotting", "PushSim,PushSim.Words")]
    [InlineData("PushSim.Workbench", "PushSim,PushSim.Files,PushSim.Words,PushSim.Plotting,PushSim.Scenarios")]
    [InlineData("PushSim.Cli", "PushSim,PushSim.Files,PushSim.Words,PushSim.Plotting,PushSim.Scenarios,PushSim.Workbench")]
    public void Own_references(string assembly, string allowed) =>
        Assert.Subset(new HashSet<string>(allowed.Split(',', StringSplitOptions.RemoveEmptyEntries)), References(assembly, n => n.StartsWith("PushSim", StringComparison.Ordinal)));

    [Theory]
    [InlineData("PushSim", "MathNet.Numerics")]
    [InlineData("PushSim.Scenarios", "Tomlyn,CsvHelper")]
    [InlineData("PushSim.Plotting", "OxyPlot,OxyPlot.SkiaSharp,SkiaSharp")]
    public void Foreign_references(string assembly, string allowed) =>
        Assert.Subset(
            new HashSet<string>(allowed.Split(',')),
            References(assembly, n => !n.StartsWith("PushSim", StringComparison.Ordinal) && !n.StartsWith("System", StringComparison.Ordinal)));

    // Whoever opens a file by himself passes neither gate, and no fault reaches him in the tests.
    [Theory]
    [InlineData("PushSim")]
    [InlineData("PushSim.Scenarios")]
    [InlineData("PushSim.Words")]
    [InlineData("PushSim.Plotting")]
    [InlineData("PushSim.Workbench")]
    [InlineData("PushSim.Cli")]
    public void Only_one_project_touches_files(string project)
    {
        var touch = new Regex(@"(?<![\w.])(File|Directory)\.(Open|Create|Write|Append|Read|Delete|Move|Copy|Replace|Exists|Enumerate|Get|Set|Resolve)|\bnew (FileStream|FileInfo|DirectoryInfo|StreamWriter\(\w*[Pp]ath|StreamReader\(\w*[Pp]ath)\b");
        IEnumerable<string> files = Directory.GetFiles(Path.Combine(Repository.Root, "src", project), "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}"));
        Assert.All(files, f => Assert.DoesNotMatch(touch, Code(File.ReadAllText(f))));
    }

    // Simulation computes, Runs answers what one run says, Analysis asks many runs, or none. A dot is the folder of the project itself, whose types every folder sees.
    [Theory]
    [InlineData("PushSim", "Numerics", "Chassis|Tyres|Powertrain|Surroundings|Contact|Binding|Simulation|Runs|Analysis")]
    [InlineData("PushSim", "Chassis", "Tyres|Powertrain|Surroundings|Contact|Binding|Simulation|Runs|Analysis")]
    [InlineData("PushSim", "Tyres", "Powertrain|Surroundings|Contact|Binding|Simulation|Runs|Analysis")]
    [InlineData("PushSim", "Powertrain", "Chassis|Surroundings|Contact|Binding|Simulation|Runs|Analysis")]
    [InlineData("PushSim", "Surroundings", "Tyres|Powertrain|Contact|Binding|Simulation|Runs|Analysis")]
    [InlineData("PushSim", "Contact", "Powertrain|Surroundings|Binding|Simulation|Runs|Analysis")]
    [InlineData("PushSim", "Binding", "Chassis|Powertrain|Surroundings|Contact|Simulation|Runs|Analysis")]
    [InlineData("PushSim", "Simulation", "Runs|Analysis")]
    [InlineData("PushSim", "Runs", "Analysis")]
    [InlineData("PushSim.Scenarios", "Estimates", "Notebook|Units|Toml|Keys|Shelf|Logs|Reading|Robots|Scenes|Starters|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Sources", "Notebook|Estimates|Units|Toml|Keys|Shelf|Logs|Reading|Robots|Scenes|Starters|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Units", "Notebook|Toml|Keys|Shelf|Logs|Reading|Robots|Scenes|Starters|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Toml", "Notebook|Units|Keys|Shelf|Logs|Reading|Robots|Scenes|Starters|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Keys", "Toml|Shelf|Logs|Reading|Robots|Scenes|Starters|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Shelf", "Notebook|Logs|Reading|Robots|Scenes|Starters|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Bench", "Notebook|Keys|Shelf|Reading|Robots|Scenes|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Notebook", "Bench|Keys|Shelf|Reading|Robots|Scenes|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Logs", "Bench|Notebook|Keys|Shelf|Reading|Robots|Scenes|Starters|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Reading", "Shelf|Logs|Robots|Scenes|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Robots", "Logs|Scenes|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Scenes", "Shelf|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Starters", "Logs|Notebook|Bench|Reading|Robots|Scenes|Drawing|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Drawing", "Shelf|Logs|Studies|Editing|.")]
    [InlineData("PushSim.Scenarios", "Studies", "Editing")]
    [InlineData("PushSim.Scenarios", "Editing", "Shelf|Starters|Logs|Robots|Drawing|Studies|.")]
    public void Folders_know_only_those_before_them(string project, string folder, string later)
    {
        string[] folders = later.Split('|');
        string home = $"{project}.{folder}";
        string names = string.Join('|', folders.Where(f => f != "."));
        string root = Regex.Escape(project);
        var named = new Regex($@"^\s*(global )?using [^;(]*\b{root}\.({names})\b|(?<![\w.])({root}\.)?({names})\.[A-Z]", RegexOptions.Multiline);

        // What a later folder declares in a namespace around this one is seen without any using.
        string[] around = [.. folders.SelectMany(f => Sources(project, f)).Where(s => home.StartsWith($"{Namespace(s.Text)}.", StringComparison.Ordinal)).SelectMany(s => Declared(s.Text))];
        var unseen = new Regex(around.Length == 0 ? "(?!)" : $@"(?<![\w.])({string.Join('|', around)})\b");
        IReadOnlyList<(string File, string Text)> files = Sources(project, folder);
        Assert.NotEmpty(files);
        Assert.All(files, f => Assert.DoesNotMatch(named, f.Text));
        Assert.All(files, f => Assert.DoesNotMatch(unseen, f.Text));
    }

    [Theory]
    [InlineData("PushSim.Scenarios")]
    public void Namespaces_follow_folders(string project)
    {
        IEnumerable<string> folders = Directory.GetDirectories(Path.Combine(Repository.Root, "src", project)).Select(f => Path.GetFileName(f)!).Where(f => f is not ("bin" or "obj"));
        Assert.All(Sources(project, "."), s => Assert.Equal(project, Namespace(s.Text)));
        Assert.All(folders.SelectMany(f => Sources(project, f).Select(s => (Folder: f, s.Text))), s => Assert.StartsWith($"{project}.{s.Folder}", Namespace(s.Text), StringComparison.Ordinal));
    }

    // The code of a folder, of the project's own without those inside, comments and texts taken out; what stands in the holes of a text stays.
    private static IReadOnlyList<(string File, string Text)> Sources(string project, string folder) =>
    [
        .. Directory.GetFiles(Path.Combine(Repository.Root, "src", project, folder), "*.cs", folder == "." ? SearchOption.TopDirectoryOnly : SearchOption.AllDirectories)
            .Select(f => (f, Code(File.ReadAllText(f)))),
    ];

    private static string Code(string text)
    {
        string bare = Regex.Replace(text, @"//.*", string.Empty);
        return Regex.Replace(bare, @"(?<hole>\$?)""(\\.|[^""\\\n])*""", m => m.Groups["hole"].Length == 0 ? "\"\"" : string.Concat(Regex.Matches(m.Value, @"\{[^{}]*\}").Select(h => h.Value)));
    }

    private static string Namespace(string text) => Regex.Match(text, @"^namespace ([\w.]+)", RegexOptions.Multiline).Groups[1].Value;

    private static IEnumerable<string> Declared(string text) =>
        Regex.Matches(text, @"\b(?:class|record struct|record class|record|struct|enum|interface) ([A-Z]\w*)").Select(m => m.Groups[1].Value);

    // What a project uses everywhere, each of its folders knows without saying so: of its own it may be only what no row forbids.
    [Theory]
    [InlineData("PushSim")]
    [InlineData("PushSim.Scenarios")]
    [InlineData("PushSim.Words")]
    [InlineData("PushSim.Plotting")]
    [InlineData("PushSim.Workbench")]
    [InlineData("PushSim.Cli")]
    public void What_is_used_everywhere_every_folder_may_know(string project)
    {
        string folder = Path.Combine(Repository.Root, "src", project);
        string[] forbidden =
        [
            .. new[] { typeof(ArrowTests), typeof(FaceArrowTests) }.SelectMany(t => t.GetMethod(nameof(Folders_know_only_those_before_them))!.GetCustomAttributesData())
                .Where(a => a.AttributeType == typeof(InlineDataAttribute)).Select(a => ((IEnumerable<CustomAttributeTypedArgument>)a.ConstructorArguments[0].Value!).Select(v => (string)v.Value!).ToArray())
                .Where(row => row[0] == project).SelectMany(row => row[2].Split('|')),
        ];
        string[] everywhere =
        [
            .. XDocument.Load(Path.Combine(folder, project + ".csproj")).Descendants("Using").Select(u => (string)u.Attribute("Include")!)
                .Where(n => n.StartsWith(project + ".", StringComparison.Ordinal)).Select(n => n[(project.Length + 1)..].Split('.')[0]),
        ];
        Assert.NotEmpty(forbidden);
        Assert.NotEmpty(everywhere);
        Assert.Empty(everywhere.Intersect(forbidden));
        IEnumerable<string> files = Directory.GetFiles(folder, "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}"));
        Assert.All(files, f => Assert.DoesNotContain("global using ", File.ReadAllText(f), StringComparison.Ordinal));
    }

    // What a reader reads is formed in Words. Left is what exceptions say; labels of a trace, heads of kept files and names of parts are no sentences.
    [Fact]
    public void The_engine_forms_no_sentences()
    {
        string engine = Path.Combine(Repository.Root, "src", "PushSim");
        string[] left = ["StaticState.cs", "MatchTable.cs", "JournalHead.cs", "JournalClosing.cs", "SelfTestScenes.cs"];
        var sentence = new Regex("\"[^\"]*[a-z]+ [^\" ]+ [^\" ]+ [^\"]*\"");
        IEnumerable<string> files = Directory.GetFiles(engine, "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}") && !f.Contains("Trace") && !left.Contains(Path.GetFileName(f)));
        Assert.All(files, f => Assert.DoesNotContain(File.ReadLines(f), l => sentence.IsMatch(Regex.Replace(l, "//.*", string.Empty)) && !l.Contains("throw new") && !l.Contains("Philox")));
    }

    private static HashSet<string> References(string assembly, Func<string, bool> counts) =>
        [.. Assembly.Load(assembly).GetReferencedAssemblies().Select(a => a.Name!).Where(counts)];
}
