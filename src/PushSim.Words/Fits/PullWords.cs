using PushSim.Analysis.Fit;

namespace PushSim.Words.Fits;

/// <summary>What is said of a tyre's pulls: what set them, what to know before believing them.</summary>
public static class PullWords
{
    /// <summary>What set a pull, as a key for scripts.</summary>
    public static string Key(PullLimit limit) => limit.By switch { BindingKind.Tyre => "tyre", BindingKind.Motor => "motors", _ => "unknown" };

    /// <summary>Why, and what to do.</summary>
    public static string Reason(PullLimit limit) => limit.Reason switch
    {
        PullReason.Dragged => "it was dragged, so no motor can have set the force",
        PullReason.WheelsTurned => limit.IsInconsistent ? "the wheels turned, so the tyre slid; but the force is inconsistent with the robot file" : "the wheels turned while it pulled, so the tyre slid",
        PullReason.WheelsStood => "the wheels stood still while it pulled, so the tyre's friction is at least this",
        PullReason.NoRobot => "without a robot file (--robot) or a wheel speed in the log it cannot be told from the motors' limit",
        PullReason.Inconsistent => $"inconsistent with the robot file: its motors give only {Force(limit)} at the floor{Throttle(limit)}; check {(limit.Stall!.Throttle < 1.0 ? "the throttle of the scenario, " : "")}the motor, gear and battery data, the unit of the readings and the load cell",
        PullReason.Battery => limit.IsOfMotors ? "the battery was loaded as at a stall" : "the battery was loaded far less than at a stall",
        PullReason.FarBelowMotors => $"the motors could give {Force(limit)}{Throttle(limit)}, far more than was needed",
        PullReason.NearMotors => $"{Share(limit)}, too close to tell",
        _ => $"{Share(limit)}, so the tyre's friction is at least this",
    };

    /// <summary>What test would tell a friction that is only a lower bound.</summary>
    public static string Test(PullLimit limit) => limit.Reason == PullReason.NoRobot
        ? "Its robot file (--robot), a drag with its wheels locked (--drag) or a log of the wheels' speed would tell."
        : $"A drag with its wheels locked (--drag) would tell more, or a pull with less load on the tyres{(limit.Stall is { Throttle: < 1.0 } ? ", or at full throttle with a charged battery" : "")}.";

    /// <summary>What to know before believing a tyre's friction, in sentences.</summary>
    public static IEnumerable<string> Warnings(TyreFit fit) => fit.Warnings.Select(Of);

    /// <summary>How a number came about that a reader of the log would not expect; nothing is wrong with it.</summary>
    public static IEnumerable<string> Notes(TyreFit fit)
    {
        if (fit.Above is { } above)
        {
            string many = above.Pulls == above.Of ? "" : $" in {above.Pulls} of {above.Of} pulls";
            yield return Text($"breakaway lies {(above.Pulls == 1 ? "" : "up to ")}{100.0 * above.Most:0.0} % above the highest reading{many}: the tyre lets go between two readings, and the line up the ramp is taken to the middle between them");
        }
    }

    /// <summary>Why a tyre is left out of a comparison; empty if it is not.</summary>
    public static string Of(NotCompared reason) => reason switch
    {
        NotCompared.Inconsistent => "its forces contradict the robot file",
        NotCompared.OfMotors => "the motors set its pulls, so its friction is only known to be at least that",
        NotCompared.FewPulls => "it slid in fewer than three pulls",
        NotCompared.Equal => "all its readings are equal, so their scatter is hidden by the steps of the display",
        _ => "",
    };

    private static string Of(PullWarning warning) => warning switch
    {
        PullWarning.Single w => $"a single {(Math.Max(w.Steady, w.Peaks) == 1 ? "reading" : w.Steady == 1 ? "steady reading" : "peak")} has no interval: take five or more",
        PullWarning.LowerBound w => "static friction is a lower bound: " + w.Cause switch
        {
            LowerBoundCause.SteadyReadings => "steady readings do not show the breakaway",
            LowerBoundCause.FewSamples => "five samples or fewer on the ramp to breakaway; pull more slowly or read the cell faster",
            _ => "no breakaway peak stands out above the sliding force",
        },
        PullWarning.Skids w => Text($"skids hold either way once the robot stands: sliding friction is {w.Creeping:0.00} if it still creeps forward and may be as low as {w.DrawnBack:0.00}; drag it with its wheels locked (--drag), which leaves no such doubt"),
        PullWarning.NoSliding => "no pull slides long enough for a kinetic friction: keep pulling for a second or two after it lets go",
        PullWarning.OnePull => "one pull only: its interval does not hold the scatter from pull to pull; five pulls or more are better",
        PullWarning.RampBends w => $"the force stops rising before the tyre lets go in {w.Bent} of {w.Of} {(w.Of == 1 ? "pull" : "pulls")}: breakaway is taken as the greatest reading there",
        PullWarning.NoDrift => "a drift of the cell cannot be seen without slack before and after each pull",
        PullWarning.Spikes w => $"{w.Count} {(w.Count == 1 ? "reading left out as a spike" : "readings left out as spikes")}",
        PullWarning.OtherWeight w => Text($"a load of {w.Load:0.00} N ({Gram(w.Load)} gf) was taken, but the robot weighs {w.Weight:0.00} N ({Gram(w.Weight)} gf) and all its wheels are under test: check --load or the load column, its unit, and the mass in the robot file; only a robot that was held up or weighed down in the test is another matter"),
        PullWarning.Disagreement w => Text($"{(w.IsStatic ? "breakaway" : "sliding friction")}: the pull trace says {IntervalWords.Of(w.OfPulls)}, the simulated test {IntervalWords.Of(w.Simulated)}. They do not agree: look at both. The simulated one is taken. A trace errs where the cell is slow, the ramp bends or the robot is jerked; a simulated test where its tether, floor or throttle are not those of the pulls"),
        PullWarning.NoHeight => "not all wheels are driven, so the friction hangs on the height of the tether, which was taken as 0: add --height, or name a scenario with a tether",
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "no words for this warning"),
    };

    private static string Force(PullLimit limit) => ForceWords.Both(limit.Stall!.Force);

    private static string Throttle(PullLimit limit) => ThrottleWords.At(limit.Stall!.Throttle);

    private static string Share(PullLimit limit) => Text($"it is {limit.Ratio:0.00} of the {Force(limit)} that the motors give at the floor{Throttle(limit)}");
}
