using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Logs;

/// <summary>Quantities that come with a fit on the command line, in SI.</summary>
public static class FitArguments
{
    private static readonly string[] RateUnits = ["1/s", "Hz", "/s", "per second"];

    /// <summary>A force, or a mass whose weight is meant.</summary>
    /// <param name="text">For example "420 gf".</param>
    /// <param name="newton">The force [N].</param>
    /// <param name="message">What is wrong with it.</param>
    public static bool TryForce(string text, out double newton, out string message) => TryForce(text, out newton, out _, out message);

    /// <summary>A force with its tolerance, or a mass whose weight is meant.</summary>
    /// <param name="text">For example "420 gf ± 10 gf".</param>
    /// <param name="newton">The force [N].</param>
    /// <param name="off">Half-width of its tolerance as a share, 0 without one [1].</param>
    /// <param name="message">What is wrong with it.</param>
    public static bool TryForce(string text, out double newton, out double off, out string message)
    {
        bool isForce = Quantity.TryParse(text, Dimension.Force, out Quantity q, out message, out string help);
        if (!isForce && Quantity.TryParse(text, Dimension.Mass, out Quantity mass, out _, out _))
        {
            (q, isForce) = (new Quantity(mass.Value * LogColumn.ForceFactor("kgf"), mass.Tolerance * LogColumn.ForceFactor("kgf")), true);
        }

        newton = q.Value;
        off = isForce && q.Value != 0.0 ? Math.Abs(q.Tolerance / q.Value) : 0.0;
        message = isForce ? "" : $"{message}; {help}";
        return isForce;
    }

    /// <summary>A length.</summary>
    /// <param name="text">For example "25 mm".</param>
    /// <param name="metre">The length [m].</param>
    /// <param name="message">What is wrong with it.</param>
    public static bool TryLength(string text, out double metre, out string message)
    {
        bool isRead = Quantity.TryParse(text, Dimension.Length, out Quantity q, out message, out string help);
        metre = q.Value;
        message = isRead ? "" : $"{message}; {help}";
        return isRead;
    }

    /// <summary>A cell's calibration, force per mV.</summary>
    /// <param name="text">For example "25 gf/mV".</param>
    /// <param name="perMillivolt">The calibration [N/mV].</param>
    /// <param name="message">What is wrong with it.</param>
    public static bool TryCalibration(string text, out double perMillivolt, out string message) => TryCalibration(text, out perMillivolt, out _, out message);

    /// <summary>A cell's calibration with its tolerance.</summary>
    /// <param name="text">For example "25 gf ± 1 gf/mV".</param>
    /// <param name="perMillivolt">The calibration [N/mV].</param>
    /// <param name="off">Half-width of its tolerance as a share, 0 without one [1].</param>
    /// <param name="message">What is wrong with it.</param>
    public static bool TryCalibration(string text, out double perMillivolt, out double off, out string message)
    {
        (perMillivolt, off) = (double.NaN, 0.0);
        int slash = text.LastIndexOf('/');
        bool isPerMillivolt = slash > 0 && text[(slash + 1)..].Trim() == LogColumn.Millivolt;
        message = "write a force per mV, for example \"25 gf/mV\"";
        if (!isPerMillivolt || !TryForce(text[..slash], out perMillivolt, out off, out message))
        {
            return false;
        }

        message = perMillivolt == 0.0 ? "a calibration of zero makes every reading zero" : "";
        return perMillivolt != 0.0;
    }

    /// <summary>Readings a second: "80", "80 Hz", "80/s".</summary>
    /// <param name="text">For example "80 Hz".</param>
    /// <param name="perSecond">The rate [1/s].</param>
    public static bool TryRate(string text, out double perSecond)
    {
        string t = text.Trim();
        string bare = RateUnits.FirstOrDefault(u => t.EndsWith(u, StringComparison.OrdinalIgnoreCase)) is { } unit ? t[..^unit.Length].Trim() : t;
        return double.TryParse(bare, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out perSecond) && perSecond is > 0.0 and <= 1e6;
    }

    /// <summary>What is wrong with a rate; empty if nothing is.</summary>
    public static string RateComplaint(string text) => TryRate(text, out _) ? "" : "takes readings a second, for example 80";

    /// <summary>Whether a text is a unit of force, or mV.</summary>
    public static bool IsForceUnit(string text) => text == LogColumn.Millivolt || !double.IsNaN(LogColumn.ForceFactor(text));

    /// <summary>Whether a text is a unit of time.</summary>
    public static bool IsTimeUnit(string text) => !double.IsNaN(LogColumn.TimeFactor(text));
}
