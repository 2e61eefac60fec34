using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>
/// Whether a shove is too close to call: it is run again at a tighter tolerance, with starts that differ by less than anyone can set up, and with commands that
/// come a few milliseconds earlier or later.
/// </summary>
public static class CloseCall
{
    // Tighter tolerance of the second run, as a share of the first [1].
    private const double Tighter = 0.1;

    // Differences that no one at the ring can avoid: place [m], heading [rad], time of the command [s].
    private const double TinyOffset = 0.0005;
    private const double TinyTurn = 0.003;
    private const double TinyDelay = 0.004;

    // Enough to find touch, line and ground [1/s].
    private const double SampleRate = 250.0;

    /// <summary>The result with its verdict reviewed; results without a shove come back as they are.</summary>
    /// <param name="result">A finished run.</param>
    /// <param name="cancel">Stops the runs.</param>
    /// <exception cref="OperationCanceledException">The runs were cancelled.</exception>
    public static RunResult Review(RunResult result, CancellationToken cancel = default)
    {
        if (result.Shove is not ShoveOutcome first || result.Scenario.Opponent is null)
        {
            return result;
        }

        ScenarioSettings s = result.Scenario with { Numerics = result.Scenario.Numerics with { SampleRate = SampleRate } };
        List<(string Words, ShoveOutcome Outcome)> tries = [];
        foreach ((string words, ScenarioSettings other) in Variants(s))
        {
            if (Simulator.Run(other, cancel).Shove is ShoveOutcome outcome)
            {
                tries.Add((words, outcome));
            }
        }

        bool hasChatter = result.Answers.Chatter is not null || result.Opponent?.Answers.Chatter is not null;
        string reason = Reason(first, tries, hasChatter, s.Shove.DecidingGround);
        ShoveOutcome reviewed = first with { TooCloseToCall = reason.Length > 0, Reason = reason };
        return result with
        {
            Shove = reviewed,
            Verdict = Verdict.OfShove(result.Scenario, reviewed, result.Answers, result.Opponent!.Answers),
        };
    }

    private static IEnumerable<(string Words, ScenarioSettings Scenario)> Variants(ScenarioSettings s)
    {
        NumericsSettings tight = s.Numerics with { Tolerance = Tighter * s.Numerics.Tolerance };
        yield return ("at a tighter tolerance", s with { Numerics = tight });
        foreach (int sign in new[] { -1, 1 })
        {
            string side = sign > 0 ? "left" : "right";
            yield return ($"with the opponent half a millimetre further {side}", s with { Shove = s.Shove with { Offset = s.Shove.Offset + (sign * TinyOffset) } });
            yield return ($"turned a fifth of a degree {side}", s with { Manoeuvre = s.Manoeuvre with { InitialHeading = s.Manoeuvre.InitialHeading + (sign * TinyTurn) } });
        }

        yield return ("starting a moment later", s with { Manoeuvre = Later(s.Manoeuvre) });
        yield return ("with the opponent starting a moment later", s with { Opponent = s.Opponent! with { Manoeuvre = Later(s.Opponent.Manoeuvre) } });
    }

    private static ManoeuvreSettings Later(ManoeuvreSettings m) => m with { Driver = m.Driver with { ReactionDelay = m.Driver.ReactionDelay + TinyDelay } };

    private static string Reason(ShoveOutcome own, List<(string Words, ShoveOutcome Outcome)> tries, bool hasChatter, double deciding)
    {
        (string Words, ShoveOutcome Outcome)[] others = [.. tries.Where(t => t.Outcome.Winner != own.Winner)];
        if (others.Length == 0)
        {
            return string.Empty;
        }

        bool isSmall = tries.All(t => Math.Abs(t.Outcome.GroundGained) < 2.0 * deciding) && Math.Abs(own.GroundGained) < 2.0 * deciding;
        string share = $"{others.Length} of {tries.Count} nearly equal starts end otherwise, for example {others[0].Words}";
        if (isSmall)
        {
            return $"the two are level, and the ground gained stays about the deciding {1000.0 * deciding:0} mm; {share}";
        }

        if (hasChatter)
        {
            return $"tyres chatter, and its phase decides; {share}";
        }

        return others.Any(t => t.Outcome.Winner >= 0)
            ? $"the shove is bistable, a tiny difference turns the robots one way or the other; {share}"
            : share;
    }
}
