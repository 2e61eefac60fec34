using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>The answer as one sentence in plain words.</summary>
internal static class Verdict
{
    // Movement that nobody would see [m].
    private const double StandsStill = 1e-6;

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

        string buzz = a.Chatter is { } hz ? Text($"; its tyres chatter at about {hz:0} Hz") : string.Empty;
        return scenario.Manoeuvre.Kind switch
        {
            ManoeuvreKind.PullTest when a.PullPlateau is { } p =>
                Text($"{name} pulls {p:0.00} N ({Gram(p)} gf) steadily after a peak of {a.PullBreakaway:0.00} N; the {a.LimitedBy} set the limit{buzz}."),
            ManoeuvreKind.DragTest when a.PullPlateau is { } p =>
                Text($"{name} holds {a.PullBreakaway:0.00} N ({Gram(a.PullBreakaway!.Value)} gf) before it breaks away and {p:0.00} N while sliding{buzz}."),
            ManoeuvreKind.PullTest or ManoeuvreKind.DragTest => Text($"{name} never tightens the tether."),
            ManoeuvreKind.Spot or ManoeuvreKind.Arc when a.EffectiveTrackRatio is { } ratio =>
                Text($"{name} turns at {Math.Abs(a.YawRate!.Value):0.0} rad/s ({Math.Abs(a.YawRate.Value) * 180.0 / Math.PI:0} deg/s) {(a.YawRate > 0 ? "to the left" : "to the right")}; scrub costs it a factor of {ratio:0.00} in turning rate{buzz}."),
            ManoeuvreKind.Spot or ManoeuvreKind.Arc => Text($"{name} cannot turn; the {a.LimitedBy} set the limit{buzz}."),
            ManoeuvreKind.Brake or ManoeuvreKind.Reversal when a.StopDistance is { } d =>
                Text($"{name} comes to a stand within {100.0 * d:0} cm; the {a.LimitedBy} set the limit{buzz}."),
            ManoeuvreKind.Brake or ManoeuvreKind.Reversal => Text($"{name} does not come to a stand before the end{buzz}."),
            ManoeuvreKind.Hold when a.Travel < StandsStill => Text($"{name} stays where it is{buzz}."),
            ManoeuvreKind.Hold => Text($"{name} moves {1000.0 * a.Travel:0.000} mm{buzz}."),
            _ when a.TimeTo90PercentSpeed is { } t =>
                Text($"{name} reaches {a.TopSpeed:0.00} m/s, 90 % of it {t:0.00} s after the command; the {a.LimitedBy} set the limit on the way{buzz}."),
            _ => Text($"{name} does not move forward{buzz}."),
        };
    }

    private static string Gram(double newton) => Text($"{newton / 9.80665 * 1000.0:0}");

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
