using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>Whether a shove is too close to call: it is run again at a tighter tolerance, with starts that differ by less than anyone can set up, and with commands that
/// come a few milliseconds earlier or later. One run more, without friction between upright faces, tells whether that decides.</summary>
public static class CloseCall
{
    // Tighter tolerance of the second run, as a share of the first [1].
    private const double Tighter = 0.1;

    // Differences that no one at the ring can avoid: place [m], heading [rad], time of the command [s].
    private const double TinyOffset = 0.0005;
    private const double TinyTurn = 0.003;
    private const double TinyDelay = 0.004;

    // Memory of friction on upright faces that leaves nothing of it [s].
    private const double NoMemory = 1e-4;

    /// <summary>The result with its outcome reviewed; results without a shove come back as they are.</summary>
    /// <exception cref="OperationCanceledException">The runs were cancelled.</exception>
    public static RunResult Review(RunResult result, CancellationToken cancel = default) => Review(result, WorkBudget.Endless(cancel));

    /// <summary>The same as a part of more work.</summary>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    internal static RunResult Review(RunResult result, WorkBudget work)
    {
        if (result.Shove is not ShoveOutcome first || result.Scenario.Opponent is null)
        {
            return result;
        }

        ScenarioSettings s = result.Scenario;
        (CloseStart Start, ScenarioSettings Scenario)[] variants = [.. Variants(s)];
        ScenarioSettings smooth = s with { Contact = s.Contact with { FrictionMemory = NoMemory } };
        MatchOutcome[] outcomes = MatchSet.Play([.. variants.Select(v => v.Scenario), smooth], work);
        List<(CloseStart Start, MatchOutcome Outcome)> tries = [.. variants.Zip(outcomes).Where(t => t.Second.Status != RunStatus.Failed).Select(t => (t.First.Start, t.Second))];
        bool hasChatter = result.Answers.Chatter is not null || result.Opponent?.Answers.Chatter is not null;
        bool faces = outcomes[^1].Status != RunStatus.Failed && outcomes[^1].Winner != first.Winner && outcomes[^1].Winner != outcomes[0].Winner;
        CloseShove? close = Find(first, tries, faces ? CloseCause.FaceFriction : hasChatter ? CloseCause.Chatter : null, s.Shove.DecidingGround);
        return result with { Shove = first with { TooCloseToCall = close is not null, Close = close } };
    }

    private static IEnumerable<(CloseStart Start, ScenarioSettings Scenario)> Variants(ScenarioSettings s)
    {
        NumericsSettings tight = s.Numerics with { Tolerance = Tighter * s.Numerics.Tolerance };
        yield return (CloseStart.Tighter, s with { Numerics = tight });
        foreach (int sign in new[] { -1, 1 })
        {
            yield return (sign > 0 ? CloseStart.Left : CloseStart.Right, s with { Shove = s.Shove with { Offset = s.Shove.Offset + (sign * TinyOffset) } });
            yield return (sign > 0 ? CloseStart.TurnedLeft : CloseStart.TurnedRight, s with { Manoeuvre = s.Manoeuvre with { InitialHeading = s.Manoeuvre.InitialHeading + (sign * TinyTurn) } });
        }

        yield return (CloseStart.Later, s with { Manoeuvre = Later(s.Manoeuvre) });
        yield return (CloseStart.OpponentLater, s with { Opponent = s.Opponent! with { Manoeuvre = Later(s.Opponent.Manoeuvre) } });
    }

    private static ManoeuvreSettings Later(ManoeuvreSettings m) => m with { Driver = m.Driver with { ReactionDelay = m.Driver.ReactionDelay + TinyDelay } };

    private static CloseShove? Find(ShoveOutcome own, List<(CloseStart Start, MatchOutcome Outcome)> tries, CloseCause? known, double deciding)
    {
        (CloseStart Start, MatchOutcome Outcome)[] others = [.. tries.Where(t => t.Outcome.Winner != own.Winner)];
        bool isSmall = tries.All(t => Math.Abs(t.Outcome.GroundGained) < 2.0 * deciding) && Math.Abs(own.GroundGained) < 2.0 * deciding;
        CloseCause cause = isSmall ? CloseCause.Level : known ?? (others.Any(t => t.Outcome.Winner >= 0) ? CloseCause.Bistable : CloseCause.Unknown);
        return others.Length > 0 ? new CloseShove(cause, others.Length, tries.Count, others[0].Start)
            : known == CloseCause.FaceFriction ? new CloseShove(CloseCause.FaceFriction, 0, tries.Count, CloseStart.SmoothFaces)
            : null;
    }
}
