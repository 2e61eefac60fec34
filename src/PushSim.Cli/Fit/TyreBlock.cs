using System.Globalization;
using System.Text;
using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Analysis.Statistics;
using PushSim.Tyres;
using PushSim.Words.Terms;

namespace PushSim.Cli.Fit;

/// <summary>A tyre table to paste into a robot file: friction as measured, the rest from the robot file or as an estimate.</summary>
internal static class TyreBlock
{
    // Volume that a wear of 1 m^3/(N m) takes off in the standard drum test, 10 N over 40 m [N m].
    private const double DrumWork = 400.0;

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
        double area = exponent != 0.0 ? same?.TreadAreaFraction ?? 1.0 : 1.0;
        text.Append(CultureInfo.InvariantCulture, $"reference_load = \"{load / area:0.###} N\"  # {share}{(area < 1.0 ? ", over tread_area" : "")}\n");
        if (exponent != 0.0 || fit.LoadExponent is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"load_exponent = {exponent:0.###}\n");
        }
    }

    private static void AppendBody(StringBuilder text, TyreSettings? like, SimulationFit? simulated)
    {
        string origin = like is null ? "  # an estimate: give your own" : "";
        Interval? slipSpeed = Told(simulated, "slip_speed_m_per_s");
        if (slipSpeed is not null || like is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"slip_speed = {Measured(slipSpeed, like?.SlipSpeed ?? 0.0, "m/s", "")}\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"body_stiffness = {Measured(Told(simulated, "body_stiffness_n_per_m"), like?.CarcassStiffness ?? 2500.0, "N/m", origin)}\n");
        text.Append(CultureInfo.InvariantCulture, $"body_damping = {Measured(Told(simulated, "body_damping_n_s_per_m"), like?.CarcassDamping ?? 2.0, "N s/m", origin)}\n");
        text.Append(CultureInfo.InvariantCulture, $"tread_mass = \"{FourDigits(1e3 * (like?.TreadMass ?? 0.004))} g\"{origin}\n");
        text.Append(CultureInfo.InvariantCulture, $"vertical_stiffness = \"{FourDigits(like?.VerticalStiffness ?? 10_000.0)} N/m\"{origin}\n");
    }

    // What the measured friction does not touch stays that of the tyre it was measured on or replaces
    private static void AppendRest(StringBuilder text, TyreSettings like)
    {
        text.Append(CultureInfo.InvariantCulture, $"vertical_damping = \"{FourDigits(like.VerticalDamping)} s/m\"\n");
        text.Append(CultureInfo.InvariantCulture, $"breakaway_deflection = \"{FourDigits(1e3 * like.BreakawayDeflection)} mm\"\n");
        text.Append(CultureInfo.InvariantCulture, $"tread_damping = {FourDigits(like.BristleDampingRatio)}\n");
        text.Append(CultureInfo.InvariantCulture, $"elastic_share = {FourDigits(like.ElasticShare)}\n");
        text.Append(CultureInfo.InvariantCulture, $"viscous_friction = \"{FourDigits(like.ViscousFriction)} s/m\"\n");
        text.Append(like.PlainBristle ? "plain_friction = true\n" : "");
        text.Append(CultureInfo.InvariantCulture, $"rolling_renewal = \"{FourDigits(like.RollingRenewal)} 1/m\"\n");
        text.Append(CultureInfo.InvariantCulture, $"rolling_resistance = {FourDigits(like.RollingResistance)}\n");
    }

    private static Interval? Told(SimulationFit? simulated, string key) => simulated?.Parameters.FirstOrDefault(p => p.IsTold && p.Parameter.Key == key)?.Value;

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

    // What a material has besides friction and stiffness, as lines of the file
    private static List<string> OfMaterial(TyreSettings t)
    {
        (string Key, double? Value, string Unit)[] rows =
        [
            ("wear", t.SpecificWear > 0.0 ? 1e9 * DrumWork * t.SpecificWear : null, " mm3"),
            ("tread_area", t.TreadAreaFraction < 1.0 ? 100.0 * t.TreadAreaFraction : null, " %"),
            ("dusty_friction", t.DustyFrictionRatio != 1.0 ? 100.0 * t.DustyFrictionRatio : null, " %"),
            ("fouling_distance", t.FoulingDistance > 0.0 ? t.FoulingDistance : null, " m"),
            ("width", 1e3 * t.CoverWidth, " mm"),
            ("tread_thickness", 1e3 * t.CoverThickness, " mm"),
            ("density", 1e-3 * t.CoverDensity, " g/cm3"),
        ];
        return [.. rows.Where(r => r.Value is not null).Select(r => $"{r.Key} = \"{FourDigits(r.Value!.Value)}{r.Unit}\"")];
    }

    private static string Measured(Interval? told, double otherwise, string unit, string origin) => told is Interval i
        ? FormattableString.Invariant($"\"{FourDigits(i.Value)} {unit} ± {Short(0.5 * (i.High - i.Low))} {unit}\"")
        : FormattableString.Invariant($"\"{FourDigits(otherwise)} {unit}\"{origin}");

    // four digits, from a thousand on whole
    private static string FourDigits(double value) => value >= 1000.0 ? value.ToString("0", CultureInfo.InvariantCulture) : PlainNumber.Of(value, 4);

    // two digits, from ten on whole
    private static string Short(double value) => value >= 10.0 ? value.ToString("0", CultureInfo.InvariantCulture) : PlainNumber.Of(Math.Max(1e-6, value), 2);

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
