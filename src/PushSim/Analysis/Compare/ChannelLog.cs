using PushSim.Powertrain;

namespace PushSim.Analysis.Compare;

/// <summary>A robot's log: some quantities at the same times.</summary>
/// <param name="Time">Rising times, the first one 0 [s].</param>
/// <param name="Channels">The quantities.</param>
public sealed record ChannelLog(double[] Time, IReadOnlyList<Channel> Channels)
{
    /// <summary>The first channel of a kind and side; null for none.</summary>
    public Channel? Of(ChannelKind kind, CommandSide? side = null) => Channels.FirstOrDefault(c => c.Kind == kind && c.Side == side);

    /// <summary>Whether it has commands that can be put in: throttle, turn, or both sides'.</summary>
    public bool HasCommands => Of(ChannelKind.Throttle) is not null || Of(ChannelKind.Turn) is not null || (Of(ChannelKind.SideCommand, CommandSide.Left) is not null && Of(ChannelKind.SideCommand, CommandSide.Right) is not null);

    /// <summary>Whether it tells how fast the wheels of both sides turn.</summary>
    public bool HasWheels => Wheels(CommandSide.Left) is not null && Wheels(CommandSide.Right) is not null;

    /// <summary>How fast a side's wheels turn: its best channel; null for none.</summary>
    public Channel? Wheels(CommandSide side) => Of(ChannelKind.SideSpeed, side) ?? Of(ChannelKind.WheelSpin, side) ?? Of(ChannelKind.MotorSpin, side);

    /// <summary>The part between two times, begun anew at 0.</summary>
    public ChannelLog Between(double from, double to)
    {
        int first = Array.FindIndex(Time, t => t >= from);
        int last = Array.FindLastIndex(Time, t => t <= to);
        return first < 0 || last < first ? new ChannelLog([], Channels)
            : new ChannelLog([.. Time[first..(last + 1)].Select(t => t - Time[first])], [.. Channels.Select(c => c with { Values = c.Values[first..(last + 1)] })]);
    }
}
