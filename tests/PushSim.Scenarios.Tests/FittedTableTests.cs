using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Studies;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>The tyre table of a fit is what the fit itself puts on the robot: pasted, it gives the same robot and the same draws.</summary>
public partial class FittedTableTests
{
    private static readonly string s_robots = Path.Combine(Folder(), "robots");

    public static TheoryData<string> Materials => [.. PartShelf.Tyres.Parts.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Materials))]
    public void A_pasted_material_of_the_shelf_is_the_tyre_that_was_tried(string material) => Compare("tested", material, isKnown: true);

    [Fact]
    public void The_robots_own_tyre_pastes_with_its_tolerances() => Compare("soft", null, isKnown: true);

    [Fact]
    public void A_tyre_of_unknown_material_pastes_as_it_was_guessed() => Compare("tested", null, isKnown: false);

    [Fact]
    public void Without_robot_and_material_the_table_says_that_it_is_not_whole()
    {
        using var folder = new Readings("tested", null);
        FittedTable table = Assert.Single(LogFit.Of(new FitRequest { Files = [folder.Path], Load = 10.0 }).Tables);
        Assert.Contains("not whole", table.Text);
        Assert.DoesNotContain("stiffness", table.Text);
        Assert.False(table.IsWhole);
    }

    [Fact]
    public void A_column_names_the_material_and_a_wrong_one_is_told()
    {
        using var right = new Readings("tested", "silicone");
        Assert.Contains("shelf = ", Assert.Single(LogFit.Of(new FitRequest { Files = [right.Path], Load = 10.0 }).Tables).Text);
        using var wrong = new Readings("tested", "cheese");
        Assert.Contains(LogFit.Of(new FitRequest { Files = [wrong.Path], Load = 10.0 }).Problems, p => p.Severity == Severity.Warning && p.Message.Contains("cheese", StringComparison.Ordinal));
        Assert.Contains(LogFit.Of(new FitRequest { Files = [right.Path], Load = 10.0, Material = "cheese" }).Problems, p => p.Severity == Severity.Error);
    }

    private static void Compare(string tyre, string? material, bool isKnown)
    {
        string robot = Path.Combine(s_robots, "mole.toml");
        using var readings = new Readings(tyre, null);
        FitResult fit = LogFit.Of(new FitRequest { Files = [readings.Path], RobotFile = robot, Material = material });
        FittedTable table = Assert.Single(fit.Tables);
        Assert.True(table.IsWhole);
        Assert.Equal(isKnown, table.IsMaterialKnown);
        string pasted = Path.Combine(readings.Folder, "pasted.toml");
        File.WriteAllText(pasted, OldTyre().Replace(File.ReadAllText(robot), table.Text, 1).Replace("tyre = \"soft\"", $"tyre = \"{tyre}\"", StringComparison.Ordinal));
        var tried = new ReadOptions { Tyre = new TyreChange(table.Text, [.. fit.Robot!.Wheels.Select(w => w.Name)]) };
        Assert.DoesNotContain(ScenarioReader.Check(pasted).Problems, p => p.Severity == Severity.Error);
        Assert.Equal(Text(ScenarioReader.Check(pasted).Robot!), Text(ScenarioReader.Check(robot, tried).Robot!));
        string opponent = Path.Combine(s_robots, "wombat.toml");
        Assert.Equal(Drawn(DrawableScenario.OfPair(pasted, opponent)), Drawn(DrawableScenario.OfPair(robot, opponent, options: tried)));
    }

    private static string Drawn(DrawableResult read) =>
        string.Join('\n', read.Scenario!.Values.Select(v => $"{v.Key} {v.Part} {v.Middle:R} {v.Tolerance:R} {v.Spread}").Order(StringComparer.Ordinal));

    // every number and text of the settings, to the last digit
    private static string Text(RobotSettings s) => JsonSerializer.Serialize(s, new JsonSerializerOptions { IncludeFields = true, NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals });

    private static string Folder()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "PushSim.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return Path.Combine(folder!, "scenarios");
    }

    [GeneratedRegex(@"\[\[tyre\]\]\n(?:.+\n)+")]
    private static partial Regex OldTyre();

    // Six invented pulls of a robot of 1.36 kg
    private sealed class Readings : IDisposable
    {
        public Readings(string tyre, string? material)
        {
            Folder = Directory.CreateTempSubdirectory("pushsim-").FullName;
            Path = System.IO.Path.Combine(Folder, "readings.csv");
            string rows = string.Concat(new[] { 12.1, 12.4, 11.9, 12.2, 12.0, 12.3 }.Select(f => FormattableString.Invariant($"{tyre},{material},{f + 2.0},{f}\n")));
            File.WriteAllText(Path, $"tyre,{(material is null ? "note" : "material")},peak [N],force [N]\n" + rows);
        }

        public string Folder { get; }

        public string Path { get; }

        public void Dispose() => Directory.Delete(Folder, recursive: true);
    }
}
