using System.Text;
using System.Text.RegularExpressions;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Starters;

/// <summary>A gearmotor as a shop's page tells it: case, voltage, speed and torque of the output shaft, stall current, ratio, each as far as it is given.</summary>
/// <param name="Case">Diameter of the case [mm]; null: not said.</param>
/// <param name="Voltage">Rated voltage [V]; null: not said.</param>
/// <param name="Rpm">No-load speed of the output shaft at that voltage [rpm].</param>
/// <param name="Torque">Stall torque of the output shaft, in the shop's unit, as text; null: not said.</param>
/// <param name="TorqueInNewtonMetre">The same [N m]; null: not said.</param>
/// <param name="StallCurrent">Stall current [A]; null: not said.</param>
/// <param name="Ratio">Gear ratio [1]; null: unknown.</param>
public sealed partial record ShopMotor(double? Case, double? Voltage, double Rpm, string? Torque, double? TorqueInNewtonMetre, double? StallCurrent, double? Ratio)
{
    // What three stages of small gears leave of the torque at stall, where a current has to be guessed [1].
    private const double GuessedEfficiency = 0.73;

    /// <summary>Voltage, or the usual one [V].</summary>
    public double VoltageOrUsual => Voltage ?? 12.0;

    /// <summary>Stall current [A], stated or from torque times speed over voltage and gears; null where neither is known.
    /// <code>T = Kt G eta (I - I_0),  Kt G omega_0 = V  =>  I = T omega_0/(V eta) + I_0</code> Resistance times I_0, a few per cent of V, is left out.</summary>
    /// <param name="noLoad">No-load current [A].</param>
    public double? Stall(double noLoad) => StallCurrent ?? (TorqueInNewtonMetre is double t ? (t * Rpm * Math.PI / 30.0 / (VoltageOrUsual * GuessedEfficiency)) + noLoad : null);

    /// <summary>Reads shop words such as "25 mm, 12 V, 200 rpm, 8 kgf·cm, 2.2 A"; null where they name no output speed.</summary>
    /// <param name="words">The words, in any order.</param>
    /// <param name="wrong">What is not understood; empty if all is.</param>
    public static ShopMotor? Of(string words, out string wrong)
    {
        wrong = "";
        if (!Speed().IsMatch(words))
        {
            return null;
        }

        string rest = DecimalComma().Replace(words, "$1.$2");
        double? size = Take(ref rest, Size()), voltage = Take(ref rest, Volts()), rpm = Take(ref rest, Speed()), ratio = Take(ref rest, Gear()), current = Take(ref rest, Amperes());
        string? torque = null;
        double? newtonMetre = null;
        if (Moment().Match(rest) is { Success: true } found)
        {
            torque = found.Value.Trim();
            rest = rest.Remove(found.Index, found.Length);
            if (Quantity.TryParse(torque, Dimension.Torque, out Quantity q, out string message, out string _))
            {
                newtonMetre = q.Value;
            }
            else
            {
                wrong = $"motor: {message} in \"{torque}\"";
            }
        }

        string left = Filler().Replace(rest, " ").Trim();
        if (left.Length > 0 && wrong.Length == 0)
        {
            wrong = $"motor: \"{left}\" is not understood; say it as in \"25 mm, 12 V, 200 rpm, 8 kgf·cm, 2.2 A\"";
        }

        return new ShopMotor(size, voltage, rpm!.Value, torque, newtonMetre, current, ratio);
    }

    /// <summary>Its lines of a [[motor]] block, each number with where it comes from.</summary>
    /// <param name="shelf">Name of the shelf's motor that gives what the shop does not tell.</param>
    /// <param name="noLoad">Its no-load current [A].</param>
    /// <param name="ratioByShelf">Ratio that the shelf's winding has at this speed [1].</param>
    public string Lines(string shelf, double noLoad, double ratioByShelf)
    {
        var text = new StringBuilder();
        void Line(string key, string value, string comment) => text.Append(CultureInfo.InvariantCulture, $"{key} = {value}{(comment.Length > 0 ? "  # " + comment : "")}\n");
        Line("shelf", $"\"{shelf}\"", "for what the shop does not tell: heat, rotor");
        Line("voltage", $"\"{Plain(VoltageOrUsual)} V\"", Voltage is null ? "not said: the usual one" : "");
        if (Stall(noLoad) is double stall && Torque is not null)
        {
            Line("output_speed", $"\"{Plain(Rpm)} rpm\"", "");
            Line("output_stall_torque", $"\"{Torque}\"", "");
            Line("stall_current", $"\"{Plain(Math.Round(stall, 2))} A\"", StallCurrent is null ? "guessed: torque times speed over voltage, gears of 73 %" : "");
            if (Ratio is double known)
            {
                Line("gear_ratio", Plain(known), "");
            }
        }
        else
        {
            Line("gear_ratio", Plain(Ratio ?? Math.Round(ratioByShelf, ratioByShelf < 20.0 ? 1 : 0)), Ratio is null ? $"for {Plain(Rpm)} rpm with the shelf's winding; torque and stall current of the shop tell more" : "");
            if (StallCurrent is double current)
            {
                Line("stall_current", $"\"{Plain(current)} A\"", "");
            }
        }

        return text.ToString();
    }

    private static double? Take(ref string words, Regex of)
    {
        Match m = of.Match(words);
        if (!m.Success)
        {
            return null;
        }

        words = words.Remove(m.Index, m.Length);
        return double.Parse(m.Groups[1].Value, NumberStyles.Float, CultureInfo.InvariantCulture);
    }

    private static string Plain(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(\d),(\d)")]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"(\d+(?:\.\d+)?) *(?:mm)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Size();

    [GeneratedRegex(@"(\d+(?:\.\d+)?) *(?:V|volts?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Volts();

    [GeneratedRegex(@"(\d+(?:\.\d+)?) *(?:rpm|r/min|1/min|U/min)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Speed();

    [GeneratedRegex(@"(\d+(?:\.\d+)?) *: *1\b")]
    private static partial Regex Gear();

    [GeneratedRegex(@"(\d+(?:\.\d+)?) *(?:A|amps?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Amperes();

    [GeneratedRegex(@"\d+(?:\.\d+)? *(?:m?N[ ·.*-]?c?m+|k?gf?[ ·.*-]?c?m+|oz[ ·.*f-]*in|lb[ ·.*f-]*in)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Moment();

    // words that a page has around the numbers
    [GeneratedRegex(@"\b(?:dc|brushed|gear(?:ed)? ?motor|gearmotor|motor|with|no[- ]load|stall|output|torque|speed|current|ratio|unknown|at|and|case|diameter)\b|[,;/()@]", RegexOptions.IgnoreCase)]
    private static partial Regex Filler();
}
