using System.Text;
using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Analysis.Statistics;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Shelf;
using PushSim.Tyres;

namespace PushSim.Scenarios.Studies;

/// <summary>
/// The tyre table that a fit gives, to paste into a robot file; the same text is read when the tyre is tried on the robot, so that what is told of it is what the pasted
/// table does. Friction is as measured. All else is that of the robot's tyre of that name, else of a material of the shelf, else, as a guess, of the tyre that it
/// replaced; without a robot and a material the table is not whole and says so.
/// </summary>
public sealed class FittedTable
{
    private const int Digits = 4;

    // Assumed of a cover of which nothing is known [as a file writes it].
    private const string UsualWidth = "20 mm";
    private const string UsualThickness = "6 mm";

    // What a guess at an unknown material leaves out: how it wears and fouls, and of what its cover is made.
    private static readonly string[] OfMaterial = ["wear", "tread_area", "dusty_friction", "fouling_distance", "load_exponent", "width", "tread_thickness", "density"];

    private readonly TyreFit _fit;
    private readonly SimulationFit? _simulated;
    private readonly StringBuilder _text = new();

    private FittedTable(TyreFit fit, SimulationFit? simulated) => (_fit, _simulated) = (fit, simulated);

    /// <summary>The table, with remarks; a remark alone where the readings contradict the robot file.</summary>
    public string Text => _text.ToString();

    /// <summary>Whether there is a table to paste.</summary>
    public bool IsWhole { get; private set; }

    /// <summary>Whether it is known what the tyre is made of, so that its stiffness, wear and dust are told and not guessed.</summary>
    public bool IsMaterialKnown { get; private set; }

    /// <summary>The table of a fit.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="read">The robot that it was pulled on, or will be put on, as read; null without one.</param>
    /// <param name="material">Its material on the shelf; null if that is not known.</param>
    /// <param name="simulated">The same tyre fitted by simulating its test, if that was asked for.</param>
    public static FittedTable Of(TyreFit fit, ReadResult? read, ShelfPart? material, SimulationFit? simulated = null)
    {
        var table = new FittedTable(fit, simulated);
        if (fit.Cause.IsInconsistent)
        {
            table._text.Append(CultureInfo.InvariantCulture, $"# {Name(fit.Name)}: no tyre table, the readings are inconsistent with the robot file\n");
            return table;
        }

        table.Write(read, material);
        return table;
    }

    private void Write(ReadResult? read, ShelfPart? material)
    {
        RobotSettings? robot = read?.Robot;
        int[] tested = robot is null ? [] : [.. GripLoad.TestedWheels(robot).DefaultIfEmpty(0)];
        TyreSettings? own = robot?.Wheels.Select(w => w.Tyre).FirstOrDefault(t => string.Equals(t.Name, _fit.Name, StringComparison.OrdinalIgnoreCase));
        TyreSettings? replaced = own ?? (robot is null ? null : robot.Wheels[tested[0]].Tyre);
        IsWhole = robot is not null || material is not null;
        IsMaterialKnown = material is not null || own is not null;
        Remark(own, material, replaced);
        _text.Append(CultureInfo.InvariantCulture, $"[[tyre]]\nname = \"{Name(_fit.Name)}\"\n");
        if (material is not null)
        {
            Line("shelf", $"\"{material.Name}\"");
            Line("width", Cover("width", replaced?.CoverWidth, UsualWidth));
            Line("tread_thickness", Cover("tread_thickness", replaced?.CoverThickness, UsualThickness));
        }

        Frictions();
        double? exponent = _fit.LoadExponent?.Value;
        double area = material is null ? own?.TreadArea ?? 1.0 : material.Find("tread_area")?.Value ?? 1.0;
        bool dependsOnLoad = (exponent ?? (material is null ? own?.LoadExponent : material.Find("load_exponent")?.Value) ?? 0.0) != 0.0;
        ReferenceLoad(_fit.Load / Math.Max(1, robot is null ? 4 : tested.Length), dependsOnLoad ? area : 1.0, robot is null);
        if (exponent is double p)
        {
            Line("load_exponent", FormattableString.Invariant($"{p:0.###}"));
        }

        // an exponent that the pulls did not show stays that of the tyre
        HashSet<string> written = [.. KeyTable.In("tyre").Where(k => k.IsFitted && (k.Name != "load_exponent" || exponent is not null)).Select(k => k.Name), .. Simulated()];
        if (material is null && own is not null)
        {
            Copy(read!, own.Name, written);
        }
        else if (material is null && replaced is not null)
        {
            Guess(replaced, written);
        }
    }

    private void Remark(TyreSettings? own, ShelfPart? material, TyreSettings? replaced)
    {
        if (_fit.Cause.IsLowerBound)
        {
            _text.Append(CultureInfo.InvariantCulture, $"# {(_fit.Cause.IsOfMotors ? "the motors set this pull" : "whether tyre or motors set this pull is not known")}: both frictions are lower bounds; fit --drag tells more\n");
        }

        bool dropsCurve = (own ?? replaced) is { } t && (t.FrictionTable is not null || t.FrictionRise != 0.0);
        _text.Append(material is not null ? $"# friction as measured, all else from the shelf's \"{material.Name}\"\n"
            : own is not null ? $"# friction as measured, all else that of tyre \"{Name(own.Name)}\" of the robot file{(dropsCurve ? ", without its curve of friction against slip" : "")}\n"
            : replaced is not null ? $"# friction as measured; the material is not known: stiffness and damping are those of \"{Name(replaced.Name)}\", a guess,\n# wear and dust are left out. Name it: fit --material NAME (pushsim shelf tyres lists them)\n"
            : "# not whole: neither material nor cover is known. Fit with --material NAME (pushsim shelf tyres lists them) or --robot FILE\n");
    }

