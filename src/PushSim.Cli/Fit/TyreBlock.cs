using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Analysis.Statistics;
using PushSim.Scenarios.Keys;
using PushSim.Tyres;

namespace PushSim.Cli.Fit;

/// <summary>A tyre table to paste into a robot file: friction as measured, the rest from the robot file or as an estimate.</summary>
internal static class TyreBlock
{
    private const int Digits = 4;

    // Stands in where there is no robot.
    private static readonly TyreSettings Estimate = new()
    {
        Name = "", StaticFriction = 1.0, KineticFriction = 1.0, BodyStiffness = 2500.0, BodyDamping = 2.0, TreadMass = 0.004, VerticalStiffness = 10_000.0,
    };

    private static readonly string[] Body = ["slip_speed", "body_stiffness", "body_damping", "tread_mass", "vertical_stiffness"];

    // What a material has besides friction and stiffness.
    private static readonly string[] Material = ["wear", "tread_area", "dusty_friction", "fouling_distance", "width", "tread_thickness", "density"];

    // Of all other keys, those that come first.
    private static readonly string[] First = ["vertical_damping", "breakaway_deflection", "tread_damping", "elastic_share", "viscous_friction"];

    /// <summary>The table.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="like">The robot's tyre of that name, or the one it replaces; null without a robot.</param>
    /// <param name="wheels">Wheels that share the load of the test [1].</param>
    /// <param name="simulated">The same tyre fitted by simulating its test, if that was asked for.</param>
    public static string Of(TyreFit fit, TyreSettings? like, int wheels, SimulationFit? simulated = null)
    {
        if (fit.Limit.IsInconsistent)
        {
            return $"# {Name(fit.Name)}: no tyre table, the readings are inconsistent with the robot file\n";
        }

        var text = new StringBuilder();
        if (fit.Limit.IsOfMotors)
        {
            text.Append("# the motors set this pull: both frictions are lower bounds\n");
        }

        bool isSame = like is not null && string.Equals(like.Name, fit.Name, StringComparison.OrdinalIgnoreCase);
        if (like is not null)
        {
            AppendOrigin(text, like, isSame);
        }

        text.Append("[[tyre]]\n");
        text.Append(CultureInfo.InvariantCulture, $"name = \"{Name(fit.Name)}\"\n");
        AppendFriction(text, fit, simulated);
        AppendLoad(text, fit, isSame ? like : null, $"a {(wheels == 4 && like is null ? "quarter" : "wheel's share")} of the load of the test", fit.Load / wheels);
        AppendBody(text, like, simulated);
        if (like is not null)
        {
            AppendRest(text, like);
            text.AppendJoin("", isSame ? OfMaterial(like).Select(line => line + "\n") : []);
        }

        return text.ToString();
    }

    private static void AppendFriction(StringBuilder text, TyreFit fit, SimulationFit? simulated)
    {
        (double atRest, double sliding) = fit.ForModel;
        Interval? slid = Told(simulated, "kinetic_friction") ?? fit.KineticFriction;
        Interval? measured = Told(simulated, "static_friction") ?? (fit.IsStaticLowerBound ? null : fit.StaticFriction);
        if (measured is { } a && slid is { } b && a.Value < b.Value)
        {
            // each from another fit: no tyre grips better sliding than standing
            measured = new Interval(b.Value, Math.Min(a.Low, b.Value), Math.Max(a.High, b.Value));
        }

        string bound = measured is null ? "  # at least this: breakaway was not seen" : "";
        string unseen = slid is null ? "  # sliding was not seen" : "";
        text.Append(CultureInfo.InvariantCulture, $"static_friction = {Friction(measured, measured?.Value ?? atRest)}{bound}\n");
        text.Append(CultureInfo.InvariantCulture, $"kinetic_friction = {Friction(slid, slid?.Value ?? sliding)}{unseen}\n");
    }

    // Friction is the fitted one at the load of the test, which on a grooved tread bears on less area
    private static void AppendLoad(StringBuilder text, TyreFit fit, TyreSettings? same, string share, double load)
    {
        double exponent = fit.LoadExponent?.Value ?? same?.LoadExponent ?? 0.0;
        double area = exponent != 0.0 ? same?.TreadArea ?? 1.0 : 1.0;
        text.Append(CultureInfo.InvariantCulture, $"reference_load = \"{load / area:0.###} N\"  # {share}{(area < 1.0 ? ", over tread_area" : "")}\n");
        if (exponent != 0.0 || fit.LoadExponent is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"load_exponent = {exponent:0.###}\n");
        }
    }

