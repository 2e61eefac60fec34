using PushSim.Powertrain;
using PushSim.Runs;

namespace PushSim.Analysis.Limits;

/// <summary>What to know before believing limits.</summary>
public abstract record LimitWarning
{
    private LimitWarning()
    {
    }

    /// <summary>The pull is that of a robot that still creeps forward; once it stands its skids hold either way.</summary>
    /// <param name="Pull">The pull [N].</param>
    /// <param name="Drag">What the skids drag with [N].</param>
    public sealed record Creeping(double Pull, double Drag) : LimitWarning;

    /// <summary>The search for the steady pull came to no end.</summary>
    public sealed record NotFound : LimitWarning;

    /// <summary>The robot rears up before its motors or tyres give out.</summary>
    public sealed record RearsUp : LimitWarning;

    /// <summary>Tyres and motors give more, for a moment, than the robot stands.</summary>
    /// <param name="At">Pull at which it rears up [N].</param>
    public sealed record MayTip(double At) : LimitWarning;

    /// <summary>The battery cannot feed all motors stalled.</summary>
    public sealed record Starved : LimitWarning;

    /// <summary>With all motors stalled the battery falls below its cut-off.</summary>
    /// <param name="Voltage">What it falls to [V].</param>
    /// <param name="CutOff">The cut-off [V].</param>
    public sealed record BelowCutOff(double Voltage, double CutOff) : LimitWarning;

    /// <summary>The floor's slope across is left out.</summary>
    public sealed record SlopeAcross : LimitWarning;

    /// <summary>Patches of the floor are left out.</summary>
    public sealed record Patches : LimitWarning;

    /// <summary>A motor without sensors: what it does at standstill under load is not predicted.</summary>
    /// <param name="Motor">The motor.</param>
    public sealed record Sensorless(string Motor) : LimitWarning;

    /// <summary>A winding gets hotter than it may.</summary>
    /// <param name="Winding">Which, and when.</param>
    /// <param name="Peak">What the hottest winding ends at, at most [degree Celsius].</param>
    public sealed record Overheats(Overheating Winding, double Peak) : LimitWarning;

    /// <summary>A number that cannot be meant.</summary>
    /// <param name="Why">Which.</param>
    public sealed record Doubtful(Implausible Why) : LimitWarning;

    /// <summary>Wirings of which no steady pull was found.</summary>
    /// <param name="Cases">They.</param>
    public sealed record Unfound(IReadOnlyList<(Wiring Wiring, WheelLoss Case)> Cases) : LimitWarning;
}
