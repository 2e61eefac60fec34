using System.Text.RegularExpressions;
using PushSim.Analysis.Compare;
using PushSim.Powertrain;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Logs;

/// <summary>What a column of a robot's log holds, by its head: "left_rpm", "Yaw rate [deg/s]", "battery_mV", "command_of_255", "time_ms".</summary>
/// <param name="Index">Place in the row, from 0.</param>
/// <param name="Kind">Its quantity; null for the time, or for nothing known.</param>
/// <param name="Side">Its side.</param>
/// <param name="Name">Its head.</param>
/// <param name="Factor">SI per unit; NaN where a command's scale is to be guessed.</param>
internal sealed partial record ChannelHead(int Index, ChannelKind? Kind, CommandSide? Side, string Name, double Factor)
{
    // Columns that have a word of these are something else: "lateral_speed", "tread_slip_speed".
    private static readonly string[] Others =
        ["lateral", "slip", "spread", "sd", "std", "heading", "acceleration", "accel", "load", "deflection", "friction", "loss", "temperature", "temp", "heave", "pitch", "roll", "anchor", "opponent", "limiting", "circuit", "torque", "error", "count", "counts", "target", "setpoint"];

    private static readonly string[] Left = ["left", "l", "links", "lhs"];
    private static readonly string[] Right = ["right", "r", "rechts", "rhs"];
    private static readonly string[] Commands = ["command", "cmd", "duty", "pwm", "input", "stick"];
    private static readonly string[] Tails = ["of", "per"];

    private const double Rpm = Math.PI / 30.0;

    /// <summary>The time of arrival before each line.</summary>
    public static ChannelHead OfArrival { get; } = new(0, null, null, LogStamp.Name, 1.0) { IsTime = true };

    /// <summary>Whether it is the time.</summary>
    public bool IsTime { get; private init; }

    /// <summary>The column of a head, with the unit of a row below it or without.</summary>
    public static ChannelHead Of(int index, string head, string? below)
    {
        (string[] words, string unit) = Split(head);
        unit = unit.Length == 0 && below is not null ? below.Trim('[', ']', '(', ')', ' ') : unit;
        var nothing = new ChannelHead(index, null, null, head.Trim(), double.NaN);
        CommandSide? side = words.Any(Left.Contains) ? CommandSide.Left : words.Any(Right.Contains) ? CommandSide.Right : null;
        bool Has(params string[] any) => words.Any(any.Contains);
        if (words.Length > 0 && words[0] is "time" or "t" or "zeit" or "timestamp" or "elapsed" or "millis" or "ms" or "seconds")
        {
            double factor = LogColumn.TimeFactor(unit.Length > 0 ? unit : words[^1]);
            return nothing with { IsTime = true, Factor = factor };
        }

        if (words.Any(Others.Contains))
        {
            return nothing;
        }

        if (Has(Commands) || (Has("throttle", "gas") && !IsRate(unit)) || (Has("turn", "steer", "steering") && !Has("rate", "speed") && !IsRate(unit)))
        {
            double scale = unit is "%" or "percent" || Has("percent", "pct") ? 0.01 : OfScale(words) is { } full ? 1.0 / full : double.NaN;
            return nothing with { Kind = side is not null ? ChannelKind.SideCommand : Has("turn", "steer", "steering") ? ChannelKind.Turn : ChannelKind.Throttle, Side = side, Factor = scale };
        }

        if (Has("yaw", "gyro", "gier", "gyroz") || (Has("turn", "turning") && Has("rate")))
        {
            return Angular(unit) is { } f ? nothing with { Kind = ChannelKind.YawRate, Factor = f } : nothing;
        }

        if (Has("speed", "velocity", "rpm", "wheel", "motor", "omega", "geschwindigkeit", "drehzahl", "v") && !Has("voltage", "current"))
        {
            if (UnitTable.TryFind(Dimension.Speed, unit, out Unit found))
            {
                return nothing with { Kind = side is null ? ChannelKind.Speed : ChannelKind.SideSpeed, Side = side, Factor = found.Factor };
            }

            return side is not null && (Angular(unit) ?? (Has("rpm") ? Rpm : null)) is { } f ? nothing with { Kind = Has("motor") ? ChannelKind.MotorSpin : ChannelKind.WheelSpin, Side = side, Factor = f } : nothing;
        }

        if (UnitTable.TryFind(Dimension.Voltage, unit, out Unit volt) && (Has("battery", "bus", "voltage", "volts", "akku", "batt", "spannung", "u", "v") || words.Length == 0) && side is null)
        {
            return nothing with { Kind = ChannelKind.Voltage, Factor = volt.Factor };
        }

        if (UnitTable.TryFind(Dimension.Current, unit, out Unit ampere) && (Has("battery", "bus", "current", "amps", "akku", "batt", "strom", "i", "controller") || words.Length == 0))
        {
            return nothing with { Kind = side is null ? ChannelKind.Current : ChannelKind.SideCurrent, Side = side, Factor = ampere.Factor };
        }

        return Has("force", "pull", "cell", "loadcell", "tether", "kraft", "zugkraft", "tension") && !Has("wheel") && !double.IsNaN(LogColumn.ForceFactor(unit)) ? nothing with { Kind = ChannelKind.Force, Factor = LogColumn.ForceFactor(unit) } : nothing;
    }

