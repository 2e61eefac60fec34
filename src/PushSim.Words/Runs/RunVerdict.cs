using PushSim.Words.Answers;

namespace PushSim.Words.Runs;

/// <summary>The answer of a run with one robot as one sentence in plain words.</summary>
internal static class RunVerdict
{
    /// <summary>The sentence.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="status">How the run ended.</param>
    /// <param name="cause">Why it stopped early; empty if it did not.</param>
    /// <param name="a">Its answers.</param>
    /// <param name="chatter">Whether its tyres chatter; null: what the answers say.</param>
    public static string Of(ScenarioSettings scenario, RunStatus status, string cause, RunAnswers a, ChatterVerdict? chatter = null)
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
        string buzz = ChatterWords.Clause(chatter ?? ChatterVerdict.OfRun(status, a));
        ManoeuvreTraits traits = scenario.Manoeuvre.Traits;
        return traits.Family switch
        {
            ManoeuvreFamily.Pull when !traits.IsDragged && a.PullPlateau is { } p =>
                Text($"{name} pulls {p:0.00} N ({Gram(p)} gf) {(a.IsBouncing ? "on average, bouncing on the tether" : "steadily")}{(a.PullBreakaway > p ? Text($" after a peak of {a.PullBreakaway:0.00} N") : a.PullJerk is { } jerk && jerk.Force > p ? Text($" after a jerk of {jerk.Force:0.00} N") : "")}{(a.IsBouncing ? "" : Limit(a.Binding, AtThrottle(scenario, a.Binding)))}{buzz}."),
            ManoeuvreFamily.Pull when traits.IsDragged && a.PullPlateau is { } p =>
                Text($"{name} holds {(a.PullBreakaway is { } b ? Text($"{b:0.00} N ({Gram(b)} gf) before it breaks away and ") : "")}{p:0.00} N while sliding{(a.IsBouncing ? " on average, bouncing on the tether" : "")}{(a.PullJerk is { } first ? Text($"; the tether jerks with {first.Force:0.00} N") : "")}{buzz}."),
            ManoeuvreFamily.Pull => Text($"{idle} never tightens the tether."),
            ManoeuvreFamily.Turn when a is { IsTurning: true, YawRate: { } rate } =>
                Text($"{name} turns at {Math.Abs(rate):0.00} rad/s ({Math.Abs(rate) * 180.0 / Math.PI:0} deg/s) {(rate > 0 ? "to the left" : "to the right")}{Scrub(a.EffectiveTrackRatio)}{buzz}."),
            ManoeuvreFamily.Turn => Text($"{idle} cannot turn{Limit(a.Binding)}{buzz}."),
            ManoeuvreFamily.Stop when a.StopDistance is { } d =>
                Text($"{name} comes to a stand within {d:0.000} m{Limit(a.Binding)}{buzz}."),
            ManoeuvreFamily.Stop => Text($"{name} does not come to a stand before the end{buzz}."),
            ManoeuvreFamily.Push when traits.NeedsWall && a.PushPlateau is { } push =>
                Text($"{name} pushes the wall with {push:0.00} N ({Gram(push)} gf) after a peak of {a.PushPeak:0.00} N{Limit(a.Binding, AtThrottle(scenario, a.Binding))}{buzz}."),
            ManoeuvreFamily.Push when traits.NeedsWall => Text($"{idle} never touches the wall."),
            ManoeuvreFamily.Hold when a.Travel < AnswerCatalogue.StandsStill => $"{name} stays where it is (moved 0 m){buzz}.",
            ManoeuvreFamily.Hold => Text($"{name} moves {AnswerCatalogue.Named("travel_m")!.Spoken(a.Travel ?? 0.0)}{buzz}."),
            ManoeuvreFamily.Drive or ManoeuvreFamily.Push when a.TimeTo90PercentSpeed is { } t =>
                Text($"{idle}{(isDriven ? "" : " rolls and")} reaches {a.TopSpeed:0.00} m/s, 90 % of it {t:0.000} s after the command{Limit(a.Binding, " on the way")}{buzz}."),
            ManoeuvreFamily.Drive or ManoeuvreFamily.Push => Text($"{idle} does not move forward{buzz}."),
            _ => throw new ArgumentOutOfRangeException(nameof(scenario), traits.Kind, "no words for this manoeuvre"),
        };
    }

    /// <summary>In words how a robot lost its stand.</summary>
    public static string Words(Upset upset) => upset switch
    {
        Upset.NoseUp => "tips over backward",
        Upset.TailUp => "tips over forward",
        Upset.SideUp => "tips over sideways",
        Upset.WheelsUp => "has no driven wheel left on the floor",
        _ => "stands",
    };

    private static string Scrub(double? ratio) => ratio is null ? "" : Text($"; scrub costs it a factor of {ratio:0.000} in turning rate");

    /// <summary>Whether a robot has a motor that turns a drive.</summary>
    public static bool IsDriven(RobotSettings robot) => robot.Drives.Any(d => d.Motors.Count > 0);

    // nothing limits a robot that nothing drives
    private static string Limit(BindingShares? by, string where = "") =>
        by is null ? "" : $"; {(by.Named.Count == 1 ? "the " : "")}{BindingTable.Phrase(by)} {(by.Named.Count == 1 && by.Leading is BindingKind.Battery or BindingKind.Series ? "sets" : "set")} the limit{where}";

    // motors that are not asked for all they have
    private static string AtThrottle(ScenarioSettings scenario, BindingShares? by) => by?.Leading == BindingKind.Motor ? ThrottleWords.At(scenario.Manoeuvre.GreatestThrottle) : "";
}
