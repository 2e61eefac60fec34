using PushSim.Files;
using PushSim.Scenarios.Notebook;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Robots;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Studies;

/// <summary>Reads a whole garage: what is there, and what each thing lacks.</summary>
public static class GarageReader
{
    /// <summary>Reads it.</summary>
    /// <param name="folder">The garage.</param>
    public static GarageContents Read(GarageFolder folder)
    {
        var options = new ReadOptions { Garage = folder.Path };
        var context = new ReadContext(options);
        string shown = GarageFolder.Shown(folder.File);
        TomlTable? tree = Includes.Tree(context, folder.File, shown);
        string name = Path.GetFileName(folder.Path);
        if (tree is not null)
        {
            var root = new Section(context, "garage", tree);
            name = root.Text("name") ?? name;
            _ = root.Text("note");
            ReadPrices(context, root);
        }

        string notebook = NotebookReader.FileOf(folder)!;
        NotebookResult? readings = Disk.Look(notebook) == PushSim.Files.PathKind.File ? NotebookReader.Read(GarageFolder.Shown(notebook)) : null;
        List<(string Robot, string Tyre)> worn = [];
        GarageItem[] robots = [.. folder.Robots().Select(r => Robot(folder, r, options, worn))];
        return new GarageContents
        {
            Folder = folder,
            Name = name,
            Robots = robots,
            Tyres = [.. context.OfGarage("tyre").Select((t, i) => Tyre(options, t, i, readings, worn))],
            Rivals = [.. context.OfGarage("rival").Select((t, i) => Rival(options, t, i))],
            Floors = [.. context.OfGarage("floor").Select((t, i) => Floor(options, t, i))],
            Notebook = readings,
            Problems = [.. context.Problems.Distinct(), .. readings?.Problems ?? []],
        };
    }

    private static void ReadPrices(ReadContext context, Section root)
    {
        foreach (Section s in root.Tables("price"))
        {
            (_, _, _) = (s.Text("part"), s.Number("price"), s.Number("mass"));
        }
    }

    private static GarageItem Robot(GarageFolder folder, string name, ReadOptions options, List<(string Robot, string Tyre)> worn)
    {
        ReadResult read = ScenarioReader.Check(folder.FileOf(name), options);
        if (read.Robot is not { } robot)
        {
            string[] wrong = [.. read.Problems.Where(p => p.Severity == Severity.Error).Select(p => FormattableString.Invariant($"line {p.Line}: {p.Message}"))];
            return new GarageItem(name, read.Scenario is null ? "cannot be read" : "is a scenario, not a robot", wrong) { IsUnusable = true };
        }

        string[] tyres = [.. robot.Wheels.Select(w => w.Tyre.Name).Distinct()];
        worn.AddRange(tyres.Select(t => (name, t)));
        string motors = robot.Drives.Sum(d => d.Motors.Count) is var n && n == 1 ? "1 motor" : FormattableString.Invariant($"{n} motors");
        return new GarageItem(name, FormattableString.Invariant($"{1000.0 * robot.Chassis.Mass:0} g, {robot.Wheels.Count(w => !w.IsSkid)} wheels, {motors}, {(tyres.Length == 1 ? "tyre" : "tyres")} {string.Join(", ", tyres)}"), []);
    }

    private static GarageItem Tyre(ReadOptions options, TomlTable table, int index, NotebookResult? readings, List<(string Robot, string Tyre)> worn)
    {
        var context = new ReadContext(options);
        string name = PartNames.Label(table, index);
        ShelfFill.FillTyre(context, table);
        var section = new Section(context, "tyre", table, name);
        var reader = new TyreReader(section, name);
        string[] wrong = [.. context.Problems.Where(p => p.Severity == Severity.Error).Select(p => p.Message), .. reader.Lacks()];
        int pulls = readings?.Rows.Count(r => r.IsCounted && r.Tyre.Equals(name, StringComparison.OrdinalIgnoreCase)) ?? 0;
        string on = string.Join(", ", worn.Where(w => w.Tyre == name).Select(w => w.Robot).Distinct());
        string?[] about =
        [
            Text(table, "shelf") ?? Text(table, "material"), Text(table, "diameter") is { } d && Text(table, "width") is { } w ? $"{d} x {w}" : Text(table, "diameter") ?? Text(table, "width"),
            Text(table, "made") is { } made ? "made " + made : null, on.Length > 0 ? "on " + on : "on no robot",
        ];
        return new GarageItem(name, string.Join(", ", about.Where(a => a is not null)), pulls == 0 && readings?.IsRead != false ? [.. wrong, "a measured pull"] : wrong) { IsUnusable = wrong.Length > 0, Pulls = pulls };
    }

    private static GarageItem Rival(ReadOptions options, TomlTable table, int index)
    {
        var context = new ReadContext(options);
        TomlTable? tree = GarageRivals.Tree(context, table);
        var robot = tree is null ? null : RobotReader.Read(context, tree);
        string[] wrong = [.. context.Problems.Where(p => p.Severity == Severity.Error).Select(p => p.Message)];
        string[] guessed = [.. new[] { ("wheel_diameter", "wheels"), ("motor", "motors"), ("tyre", "tyres"), ("top_speed", "top speed") }.Where(k => table.Find(k.Item1) is null).Select(k => k.Item2)];
        string about = robot is null ? "cannot be used" : FormattableString.Invariant($"about {1000.0 * robot.Chassis.Mass:0} g, {robot.Wheels.Count(w => !w.IsSkid)} wheels of {2000.0 * robot.Wheels[^1].Radius:0} mm");
        return new GarageItem(PartNames.Label(table, index), about, robot is null ? wrong : guessed.Length > 0 ? ["guessed: " + string.Join(", ", guessed)] : []) { IsUnusable = robot is null };
    }

    private static GarageItem Floor(ReadOptions options, TomlTable table, int index)
    {
        var context = new ReadContext(options);
        string name = PartNames.Label(table, index);
        string? shelf = Text(table, "shelf");
        var section = new Section(context, "floor", table, name);
        double? friction = section.Number("friction");
        double? dust = section.Number("dust");
        string about = string.Join(", ", new[] { shelf, friction is double f ? FormattableString.Invariant($"friction times {f:0.##}") : null, dust is double d ? FormattableString.Invariant($"dust {d:0.##}") : null }.Where(t => t is not null));
        string[] wrong = [.. context.Problems.Where(p => p.Severity == Severity.Error).Select(p => p.Message)];
        return new GarageItem(name, about.Length > 0 ? about : "as the reference floor", wrong) { IsUnusable = wrong.Length > 0 };
    }

    private static string? Text(TomlTable table, string key) => (table.Find(key)?.Value as TomlText)?.Value.Trim();
}
