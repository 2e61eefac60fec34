using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>
/// Was it the tyre? What the motors give at the floor is known from data sheets to a fifth or a quarter, so a pull at that
/// level says nothing of the tyre. With r = measured force / motors' force:
/// <code>
/// r &lt; 0.8            the tyre slid, if the whole interval of r lies there
/// 0.8 to 1.05         at the motors' limit: motors; unknown if a breakaway peak says that something slid, or the interval straddles 0.8
/// above 1.05          more than the file's motors can give: inconsistent with the file; unknown
/// </code>
/// In a log the jerk of the chain going taut can leave more force than the motors can pull, held by the friction of their gears: there the upper
/// bound is 1.05 times what they can hold. A reading off a display is taken as the steady pull.
/// A tyre with grip of more than 1.25 times the motors' force cannot be slid, and reads r = 1. Wheels seen turning or standing, a current or a
/// sag of the battery like that of a stall decide before all this. A dragged robot needs no motors.
/// </summary>
public static class LimitJudge
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
    public static PullLimit Judge(Interval force, StallForce? stall, bool isLog, bool hasPeak, bool isDrag, PlateauEvidence evidence)
    {
        double r = stall is null ? double.NaN : force.Value / stall.Force;
        if (isDrag)
        {
            return new(PullLimitedBy.Tyre, false, double.NaN, "it was dragged, so no motor can have set the force");
        }

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
            return new(PullLimitedBy.Unknown, false, r, "without a robot file (--robot) or a wheel speed in the log it cannot be told from the motors' limit");
        }

        if (isInconsistent)
        {
            return new(PullLimitedBy.Unknown, true, r, Say($"inconsistent with the robot file: its motors give only {stall.Force:0.00} N at the floor{stall.AtThrottle}; check {(stall.Throttle < 1.0 ? "the throttle of the scenario, " : "")}the motor, gear and battery data, the unit of the readings and the load cell"));
        }

        if (BySag(evidence, stall) is PullLimitedBy sag)
        {
            return new(sag, false, r, sag == PullLimitedBy.Motors ? "the battery was loaded as at a stall" : "the battery was loaded far less than at a stall");
        }

        return ByForce(force, stall, hasPeak, r);
    }

    private static PullLimit ByForce(Interval force, StallForce stall, bool hasPeak, double r)
    {
        const string Advice = "watch or log whether the wheels turn, test with a full battery and a lower load, or drag the robot with its wheels locked (--drag)";
        double low = force.IsBounded ? force.Low / stall.Force : r;
        double high = force.IsBounded ? force.High / stall.Force : r;
        if (high < SurelyTyre)
        {
            return new(PullLimitedBy.Tyre, false, r, Say($"the motors could give {stall.Force:0.00} N{stall.AtThrottle}, far more than was needed"));
        }

        if (low < SurelyTyre || (hasPeak && r < OnTheLimit))
        {
            return new(PullLimitedBy.Unknown, false, r, Say($"it is {r:0.00} of the {stall.Force:0.00} N that the motors give at the floor{stall.AtThrottle}, too close to tell; {Advice}"));
        }

        return new(PullLimitedBy.Motors, false, r, Say($"it is {r:0.00} of the {stall.Force:0.00} N that the motors give at the floor{stall.AtThrottle}, so the tyre's friction is at least this; {Advice}"));
    }

    private static PullLimit Turning(bool isTurning, bool isInconsistent, double r) => isTurning
        ? new(PullLimitedBy.Tyre, isInconsistent, r, isInconsistent ? "the wheels turned, so the tyre slid; but the force is inconsistent with the robot file" : "the wheels turned while it pulled, so the tyre slid")
        : new(PullLimitedBy.Motors, isInconsistent, r, "the wheels stood still while it pulled, so the tyre's friction is at least this");

    private static PullLimitedBy? BySag(PlateauEvidence e, StallForce stall)
    {
        double? share = e.Current is double i
            ? i / stall.BatteryCurrent
            : e.Sag is double sag ? sag / (stall.OpenVoltage - stall.LoadedVoltage) : null;
        return share is null ? null : share > StallCurrent ? PullLimitedBy.Motors : share < NoStallCurrent ? PullLimitedBy.Tyre : null;
    }

    private static string Say(FormattableString text) => FormattableString.Invariant(text);
}
