using PushSim.Words.Answers;
using PushSim.Words.Turns;

namespace PushSim.Words.Runs;

/// <summary>What a run says, in plain words.</summary>
public static class RunWords
{
    /// <summary>How two robots met and what that gave, in two sentences.</summary>
    /// <param name="bump">The bump.</param>
    /// <param name="stated">Restitution as stated, at 1 m/s [1].</param>
    public static string Bump(Bump bump, double stated)
    {
        string ground = bump.GroundShare is double share ? Text($" Of the ground the bump gave {100.0 * share:0} %: so much less is gained from a start nose to nose.") : "";
        return Text($"They meet at {bump.ClosingSpeed:0.00} m/s, pass about {bump.Momentum:0.00} N s and lose {bump.EnergyLost:0.00} J; {100.0 * bump.Restitution:0} % of that speed comes back ({100.0 * stated:0} % at 1 m/s).{ground}");
    }

    /// <summary>The answer in a sentence or two: what happened, and every quantity that is asked.</summary>
    public static string Verdict(RunResult run) => run.Stop is { Kind: RunStopKind.Refused } refused
        ? $"The run could not start: {Cause(refused)}."
        : Sentence(run) is var said ? said + AskedWords.Rest(run, said) : "";

    /// <summary>The first sentence alone, of several clauses.</summary>
    internal static string Sentence(RunResult run) =>
        run.Turning is TurnResult turn ? TurnWords.Verdict(turn, run)
        : run.Shove is ShoveOutcome shove ? $"{ShoveVerdict.Of(run.Scenario, shove, run.Answers, run.Opponent!.Answers)} {ChatterWords.InShove(run.Chatter, run.Scenario.Robot.Name)}".TrimEnd() + (LookWords.Drawn(run) is { Length: > 0 } drawn ? " " + drawn : "")
        : RunVerdict.Of(run.Scenario, run.Status, Cause(run.Stop), run.Answers, run.Chatter);

    /// <summary>What to know before believing it, sentence by sentence; of two robots each tells whose it is.</summary>
    public static IReadOnlyList<string> Warnings(RunResult run) =>
    [
        .. run.Warnings.Select(w => run.Opponent is null ? WarningWords.Of(w) : $"{(w.Robot == 0 ? run.Scenario.Robot : run.Opponent.Robot).Name}: {WarningWords.Of(w)}"),
    ];

    /// <summary>Why it stopped before its end time, and what to change; empty if it did not.</summary>
    /// <param name="stop">The stop; null for none.</param>
    public static string Cause(RunStop? stop) => stop is null ? "" : StopWords.Of(stop);

    /// <summary>Why a shove is too close to call; empty if it is not.</summary>
    public static string TooClose(RunResult run) => ShoveVerdict.TooClose(run.Shove?.Close, run.Scenario.Shove.DecidingGround);
}
