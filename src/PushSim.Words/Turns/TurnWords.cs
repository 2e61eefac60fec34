namespace PushSim.Words.Turns;

/// <summary>What a turn answers, and words for what its result names.</summary>
public static class TurnWords
{
    // Share of the grip from which sideways acceleration moves loads and slips enough to change an arc (common practice, no source) [1].
    private const double SidewaysMatters = 0.2;

    // Last part of a run, taken as settled [1].
    private const double SettledShare = 0.4;

    /// <summary>The answer as one sentence.</summary>
    public static string Verdict(TurnResult r, RunResult result)
    {
        RunAnswers a = result.Answers;
        string name = result.Scenario.Robot.Name;
        string buzz = ChatterWords.Clause(result.Chatter, r.Wheels.Any(w => w.LiftOffs > 0) ? " and leave the floor" : "");
        if (r.Ease == TurnEase.CannotTurn)
        {
            string limit = a.Binding is null ? "" : $"; {(a.Binding.Named.Count == 1 ? "the " : "")}{BindingTable.Phrase(a.Binding)} set the limit";
            return Text($"{name} cannot turn{limit}; {Needs(r)}{buzz}.");
        }

        double rate = a.YawRate!.Value;
        string ease = Ease(r.Ease);
        string scrub = a.EffectiveTrackRatio is { } ratio ? Text($"; scrub costs it a factor of {ratio:0.000} in turning rate") : "";
        return Text($"{name} {ease}: {Math.Abs(rate):0.00} rad/s ({Math.Abs(rate) * 180.0 / Math.PI:0} deg/s) {(rate > 0 ? "to the left" : "to the right")}{scrub}{buzz}.");
    }

    /// <summary>What a closer look adds to whether it turns, as clauses.</summary>
    public static IEnumerable<string> Reserve(TurnResult r) => r.Ease switch
    {
        TurnEase.CannotTurn => [Needs(r)],
        TurnEase.Unknown => [],
        _ => ["it " + Ease(r.Ease)],
    };

    /// <summary>Of an arc whose sideways acceleration takes up a good part of the grip, what decides; null for others.</summary>
    public static string? Sideways(RunResult run)
    {
        if (run.Scenario.Manoeuvre.Traits is not { Family: ManoeuvreFamily.Turn, IsOnTheSpot: false } || run.Time.Length < 2)
        {
            return null;
        }

        int from = run.Trace.IndexAt((1.0 - SettledShare) * run.Time[^1]);
        double sideways = Math.Abs(run.Trace.Body.Speed.Mean(from, run.Time.Length - 1) * run.Trace.Body.YawRate.Mean(from, run.Time.Length - 1));
        double share = sideways / (run.Scenario.Floor.Gravity * run.Scenario.Floor.FrictionScale * run.Scenario.Robot.Wheels.Average(w => w.Tyre.KineticFriction));
        return share < SidewaysMatters ? null : Text($"{sideways:0.0} m/s² sideways are {100.0 * share:0} % of its grip, so height of the mass and grip decide how it turns");
    }

    private static string Ease(TurnEase ease) => ease switch
    {
        TurnEase.Freely => "turns with power to spare",
        TurnEase.Unknown => "turns",
        _ => "turns, but at the limit",
    };

    /// <summary>What would let it turn.</summary>
    internal static string Needs(TurnResult r)
    {
        List<string> needs = [];
        if (r.LeastCurrentLimit is { } ampere)
        {
            needs.Add(Text($"a current limit of {RoundedUp(ampere, 0.1):0.0} A"));
        }

        if (r.LeastMotorShare is { } share)
        {
            needs.Add(Text($"motors with {RoundedUp(share, 0.05):0.00} times the stall torque"));
        }

        needs.AddRange(r.Helps.Where(h => h.Turns && h.What != TurnChange.CurrentLimit).Take(3 - Math.Min(2, needs.Count)).Select(h => Text($"a {Of(h.What)} of {Number(h.To)}{(Unit(h.What) is { } unit and not "1" ? " " + unit : "")} instead of {Number(h.From)}")));
        return needs.Count == 0 ? "no single change that was tried lets it" : string.Join(" or ", needs) + " would let it";
    }

    // what just would not do is not told as enough
    private static double RoundedUp(double value, double step) => step * Math.Ceiling(value / step);

    /// <summary>A number to three digits.</summary>
    public static string Number(double value) => value.ToString(Math.Abs(value) >= 100.0 ? "0" : Math.Abs(value) >= 10.0 ? "0.0" : "0.00", CultureInfo.InvariantCulture);

    /// <summary>What is changed.</summary>
    public static string Of(TurnChange change) => change switch
    {
        TurnChange.Wheelbase => "wheelbase",
        TurnChange.Track => "track",
        TurnChange.CentreOfMass => "centre of mass ahead of the middle of the wheelbase",
        TurnChange.CentreOfMassHeight => "height of the centre of mass",
        TurnChange.FrontFriction => "friction of the front tyres",
        TurnChange.RearFriction => "friction of the rear tyres",
        TurnChange.Friction => "friction of all tyres",
        TurnChange.GearRatio => "gear ratio",
        _ => "current limit of each controller",
    };

    /// <summary>Unit of a change's values.</summary>
    public static string Unit(TurnChange change) => change switch
    {
        TurnChange.Wheelbase or TurnChange.Track or TurnChange.CentreOfMass or TurnChange.CentreOfMassHeight => "mm",
        TurnChange.CurrentLimit => "A",
        _ => "1",
    };

    /// <summary>What moves in a mode.</summary>
    public static string Of(TurnPart part) => part switch
    {
        TurnPart.Ring => "tyre ring",
        TurnPart.Bounce => "bounce",
        TurnPart.Pitch => "pitch",
        TurnPart.Roll => "roll",
        TurnPart.Yaw => "yaw",
        TurnPart.Drift => "drift",
        _ => "wheel spin",
    };
}
