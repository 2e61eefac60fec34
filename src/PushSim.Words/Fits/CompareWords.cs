using PushSim.Analysis.Compare;
using PushSim.Powertrain;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>How a run differs from a robot's log, in plain words.</summary>
public static class CompareWords
{
    /// <summary>The answer in a sentence or two.</summary>
    /// <param name="robot">Name of the robot.</param>
    /// <param name="errors">The differences.</param>
    /// <param name="isByWheels">Whether the measured wheels were put in; else the commands.</param>
    /// <param name="from">Where counting begins [s].</param>
    /// <param name="to">Where it ends [s].</param>
    /// <param name="identified">Each value that was found, as a file has it; none.</param>
    public static string Verdict(string robot, IReadOnlyList<ChannelError> errors, bool isByWheels, double from, double to, IReadOnlyList<(string Key, string Value)> identified)
    {
        string how = isByWheels ? "turned by the wheels of the log" : "driven by the commands of the log";
        string told = string.Join("; ", errors.Select(e => Text($"{Words(e.Channel)} is off by {Number(e.Rms)} {e.Channel.Unit} rms{Share(e)}")));
        return Text($"{robot}, {how} from {from:0.##} to {to:0.##} s: {told}.{Found(from, identified)}");
    }

    /// <summary>The order of card and pictures: first what is furthest off by its range.</summary>
    public static ChannelError[] FurthestFirst(IReadOnlyList<ChannelError> errors) => [.. errors.OrderByDescending(e => double.IsFinite(e.Share) ? e.Share : 0.0)];

    /// <summary>The table of differences.</summary>
    public static AnswerTable Table(IReadOnlyList<ChannelError> errors)
    {
        AnswerTable table = new AnswerTable("Run against log").AddColumn("quantity").AddNumberColumn("rms").AddNumberColumn("of its range").AddNumberColumn("worst").AddNumberColumn("at [s]").AddColumn("unit");
        foreach (ChannelError e in errors)
        {
            table.AddRow(Words(e.Channel), Number(e.Rms), double.IsFinite(e.Share) ? Text($"{100.0 * e.Share:0.0} %") : "", Number(e.Worst), Text($"{e.WorstAt:0.00}"), e.Channel.Unit);
        }

        return table.AddRemark("Worst is the run less the log. Range: greatest less least measured value.", isAside: true);
    }

    /// <summary>A quantity in words.</summary>
    public static string Words(Channel channel) => (channel.Side switch { CommandSide.Left => "left ", CommandSide.Right => "right ", _ => "" }) + channel.Kind switch
    {
        ChannelKind.SideSpeed => "rim speed",
        ChannelKind.WheelSpin => "wheel speed",
        ChannelKind.MotorSpin => "motor speed",
        ChannelKind.Speed => "speed",
        ChannelKind.YawRate => "yaw rate",
        ChannelKind.Voltage => "battery voltage",
        ChannelKind.Current => "battery current",
        ChannelKind.SideCurrent => "current",
        ChannelKind.Force => "force",
        _ => "command",
    };

    private static string Share(ChannelError e) => double.IsFinite(e.Share) ? Text($" ({100.0 * e.Share:0.0} % of its range)") : "";

    /// <summary>The values found, as a sentence after another one; empty for none.</summary>
    internal static string Found(double from, IReadOnlyList<(string Key, string Value)> identified) =>
        identified.Count == 0 ? "" : Text($" Found on the first {from:0.##} s: {string.Join(", ", identified.Select(i => $"{i.Key} = {i.Value}"))}.");

    /// <summary>A difference in three digits.</summary>
    internal static string Number(double value) => value.ToString("G3", CultureInfo.InvariantCulture);
}
