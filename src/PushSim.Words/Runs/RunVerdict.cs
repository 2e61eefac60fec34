namespace PushSim.Words.Runs;

/// <summary>The answer as one sentence in plain words.</summary>
internal static class RunVerdict
{
    // Movement that nobody would see [m].
    private const double StandsStill = 1e-6;

    /// <summary>The verdict of a run with one robot.</summary>
    public static string Of(ScenarioSettings scenario, RunStatus status, string cause, RunAnswers a)
    {
        string name = scenario.Robot.Name;
        if (status == RunStatus.Failed)
        {
            return Text($"{name}: the run could not finish, {cause}.");
        }

        if (status == RunStatus.Tips)
        {
            return Text($"{name} {cause}.");
        }

        // a robot without motors cannot, and is not blamed for it
        bool isDriven = IsDriven(scenario.Robot);
        string idle = isDriven ? name : $"{name}, which has no motors,";
        string buzz = a.Chatter is { } hz ? Text($"; its tyres chatter at about {hz:0} Hz") : string.Empty;
        ManoeuvreTraits traits = scenario.Manoeuvre.Traits;
        return traits.Family switch
        {
            ManoeuvreFamily.Pull when !traits.IsDragged && a.PullPlateau is { } p =>
                Text($"{name} pulls {p:0.00} N ({Gram(p)} gf) {(a.IsBouncing ? "on average, bouncing on the tether" : "steadily")}{(a.PullBreakaway > p ? Text($" after a {(a.IsJerk ? "jerk" : "peak")} of {a.PullBreakaway:0.00} N") : "")}{(a.IsBouncing ? "" : Limit(a.Binding, AtThrottle(scenario, a.Binding)))}{buzz}."),
            ManoeuvreFamily.Pull when traits.IsDragged && a.PullPlateau is { } p =>
                Text($"{name} holds {(a.IsJerk ? "" : Text($"{a.PullBreakaway:0.00} N ({Gram(a.PullBreakaway!.Value)} gf) before it breaks away and "))}{p:0.00} N while sliding{(a.IsBouncing ? " on average, bouncing on the tether" : "")}{(a.IsJerk ? Text($"; the first {a.PullBreakaway:0.00} N are a jerk") : "")}{buzz}."),
            ManoeuvreFamily.Pull => Text($"{idle} never tightens the tether."),
            ManoeuvreFamily.Turn when a is { IsTurning: true, YawRate: { } rate } =>
                Text($"{name} turns at {Math.Abs(rate):0.0} rad/s ({Math.Abs(rate) * 180.0 / Math.PI:0} deg/s) {(rate > 0 ? "to the left" : "to the right")}{Scrub(a.EffectiveTrackRatio)}{buzz}."),
            ManoeuvreFamily.Turn => Text($"{idle} cannot turn{Limit(a.Binding)}{buzz}."),
            ManoeuvreFamily.Stop when a.StopDistance is { } d =>
                Text($"{name} comes to a stand within {100.0 * d:0} cm{Limit(a.Binding)}{buzz}."),
            ManoeuvreFamily.Stop => Text($"{name} does not come to a stand before the end{buzz}."),
            ManoeuvreFamily.Push when traits.NeedsWall && a.PushPlateau is { } push =>
                Text($"{name} pushes the wall with {push:0.00} N ({Gram(push)} gf) after a peak of {a.PushPeak:0.00} N{Limit(a.Binding, AtThrottle(scenario, a.Binding))}{buzz}."),
            ManoeuvreFamily.Push when traits.NeedsWall => Text($"{idle} never touches the wall."),
            ManoeuvreFamily.Hold when a.Travel < StandsStill => Text($"{name} stays where it is{buzz}."),
            ManoeuvreFamily.Hold => Text($"{name} moves {1000.0 * a.Travel:0.000} mm{buzz}."),
            ManoeuvreFamily.Drive or ManoeuvreFamily.Push when a.TimeTo90PercentSpeed is { } t =>
                Text($"{idle}{(isDriven ? "" : " rolls and")} reaches {a.TopSpeed:0.00} m/s, 90 % of it {t:0.00} s after the command{Limit(a.Binding, " on the way")}{buzz}."),
            ManoeuvreFamily.Drive or ManoeuvreFamily.Push => Text($"{idle} does not move forward{buzz}."),
            _ => throw new ArgumentOutOfRangeException(nameof(scenario), traits.Kind, "no words for this manoeuvre"),
        };
    }

