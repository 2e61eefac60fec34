namespace PushSim.Words.Runs;

/// <summary>The answer of a shove as one sentence in plain words.</summary>
internal static class ShoveVerdict
{
    // A turn of the pair that anyone would see [rad]: 10 degrees.
    private const double SeenTurn = Math.PI / 18.0;

    // Turned this far a robot has to be told of with its driver [rad]: 30 degrees.
    private const double SteeredTurn = Math.PI / 6.0;

    private const string Straight = "they stay straight";

    /// <summary>The sentence.</summary>
    public static string Of(ScenarioSettings scenario, ShoveOutcome o, RunAnswers first, RunAnswers opponent)
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
            string how = o.Ending == ShoveEnding.Tips ? "both robots tip over or lose the floor" : Text($"after {o.EndTime:0.0} s the contact stands {Math.Abs(o.GroundGained):0.000} m from where they met");
            return Text($"Stalemate: {how}; {limits}{aside}.{close}");
        }

        string winner = names[o.Winner];
        string loser = names[1 - o.Winner];
        string what = o.Ending switch
        {
            ShoveEnding.Tips => Text($"{winner} wins: {loser} {RunVerdict.Words(o.Upset)} {o.EndTime:0.00} s after the start"),
            ShoveEnding.Line => Text($"{winner} pushes {loser} {(o.IsFarLine ? "over the far line (they have swapped ends)" : "back over its line")} after {o.EndTime:0.00} s, {Math.Abs(o.GroundGained):0.000} m in all"),
            _ => Text($"{winner} gains {Math.Abs(o.GroundGained):0.000} m on {loser} in {o.EndTime:0.0} s"),
        };
        string gives = o.GivesGroundAt is { } t && o.Ending != ShoveEnding.Tips ? Text($"; {loser} gives ground from {t:0.00} s on, at {o.GroundSpeed:0.00} m/s") : string.Empty;
        return Text($"{what}{gives}; {limits}{aside}.{close}");
    }

    /// <summary>What held whom back, in a sentence; one for both where it is the same.</summary>
    public static string Limits(RunResult run)
    {
        ScenarioSettings scenario = run.Scenario;
        string first = Held(run.Answers, scenario.Robot, scenario.Manoeuvre);
        string second = Held(run.Opponent!.Answers, scenario.Opponent!.Robot, scenario.Opponent.Manoeuvre);
        return first == second ? $"Both are held back by their {first}." : $"{scenario.Robot.Name} is held back by its {first}, {scenario.Opponent.Robot.Name} by its {second}.";
    }

    /// <summary>Who is turned aside, in a sentence; empty where both stay straight.</summary>
    public static string Turned(RunResult run) =>
        run.Shove is { FirstContact: not null } o && Aside([run.Scenario.Robot.Name, run.Opponent!.Robot.Name], o)["; ".Length..] is var aside && aside != Straight ? aside + "." + Steering(run.Scenario, o) : "";

    /// <summary>Whether anyone steered, in a sentence; empty where both stayed within what a driver would hardly mend.</summary>
    /// <param name="scenario">The shove.</param>
    /// <param name="o">How it ended.</param>
    public static string Steering(ScenarioSettings scenario, ShoveOutcome o)
    {
        bool[] steers = [scenario.Manoeuvre.Driver.Steering > 0.0, scenario.Opponent!.Manoeuvre.Driver.Steering > 0.0];
        bool isTurned = Math.Max(Math.Abs(o.TurnedAside.First), Math.Abs(o.TurnedAside.Opponent)) > SteeredTurn;
        return !isTurned ? ""
            : steers is [true, true] ? " Both drivers steer, but wheels that slide hardly turn a robot."
            : steers is [false, false] ? " Nobody steers here: real drivers would turn back (driver.steering)."
            : $" Only the driver of {(steers[0] ? scenario.Robot.Name : scenario.Opponent.Robot.Name)} steers.";
    }

    /// <summary>Why a shove is too close to call; empty if it is not.</summary>
    /// <param name="close">Why.</param>
    /// <param name="deciding">Ground that decides [m].</param>
    public static string TooClose(CloseShove? close, double deciding)
    {
        if (close is null)
        {
            return "";
        }

        string share = close.Otherwise == 0
            ? $"without it the shove ends otherwise, and none of {close.Tries} nearly equal starts does"
            : $"{close.Otherwise} of {close.Tries} nearly equal starts end otherwise, for example {Words(close.Example)}";
        return close.Cause switch
        {
            CloseCause.Level => Text($"the two are level, and the ground gained stays about the deciding {1000.0 * deciding:0} mm; {share}"),
            CloseCause.FaceFriction => $"friction between the faces decides, it holds a vertical force from the bump on; {share}",
            CloseCause.Chatter => $"tyres chatter, and its phase decides; {share}",
            CloseCause.Bistable => $"the shove is bistable, a tiny difference turns the robots one way or the other; {share}",
            _ => share,
        };
    }

    /// <summary>The same in one line for a card: how many nearly equal starts end otherwise.</summary>
    /// <param name="close">Why.</param>
    public static string TooCloseInShort(CloseShove close)
    {
        string cause = close.Cause switch
        {
            CloseCause.Level => "they are level",
            CloseCause.FaceFriction => "friction between the faces decides",
            CloseCause.Chatter => "the phase of the chatter decides",
            CloseCause.Bistable => "a tiny difference decides",
            _ => "",
        };
        return close.Otherwise == 0
            ? "friction between the faces decides: without it the shove ends otherwise"
            : $"{close.Otherwise} of {close.Tries} nearly equal starts end otherwise{(cause.Length > 0 ? $" ({cause})" : "")}";
    }

    private static string Words(CloseStart start) => start switch
    {
        CloseStart.Tighter => "at a tighter tolerance",
        CloseStart.Right => "with the opponent half a millimetre further right",
        CloseStart.TurnedRight => "turned a fifth of a degree right",
        CloseStart.Left => "with the opponent half a millimetre further left",
        CloseStart.TurnedLeft => "turned a fifth of a degree left",
        CloseStart.Later => "starting a moment later",
        CloseStart.SmoothFaces => "with faces that hold no friction",
        _ => "with the opponent starting a moment later",
    };

    private static string Aside(string[] names, ShoveOutcome o)
    {
        double[] turns = [o.TurnedAside.First, o.TurnedAside.Opponent];
        List<string> seen = [];
        for (int k = 0; k < 2; k++)
        {
            if (Math.Abs(turns[k]) > SeenTurn)
            {
                seen.Add(Text($"{names[k]} is turned {Math.Abs(turns[k]) * 180.0 / Math.PI:0.0} deg to its {(turns[k] > 0.0 ? "left" : "right")}"));
            }
        }

        return seen.Count > 0 ? "; " + string.Join(", ", seen) : "; " + Straight;
    }

    // a robot that is told nothing only holds against the other with its shorted motors
    private static string Held(RunAnswers a, RobotSettings robot, ManoeuvreSettings manoeuvre) =>
        a.Binding is not { } bound || manoeuvre.Commands.All(c => c is { Throttle: 0.0, Turn: 0.0 }) ? Idle(robot) : BindingTable.Phrase(bound, a.IsNearTopSpeed ? "top speed (motors and gearing)" : null);

    private static string Idle(RobotSettings robot) => RunVerdict.IsDriven(robot) ? BindingTable.Words(BindingKind.Nothing) : "lack of motors";
}
