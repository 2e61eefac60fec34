using PushSim.Analysis.Statistics;
using PushSim.Binding;

namespace PushSim.Analysis.Fit;

/// <summary>Was it the tyre? What the motors give at the floor is known from data sheets to a fifth or a quarter, so a pull at that
/// level says nothing of the tyre. With r = measured force / motors' force:
/// <code>
/// r &lt; 0.8            the tyre slid, if the whole interval of r lies there
/// 0.8 to 1.05         at the motors' limit: motors; unknown if a breakaway peak says that something slid, or the interval straddles 0.8
/// above 1.05          more than the file's motors can give: inconsistent with the file; unknown
/// </code>
/// In a log the jerk of the chain going taut can leave more force than the motors can pull, held by the friction of their gears: there the upper
/// bound is 1.05 times what they can hold. A reading off a display is taken as the steady pull.
/// A tyre with grip of more than 1.25 times the motors' force cannot be slid, and reads r = 1. Wheels seen turning or standing, a current or a
/// sag of the battery like that of a stall decide before all this. A dragged robot needs no motors.</summary>
public static class PullCauseJudge
{
    /// <summary>Below this share of the motors' force a pull was the tyre's [1].</summary>
    public const double SurelyTyre = 0.8;

    /// <summary>Above this share no pull of these motors can be [1].</summary>
    public const double Possible = 1.05;

    // A breakaway peak that far above the plateau, both at the motors' limit but not on it, says that something slid [1].
    private const double OnTheLimit = 0.95;

    // Wheels that turn less stand [m/s], [rad/s].
    private const double StandingSurface = 0.01;
    private const double StandingTurn = 0.4;

    // Share of the current at stall that is a stall, and that is none [1].
    private const double StallCurrent = 0.9;
    private const double NoStallCurrent = 0.75;

    /// <summary>Judges a tyre's pulls.</summary>
    /// <param name="force">Force of the plateau, or the reading, with its interval if there is one [N].</param>
    /// <param name="stall">The motors' force; null without a robot file.</param>
    /// <param name="isLog">Whether the force is out of a log.</param>
    /// <param name="hasPeak">Whether a breakaway peak stands out.</param>
    /// <param name="isDrag">Whether the robot was dragged.</param>
    /// <param name="evidence">Turning, current, voltage over the plateaus.</param>
    public static PullCause Judge(Interval force, StallForce? stall, bool isLog, bool hasPeak, bool isDrag, PlateauEvidence evidence) => isDrag
        ? new(BindingKind.Tyre, false, double.NaN, PullReason.Dragged)
        : OfPull(force, stall, isLog, hasPeak, evidence) with { Stall = stall };

    private static PullCause OfPull(Interval force, StallForce? stall, bool isLog, bool hasPeak, PlateauEvidence evidence)
    {
        double r = stall is null ? double.NaN : force.Value / stall.Force;
        double most = stall is null ? double.PositiveInfinity : Possible * (isLog ? Math.Max(stall.Force, stall.Hold) : stall.Force);
        bool isInconsistent = force.Value > most && !(force.IsBounded && force.Low <= most);
        if (evidence.SurfaceSpeed is double v)
        {
            return Turning(v > StandingSurface, isInconsistent, r);
        }

        if (evidence.TurnRate is double w)
        {
            return Turning(w > StandingTurn, isInconsistent, r);
        }

        if (stall is null)
        {
            return new(null, false, r, PullReason.NoRobot);
        }

        if (isInconsistent)
        {
            return new(null, true, r, PullReason.Inconsistent);
        }

        if (BySag(evidence, stall) is BindingKind sag)
        {
            return new(sag, false, r, PullReason.Battery);
        }

        return ByForce(force, stall, hasPeak, r);
    }

    private static PullCause ByForce(Interval force, StallForce stall, bool hasPeak, double r)
    {
        double low = force.IsBounded ? force.Low / stall.Force : r;
        double high = force.IsBounded ? force.High / stall.Force : r;
        if (high < SurelyTyre)
        {
            return new(BindingKind.Tyre, false, r, PullReason.FarBelowMotors);
        }

        return low < SurelyTyre || (hasPeak && r < OnTheLimit)
            ? new(null, false, r, PullReason.NearMotors)
            : new(BindingKind.Motor, false, r, PullReason.AtMotors);
    }

    private static PullCause Turning(bool isTurning, bool isInconsistent, double r) => isTurning
        ? new(BindingKind.Tyre, isInconsistent, r, PullReason.WheelsTurned)
        : new(BindingKind.Motor, isInconsistent, r, PullReason.WheelsStood);

    private static BindingKind? BySag(PlateauEvidence e, StallForce stall)
    {
        double? share = e.Current is double i
            ? i / stall.BatteryCurrent
            : e.Sag is double sag ? sag / (stall.OpenVoltage - stall.LoadedVoltage) : null;
        return share is null ? null : share > StallCurrent ? BindingKind.Motor : share < NoStallCurrent ? BindingKind.Tyre : null;
    }
}
