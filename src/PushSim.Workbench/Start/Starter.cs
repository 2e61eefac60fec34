using PushSim.Files;
using PushSim.Scenarios.Editing;
using PushSim.Scenarios.Shelf;

namespace PushSim.Workbench.Start;

/// <summary>"My robot from what I can measure": a starter by mass, wheels, motor and tyre, then every measured value put into its text.</summary>
/// <param name="folder">The folder that is served.</param>
/// <param name="files">Makes the files of a starter, the scenario first, of mass, wheels, motor and tyre; the text says what is wrong, else empty.</param>
internal sealed class Starter(HomeFolder folder, Func<StarterAsk, (IReadOnlyList<(string Name, string Text)> Files, string Wrong)> files)
{
    private const string Robot = "robot.toml";

    /// <summary>The form.</summary>
    public static IReadOnlyList<RowMessage> Rows { get; } =
    [
        Row("name", "name of the robot", "my robot", "Letters, digits, blanks: its folder is called so."),
        Row("kind", "what it does", "shove", "Shove against a robot like it, pull on a load cell, drive off, turn on the spot.", "shove", "pull-test", "launch", "spot"),
        Row("mass", "mass of the whole robot", "1.2 kg", "Ready to drive, on a kitchen scale."),
        Row("wheels", "number of wheels", "4", "Two wheels have a ball in front.", "2", "4", "6", "8"),
        Row("motor", "motor or its class", "25 mm", "A motor of the shelf, or its class by its diameter.", [.. PartShelf.Motors.Parts.Select(p => p.Name)]),
        Row("tyre", "tyre material", "", "A material of the shelf; empty takes a usual one.", [.. PartShelf.Tyres.Parts.Select(p => p.Name)]),
        Row("wheel_diameter", "wheel diameter", "", "Empty: as is usual for its mass."),
        Row("tyre_width", "tyre width", "", "Empty: as is usual for its mass."),
        Row("wheelbase", "front axle to rear axle", "", "Empty: as is usual for its mass."),
        Row("track", "left wheels to right wheels", "", "Middle of the tread to middle of the tread. Empty: as is usual for its mass."),
        Row("cells", "cells of the pack in series", "", "3 of a 3S pack. Empty: as the motor needs."),
        Row("front_weight", "weight under the front wheels", "", "On a kitchen scale, the rear wheels on a book as high as the scale. Empty: balanced."),
        Row("rear_weight", "weight under the rear wheels", "", "The same for the rear wheels."),
    ];

    /// <summary>Writes the starter.</summary>
    /// <param name="rows">What the page's form says.</param>
    /// <param name="wrong">What is wrong; empty if nothing is.</param>
    /// <param name="key">The row that it is about; empty if it is about none.</param>
    /// <returns>Path of its scenario from the folder; null if something is wrong.</returns>
    public string? Write(IReadOnlyDictionary<string, string> rows, out string wrong, out string key)
    {
        key = "";
        string Of(string key) => rows.TryGetValue(key, out string? text) ? text.Trim() : "";
        string name = string.Concat(Of("name").Where(c => char.IsLetterOrDigit(c) || c is ' ' or '-' or '_')).Trim();
        name = name.Length is 0 or > 60 ? "my robot" : name;
        var ask = new StarterAsk(Of("kind"), Of("mass"), Of("wheels"), Of("motor"), Of("tyre"));
        (IReadOnlyList<(string Name, string Text)> made, wrong) = files(ask);
        if (wrong.Length > 0)
        {
            key = Culprit(ask);
            return null;
        }

        string below = name.Replace(' ', '-');
        string target = Path.Combine(folder.Real, below);
        if (Disk.Look(target) != FileKind.None)
        {
            (wrong, key) = ($"{below} is there already; give the robot another name", "name");
            return null;
        }

        Disk.MakeFolders(target);
        foreach ((string file, string text) in made)
        {
            Put(Path.Combine(target, file), text);
        }

        // the measured values, each into the text that the one before it gave
        string robot = Path.Combine(target, Robot);
        string now = made.First(f => f.Name == Robot).Text;
        foreach ((string path, string row, Func<EditRow, double> sign, string value) in Values(Of))
        {
            if (Set(robot, ref now, path, sign, value) is string bad)
            {
                (wrong, key) = (bad, row);
                break;
            }
        }

        if (wrong.Length > 0)
        {
            // nothing half made stays
            foreach ((string file, string _) in made)
            {
                Disk.Delete(Path.Combine(target, file));
            }

            Disk.DeleteFolder(target);
            return null;
        }

        WriteGate.Replace(robot, s => s.Write(Encoding.UTF8.GetBytes(now)));
        return Path.Combine(below, made[0].Name);
    }