    private static bool IsRate(string unit) => Angular(unit) is not null;

    private static double? Angular(string unit) => unit.Length > 0 && UnitTable.TryFind(Dimension.AngularSpeed, unit, out Unit found) ? found.Factor : null;

    // "command_of_255"
    private static double? OfScale(string[] words)
    {
        int i = Array.FindIndex(words, w => Tails.Contains(w));
        return i >= 0 && i + 1 < words.Length && double.TryParse(words[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out double full) && full > 0.0 ? full : null;
    }

    // "Yaw rate [deg/s]", "speed (m/s)", "left_speed_m_s", "yaw_rate_rad_per_s", "left_rpm", "battery_mV"
    private static (string[] Words, string Unit) Split(string head)
    {
        string text = head.Trim().Trim('"').Trim();
        Match bracket = Bracket().Match(text);
        if (bracket.Success)
        {
            return (Words(text.Remove(bracket.Index, bracket.Length)), bracket.Groups[1].Value.Trim());
        }

        Match tail = Tail().Match(text);
        if (tail.Success)
        {
            return (Words(text[..tail.Index]), tail.Groups[1].Value + "/s");
        }

        int cut = text.LastIndexOfAny(['_', ' ', '/']);
        string last = cut > 0 ? text[(cut + 1)..] : "";
        bool isUnit = last.Length > 0 && (UnitTable.DimensionOf(last) is not null || !double.IsNaN(LogColumn.TimeFactor(last)) || !double.IsNaN(LogColumn.ForceFactor(last)) || last is "v" or "a" or "mv" or "ma");
        return isUnit ? (last.Equals("rpm", StringComparison.OrdinalIgnoreCase) ? Words(text) : Words(text[..cut]), last switch { "v" => "V", "a" => "A", "mv" => "mV", "ma" => "mA", "n" => "N", _ => last }) : (Words(text), "");
    }

    private static string[] Words(string text) => [.. WordBreak().Split(text.ToLowerInvariant()).Where(w => w.Length > 0)];

    [GeneratedRegex(@"[\[(]([^\])]*)[\])]")]
    private static partial Regex Bracket();

    [GeneratedRegex(@"[_ ](m|mm|cm|rad|deg)_(?:per_)?s$", RegexOptions.IgnoreCase)]
    private static partial Regex Tail();

    [GeneratedRegex(@"[^\p{L}\p{Nd}]+")]
    private static partial Regex WordBreak();
}
