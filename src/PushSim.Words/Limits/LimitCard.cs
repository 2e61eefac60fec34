using PushSim.Analysis.Limits;
using PushSim.Words.Tables;

namespace PushSim.Words.Limits;

/// <summary>The answer card of limits.</summary>
public static class LimitCard
{
    // Inputs that are named as worth a change [1].
    private const int MostNamed = 2;

    // A change that nobody would notice [%].
    private const double LeastSeen = 1.0;

    /// <summary>The card.</summary>
    public static AnswerCard Of(LimitReport r) => new(LimitVerdict.Answer(r))
    {
        Facts = $"{Forces(r)} {LimitVerdict.OfSeries(r)}".TrimEnd(),
        Numbers = [.. Numbers(r).Take(AnswerCard.MostNumbers)],
        Sure = Sure(r),
        Next = Next(r),
        Robots = [r.Scenario.Robot.Name],
    };

    private static string Forces(LimitReport r)
    {
        double ratio = r.Now.MotorForce / r.Now.TractionPeak;
        string how = !double.IsFinite(ratio) ? "" : ratio >= 1.0 ? Text($", {ratio:0.0} times what the tyres hold") : Text($", {100.0 * ratio:0} % of what the tyres hold");
        return $"The motors could give {(r.Now.IsStarved ? "less than " : "")}{ForceWords.Both(r.Now.MotorForce)}{ThrottleWords.At(r.Now.Condition.Throttle)}{how}.";
    }

    private static IEnumerable<CardNumber> Numbers(LimitReport r)
    {
        LimitState s = r.Now;
        if (s.Pull is double pull)
        {
            yield return new CardNumber("steady pull", Text($"{pull:0.0} N"), ForceWords.Scale(pull), Text($"{pull / r.Scenario.Robot.Chassis.Mass:0.0} mN for each gram"));
        }

        foreach (LimitOutput output in r.ShownOutputs.Where(o => o is LimitOutput.Pull or LimitOutput.LaunchTime).Take(MostNamed))
        {
            if (Best(r, output) is Gain g)
            {
                yield return new CardNumber($"10 % more {LimitWords.Of(g.Input)}", Text($"{g.ChangePercent:+0.#;-0.#;0} %"), output == LimitOutput.Pull ? "of pull" : "of time to 1 m", Text($"from {g.Base:0.00} to {g.Changed:0.00} {LimitWords.Unit(output)}"));
            }
        }

        yield return new CardNumber("tyres hold", Text($"{s.TractionPeak:0.0} N"), ForceWords.Scale(s.TractionPeak), Text($"sliding {ForceWords.Scale(s.TractionSliding)}"));
        yield return new CardNumber("top speed", Text($"{s.TopSpeed:0.00} m/s"), "", s.CrossingSpeed is double v && s.Binding == BindingKind.Tyre ? Text($"motors above {v:0.0} m/s") : "");
        if (r.Match.PeakWinding is double hot)
        {
            yield return new CardNumber("hottest winding", Text($"{hot:0} °C"), "", Text($"in a match of {r.Match.Pattern.Length:0} s"));
        }
    }

    // what helps most; of a time less is better
    private static Gain? Best(LimitReport r, LimitOutput output) => r.Gains.Where(g => g.Output == output && Math.Abs(g.ChangePercent) >= LeastSeen)
        .MaxBy(g => output == LimitOutput.LaunchTime ? -g.ChangePercent : g.ChangePercent);

    private static string Sure(LimitReport r)
    {
        double[] pulls = [.. r.States.Select(s => s.Pull).OfType<double>()];
        string states = pulls.Length < 2 ? "" : pulls.Max() - pulls.Min() < 0.01 * pulls.Max() ? "the pull is the same with a cold or warm motor, a full or part empty battery. " : Text($"the pull lies from {pulls.Min():0.0} to {pulls.Max():0.0} N between cold and warm motors, full and part empty battery. ");
        double ratio = r.Now.MotorForce / r.Now.TractionPeak;
        return states + (!double.IsFinite(ratio) || r.Now.Pull is null || r.Now.Bound.Count > 1 ? "" : ratio >= 1.0 ? Text($"The motors would have to lose {100.0 * (1.0 - (1.0 / ratio)):0} % of their force to bind at standstill.") : Text($"The tyres would have to lose {100.0 * (1.0 - ratio):0} % of their grip to bind at standstill."));
    }

    private static string Next(LimitReport r)
    {
        if (r.Now.Binding is not BindingKind kind)
        {
            return "";
        }

        string ratio = r.Ratio is { } curve ? Text($" Best gear ratio for a dash of 1 m: {curve.BestForDash * curve.MeanRatio:0.#}:1.") : "";
        return BindingTable.Advice(kind, r.Now.Bound.Count == 1) + "." + ratio;
    }
}