    // the answer that is wrong by itself, with all others left open
    private string Culprit(StarterAsk ask)
    {
        var open = new StarterAsk("shove", "", "", "", "");
        (string Key, StarterAsk Alone)[] each = [("kind", open with { Kind = ask.Kind }), ("mass", open with { Mass = ask.Mass }), ("wheels", open with { Wheels = ask.Wheels }), ("motor", open with { Motor = ask.Motor }), ("tyre", open with { Tyre = ask.Tyre })];
        return each.FirstOrDefault(e => files(e.Alone).Wrong.Length > 0).Key ?? "";
    }

    private static IEnumerable<(string Path, string Row, Func<EditRow, double> Sign, string Value)> Values(Func<string, string> of)
    {
        (string Path, string Key, double Factor)[] all =
        [
            ("wheel.*.diameter", "wheel_diameter", 1.0), ("tyre.cover.width", "tyre_width", 1.0), ("wheel.*.x", "wheelbase", 0.5), ("wheel.*.y", "track", 0.5), ("battery.cells", "cells", 1.0),
            ("chassis.front_scale_weight", "front_weight", 1.0), ("chassis.rear_scale_weight", "rear_weight", 1.0),
        ];
        return all.Where(a => of(a.Key).Length > 0).Select(a => (a.Path, a.Key, (Func<EditRow, double>)(r => a.Factor == 1.0 ? 1.0 : a.Factor * Math.Sign(r.Value ?? 0.0)), of(a.Key)));
    }

    // one value, or that of every wheel
    private static string? Set(string file, ref string text, string path, Func<EditRow, double> sign, string value)
    {
        string[] ends = path.Split(".*.");
        ReadResult read = ScenarioReader.Check(file, Options(file, text));
        string[] keys = ends.Length == 1 ? [path] : [.. EditRows.Of(read).Select(r => r.Path).Where(p => p.StartsWith(ends[0] + ".", StringComparison.Ordinal) && p.EndsWith("." + ends[1], StringComparison.Ordinal) && !p.Contains("ball", StringComparison.Ordinal))];
        foreach (string key in keys)
        {
            EditRow? row = EditRows.Of(read).FirstOrDefault(r => r.Path == key);
            double factor = row is null ? 1.0 : sign(row);
            string written = factor == 1.0 ? value : Scaled(value, factor);
            string? next = row is { Line: > 0 } ? EditText.Replace(text, row.Line, row.Column, row.Definition, written) : null;
            int dot = key.LastIndexOf('.');
            next ??= EditRows.Definition("robot", key) is { } definition ? EditText.Insert(text, definition.Section, key.Length > definition.Section.Length + 1 + definition.Name.Length ? key[(definition.Section.Length + 1)..dot] : "", definition.Name, definition, written) : null;
            if (next is null)
            {
                return "cannot be put into the file";
            }

            ReadResult after = ScenarioReader.Check(file, Options(file, next));
            if (after.Problems.FirstOrDefault(p => p.Severity == Severity.Error && read.Problems.All(o => o.Message != p.Message)) is { } problem && !key.EndsWith("front_scale_weight", StringComparison.Ordinal))
            {
                return problem.Message;
            }

            (text, read) = (next, after);
        }

        return null;
    }

    private static ReadOptions Options(string file, string text) => new() { Texts = new Dictionary<string, string> { [RealPath.Of(file)] = text } };

    // half of "110 mm" to the other side is "-55 mm"
    private static string Scaled(string text, double factor)
    {
        int end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '.' or '-' or '+'))
        {
            end++;
        }

        return double.TryParse(text[..end], NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? PushSim.Numerics.PlainNumber.Of(factor * number, 6) + text[end..] : text;
    }

    private static void Put(string path, string text) => WriteGate.Create(path, s => s.Write(Encoding.UTF8.GetBytes(text)));

    private static RowMessage Row(string key, string words, string text, string explain, params string[] choices) =>
        new() { Key = key, Words = words, Text = text, Explain = explain, Choices = choices.Length > 0 ? choices : null, Source = new SourceMessage("default", "", "", 0) };
}
