using System.Globalization;
using System.Text;
using PushSim.Analysis;
using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Analysis.Statistics;
using PushSim.Tyres;

namespace PushSim.Cli;

/// <summary>A tyre table to paste into a robot file: friction as measured, the rest from the robot file or as an estimate.</summary>
internal static class TyreBlock
{
    public static string Of(TyreFit fit, TyreSettings? like, int wheels, SimulationFit? simulated = null)
    {
        if (fit.Limit.IsInconsistent)
        {
            return $"# {Name(fit.Name)}: no tyre table, the readings are inconsistent with the robot file\n";
        }

        var text = new StringBuilder();
        if (fit.Limit.By == PullLimitedBy.Motors)
        {
            text.Append("# the motors set this pull: both frictions are lower bounds\n");
        }

        (double atRest, double sliding) = fit.ForModel;
        text.Append("[[tyre]]\n");
        text.Append(CultureInfo.InvariantCulture, $"name = \"{Name(fit.Name)}\"\n");
        Interval? Told(string key) => simulated?.Parameters.FirstOrDefault(p => p.IsTold && p.Parameter.Key == key)?.Value;
        Interval? measured = Told("static_friction") ?? (fit.IsStaticLowerBound ? null : fit.StaticFriction);
        if (measured is { } a && (Told("kinetic_friction") ?? fit.KineticFriction) is { } b && a.Value < b.Value)
        {
            // each from another fit: no tyre grips better sliding than standing
            measured = new Interval(b.Value, Math.Min(a.Low, b.Value), Math.Max(a.High, b.Value));
        }

        string bound = measured is null ? "  # at least this: breakaway was not seen" : "";
        text.Append(CultureInfo.InvariantCulture, $"static_friction = {Friction(measured, measured?.Value ?? atRest)}{bound}\n");
        Interval? slid = Told("kinetic_friction") ?? fit.KineticFriction;
        string unseen = slid is null ? "  # sliding was not seen" : "";
        text.Append(CultureInfo.InvariantCulture, $"kinetic_friction = {Friction(slid, slid?.Value ?? sliding)}{unseen}\n");
        text.Append(CultureInfo.InvariantCulture, $"reference_load = \"{fit.Load / wheels:0.###} N\"  # a {(wheels == 4 && like is null ? "quarter" : "wheel's share")} of the load of the test\n");
        if (fit.LoadExponent is Interval exponent)
        {
            text.Append(CultureInfo.InvariantCulture, $"load_exponent = {exponent.Value:0.###}\n");
        }

        string origin = like is null ? "  # an estimate: give your own" : "";
        if (Told("slip_speed_m_per_s") is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"slip_speed = {Measured(Told("slip_speed_m_per_s"), 0.0, "m/s", "")}\n");
        }
        else if (like is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"slip_speed = \"{FourDigits(like.SlipSpeed)} m/s\"\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"body_stiffness = {Measured(Told("body_stiffness_n_per_m"), like?.CarcassStiffness ?? 2500.0, "N/m", origin)}\n");
        text.Append(CultureInfo.InvariantCulture, $"body_damping = {Measured(Told("body_damping_n_s_per_m"), like?.CarcassDamping ?? 2.0, "N s/m", origin)}\n");
        text.Append(CultureInfo.InvariantCulture, $"tread_mass = \"{FourDigits(1e3 * (like?.TreadMass ?? 0.004))} g\"{origin}\n");
        text.Append(CultureInfo.InvariantCulture, $"vertical_stiffness = \"{FourDigits(like?.VerticalStiffness ?? 10_000.0)} N/m\"{origin}\n");
        if (like is not null)
        {
            // what the measured friction does not touch stays that of the tyre it was measured on or replaces
            text.Append(CultureInfo.InvariantCulture, $"vertical_damping = \"{FourDigits(like.VerticalDamping)} s/m\"\n");
            text.Append(CultureInfo.InvariantCulture, $"breakaway_deflection = \"{FourDigits(1e3 * like.BreakawayDeflection)} mm\"\n");
            text.Append(CultureInfo.InvariantCulture, $"bristle_damping = {FourDigits(like.BristleDampingRatio)}\n");
            text.Append(CultureInfo.InvariantCulture, $"elastic_share = {FourDigits(like.ElasticShare)}\n");
            text.Append(CultureInfo.InvariantCulture, $"viscous_friction = \"{FourDigits(like.ViscousFriction)} s/m\"\n");
            text.Append(like.PlainBristle ? "plain_bristle = true\n" : "");
            text.Append(CultureInfo.InvariantCulture, $"rolling_renewal = \"{FourDigits(like.RollingRenewal)} 1/m\"\n");
            text.Append(CultureInfo.InvariantCulture, $"rolling_resistance = {FourDigits(like.RollingResistance)}\n");
        }

        return text.ToString();
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