    private static void AppendBody(StringBuilder text, TyreSettings? like, SimulationFit? simulated)
    {
        foreach (string name in Body)
        {
            Interval? told = Told(simulated, name);
            if (told is not null || like is not null || name != "slip_speed")
            {
                KeyDefinition key = Key(name);
                string value = told is Interval i
                    ? $"{KeyLine.Value(key, i.Value, Digits)} ± {KeyLine.Value(key, Math.Max(1e-6, 0.5 * (i.High - i.Low)), 2)}"
                    : KeyLine.Value(key, Get(key, like ?? Estimate)!.Value, Digits);
                text.Append($"{name} = {KeyLine.Quoted(key, value)}{(like is null && told is null ? "  # an estimate: give your own" : "")}\n");
            }
        }
    }

    // What the measured friction does not touch stays that of the tyre it was measured on or replaces
    private static void AppendRest(StringBuilder text, TyreSettings like)
    {
        string[] elsewhere = [.. Body, .. Material, .. First];
        IEnumerable<KeyDefinition> rest = KeyTable.In("tyre").Where(k => k.Row<TyreSettings>() is not null && !k.IsFitted && !elsewhere.Contains(k.Name));
        foreach (KeyDefinition key in First.Select(Key).Concat(rest).Where(k => k.Kind != KeyKind.Flag || Get(k, like) != 0.0))
        {
            text.Append(KeyLine.Of(key, like, Digits)).Append('\n');
        }
    }

    private static double? Get(KeyDefinition key, TyreSettings tyre) => key.Row<TyreSettings>()!.Get(tyre);

    private static KeyDefinition Key(string name) => KeyTable.Find("tyre", name)!;

    // The fit's own names carry the unit.
    private static Interval? Told(SimulationFit? simulated, string key) =>
        simulated?.Parameters.FirstOrDefault(p => p.IsTold && (p.Parameter.Key == key || p.Parameter.Key.StartsWith(key + "_", StringComparison.Ordinal)))?.Value;

    private static void AppendOrigin(StringBuilder text, TyreSettings like, bool isSame)
    {
        string name = Name(like.Name);
        text.Append(CultureInfo.InvariantCulture, $"# what was not fitted is that of tyre \"{name}\" in the robot file, without its tolerances and own_share\n");
        if (like.FrictionTable is not null || like.FrictionRise != 0.0)
        {
            text.Append(CultureInfo.InvariantCulture, $"# its {(like.FrictionTable is not null ? "friction_table" : "friction_rise")} is left out: the fitted frictions stand in its place\n");
        }

        if (!isSame && OfMaterial(like) is { Count: > 0 } kept)
        {
            text.Append(CultureInfo.InvariantCulture, $"# not carried over, since it is of the material: {string.Join(", ", kept.Select(line => line[..line.IndexOf(' ', StringComparison.Ordinal)]))}; if this is the same tyre, fit it with --tyre \"{name}\"\n");
        }
    }

    // What differs from a tyre of which nothing is said, as lines of the file
    private static List<string> OfMaterial(TyreSettings t) =>
        [.. Material.Select(Key).Where(k => Get(k, t) != Get(k, Estimate)).Select(k => KeyLine.Of(k, t, Digits)).OfType<string>()];

    private static string Friction(Interval? measured, double value)
    {
        string middle = value.ToString("0.###", CultureInfo.InvariantCulture);
        return measured is { IsBounded: true } i
            ? FormattableString.Invariant($"\"{middle} ± {Math.Max(0.001, 0.5 * (i.High - i.Low)):0.###}\"")
            : middle;
    }

    // No quotation mark, backslash or control character may end up in the file.
    private static string Name(string name) => new([.. name.Select(c => c is '"' or '\\' || char.IsControl(c) ? '_' : c)]);
}