    private void Frictions()
    {
        (double atRest, double sliding) = _fit.ForModel;
        Interval? slid = _fit.KineticFriction;
        Interval? measured = _fit.IsStaticLowerBound ? null : _fit.StaticFriction;
        if (measured is { } a && slid is { } b && a.Value < b.Value)
        {
            // each from another fit: no tyre grips better sliding than standing
            measured = new Interval(b.Value, Math.Min(a.Low, b.Value), Math.Max(a.High, b.Value));
        }

        string bound = _fit.Cause.IsLowerBound ? "at least this" : "";
        Line("static_friction", Toleranced(measured, measured?.Value ?? atRest), bound.Length > 0 || measured is not null ? bound : "at least this: breakaway was not seen");
        Line("kinetic_friction", Toleranced(slid, slid?.Value ?? sliding), slid is null ? "sliding was not seen" : bound);
    }

    // A match is one more pull: its friction lies off the mean by the scatter of the pulls, by what the mean is off and by what all pulls have in common.
    private string Toleranced(Interval? measured, double value)
    {
        string middle = value.ToString("0.###", CultureInfo.InvariantCulture);
        int n = _fit.Frictions.Count;
        double share = n > 1 ? Math.Sqrt(Sample.Variance(_fit.Frictions) * (1.0 + (1.0 / n))) / Sample.Mean(_fit.Frictions) : 0.0;
        return measured is { IsBounded: true } i
            ? FormattableString.Invariant($"\"{middle} ± {Math.Max(0.001, Math.Max(0.5 * (i.High - i.Low), double.Hypot(2.0 * share, _fit.CommonOff) * value)):0.###}\"")
            : middle;
    }

    // Friction is the fitted one at the load of the test, which on a grooved tread bears on less area
    private void ReferenceLoad(double load, double area, bool isQuarter) =>
        Line("reference_load", FormattableString.Invariant($"\"{load / area:0.###} N\""), $"a {(isQuarter ? "quarter" : "wheel's share")} of the load of the test{(area < 1.0 ? ", over tread_area" : "")}");

    // What only a simulated test tells; the keys that it gave.
    private IEnumerable<string> Simulated()
    {
        foreach (KeyDefinition key in KeyTable.In("tyre").Where(k => !k.IsFitted))
        {
            if (Told(key.Name) is Interval i)
            {
                Line(key.Name, KeyLine.Quoted(key, $"{KeyLine.Value(key, i.Value, Digits)} ± {KeyLine.Value(key, Math.Max(1e-6, 0.5 * (i.High - i.Low)), 2)}"));
                yield return key.Name;
            }
        }
    }

    // The robot's own tyre as its file has it, tolerances and shelf with it; what the shelf fills in need not be copied
    private void Copy(ReadResult read, string name, HashSet<string> written)
    {
        string path = $"tyre.{SourceFile.Clean(name, 60)}.";
        InputRow[] rows = [.. read.Inputs.Where(i => i.Owner != "opponent" && i.Key.StartsWith(path, StringComparison.Ordinal)).DistinctBy(i => i.Key)];
        InputRow? shelf = Array.Find(rows, r => r.Key == path + "shelf");
        foreach (InputRow row in rows.Where(r => r == shelf || shelf is null || (r.File, r.Line, r.Column) != (shelf.File, shelf.Line, shelf.Column)))
        {
            string key = row.Key[path.Length..];
            if (key != "name" && !written.Contains(key))
            {
                Line(key, IsBare(row.Text) ? row.Text : $"\"{Name(row.Text)}\"");
            }
        }
    }

    private void Guess(TyreSettings like, HashSet<string> written)
    {
        foreach (KeyDefinition key in KeyTable.In("tyre").Where(k => k.Row<TyreSettings>() is not null && !written.Contains(k.Name) && !OfMaterial.Contains(k.Name)))
        {
            if ((key.Kind != KeyKind.Flag || key.Row<TyreSettings>()!.Get(like) != 0.0) && KeyLine.Of(key, like, Digits) is string line)
            {
                _text.Append(line).Append('\n');
            }
        }
    }

    // The fit's own names carry the unit.
    private Interval? Told(string key) =>
        _simulated?.Parameters.FirstOrDefault(p => p.IsTold && (p.Parameter.Key == key || p.Parameter.Key.StartsWith(key + "_", StringComparison.Ordinal)))?.Value;

    private void Line(string key, string value, string remark = "") => _text.Append($"{key} = {value}{(remark.Length > 0 ? "  # " + remark : "")}\n");

    private static string Cover(string key, double? value, string usual) => value is > 0.0
        ? $"\"{KeyLine.Value(KeyTable.Find("tyre", key)!, value.Value, Digits)}\""
        : $"\"{usual}\"  # assumed: give your own";

    private static bool IsBare(string text) => text is "true" or "false" || double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _);

    // No quotation mark, backslash or control character may end up in the file.
    private static string Name(string name) => new([.. name.Select(c => c is '"' or '\\' || char.IsControl(c) ? '_' : c)]);
}