    /// <summary>The verdict of a shove.</summary>
    public static string OfShove(ScenarioSettings scenario, ShoveOutcome o, RunAnswers first, RunAnswers opponent)
    {
        string[] names = [scenario.Robot.Name, scenario.Opponent!.Robot.Name];
        string close = o.TooCloseToCall == true ? $" Too close to call: {TooClose(o.Close, scenario.Shove.DecidingGround)}." : string.Empty;
        if (o.FirstContact is null)
        {
            return Text($"{names[0]} and {names[1]} never touch.{close}");
        }

        string limits = Text($"{names[0]} was held back by its {Held(first, scenario.Robot, scenario.Manoeuvre)}, {names[1]} by its {Held(opponent, scenario.Opponent.Robot, scenario.Opponent.Manoeuvre)}");
        string aside = Aside(names, o);
        if (o.Winner < 0)
        {
            string how = o.Ending == ShoveEnding.Tips ? "both robots tip past 20 deg or lose the floor" : Text($"after {o.EndTime:0.0} s the contact stands {1000.0 * Math.Abs(o.GroundGained):0} mm from where they met");
            return Text($"Stalemate: {how}; {limits}{aside}.{close}");
        }

        string winner = names[o.Winner];
        string loser = names[1 - o.Winner];
        string what = o.Ending switch
        {
            ShoveEnding.Tips => Text($"{winner} wins: {loser} {Words(o.Upset)} {o.EndTime:0.00} s after the start"),
            ShoveEnding.Line => Text($"{winner} pushes {loser} {(o.IsFarLine ? "over the far line (they have swapped ends)" : "back over its line")} after {o.EndTime:0.00} s"),
            _ => Text($"{winner} gains {1000.0 * Math.Abs(o.GroundGained):0} mm on {loser} in {o.EndTime:0.0} s"),
        };
        string gives = o.GivesGroundAt is { } t && o.Ending != ShoveEnding.Tips ? Text($"; {loser} gives ground from {t:0.00} s on, at {o.GroundSpeed:0.00} m/s") : string.Empty;
        return Text($"{what}{gives}; {limits}{aside}.{close}");
    }

    /// <summary>In words how a robot lost its stand.</summary>
    public static string Words(Upset upset) => upset switch
    {
        Upset.NoseUp => "tips back past 20 deg",
        Upset.TailUp => "tips forward past 20 deg",
        Upset.SideUp => "tips sideways past 20 deg",
        Upset.WheelsUp => "has no driven wheel left on the floor",
        _ => "stands",
    };

    // A turn of the pair that anyone would see [rad]: 10 degrees.
    private const double SeenTurn = Math.PI / 18.0;

    private static string Aside(string[] names, ShoveOutcome o)
    {
        double[] turns = [o.TurnedAside.First, o.TurnedAside.Opponent];
        List<string> seen = [];
        for (int k = 0; k < 2; k++)
        {
            if (Math.Abs(turns[k]) > SeenTurn)
            {
                seen.Add(Text($"{names[k]} is turned {Math.Abs(turns[k]) * 180.0 / Math.PI:0} deg to its {(turns[k] > 0.0 ? "left" : "right")}"));
            }
        }

        return seen.Count > 0 ? "; " + string.Join(", ", seen) : "; they stay straight";
    }

    private static string Scrub(double? ratio) => ratio is null ? "" : Text($"; scrub costs it a factor of {ratio:0.00} in turning rate");

    // a robot that is told nothing only holds against the other with its shorted motors
    private static string Held(RunAnswers a, RobotSettings robot, ManoeuvreSettings manoeuvre) =>
        a.Binding is not { } bound || manoeuvre.Commands.All(c => c is { Throttle: 0.0, Turn: 0.0 }) ? Idle(robot) : BindingTable.Phrase(bound, a.IsNearTopSpeed ? "top speed (motors and gearing)" : null);

    private static bool IsDriven(RobotSettings robot) => robot.Drives.Any(d => d.Motors.Count > 0);

    private static string Idle(RobotSettings robot) => IsDriven(robot) ? BindingTable.Words(BindingKind.Nothing) : "lack of motors";

    // nothing limits a robot that nothing drives
    private static string Limit(BindingShares? by, string where = "") =>
        by is null ? "" : $"; {(by.Named.Count == 1 ? "the " : "")}{BindingTable.Phrase(by)} {(by.Named.Count == 1 && by.Leading is BindingKind.Battery or BindingKind.Series ? "sets" : "set")} the limit{where}";

    // motors that are not asked for all they have
    private static string AtThrottle(ScenarioSettings scenario, BindingShares? by) => by?.Leading == BindingKind.Motor ? ThrottleWords.At(scenario.Manoeuvre.GreatestThrottle) : "";

    private static string Gram(double newton) => Text($"{newton / 9.80665 * 1000.0:0}");

    /// <summary>Why a shove is too close to call; empty if it is not.</summary>
    /// <param name="close">Why.</param>
    /// <param name="deciding">Ground that decides [m].</param>
    public static string TooClose(CloseShove? close, double deciding)
    {
        if (close is null)
        {
            return "";
        }

        string share = $"{close.Otherwise} of {close.Tries} nearly equal starts end otherwise, for example {Words(close.Example)}";
        return close.Cause switch
        {
            CloseCause.Level => Text($"the two are level, and the ground gained stays about the deciding {1000.0 * deciding:0} mm; {share}"),
            CloseCause.Chatter => $"tyres chatter, and its phase decides; {share}",
            CloseCause.Bistable => $"the shove is bistable, a tiny difference turns the robots one way or the other; {share}",
            _ => share,
        };
    }

    private static string Words(CloseStart start) => start switch
    {
        CloseStart.Tighter => "at a tighter tolerance",
        CloseStart.Right => "with the opponent half a millimetre further right",
        CloseStart.TurnedRight => "turned a fifth of a degree right",
        CloseStart.Left => "with the opponent half a millimetre further left",
        CloseStart.TurnedLeft => "turned a fifth of a degree left",
        CloseStart.Later => "starting a moment later",
        _ => "with the opponent starting a moment later",
    };
}
