using PushSim.Words.Answers;
using PushSim.Words.Turns;

namespace PushSim.Words.Runs;

/// <summary>What a run says, in plain words.</summary>
public static class RunWords
{
    /// <summary>The answer in a sentence or two: what happened, and every quantity that is asked.</summary>
    public static string Verdict(RunResult run) => run.Stop is { Kind: RunStopKind.Refused } refused
        ? $"The run could not start: {Cause(refused)}."
        : Sentence(run) is var said ? said + AskedWords.Rest(run, said) : "";

    /// <summary>The first sentence alone, of several clauses.</summary>
    internal static string Sentence(RunResult run) =>
        run.Turning is TurnReport turn ? TurnWords.Verdict(turn, run)
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
