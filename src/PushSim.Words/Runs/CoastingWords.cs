using PushSim.Words.Answers;

namespace PushSim.Words.Runs;

/// <summary>What a run would answer if its controllers coasted between their pulses, of which the file says nothing.</summary>
public static class CoastingWords
{
    // Differences below it are not worth a word [1].
    private const double Worth = 0.05;

    /// <summary>What is asked and differs, with the coasting value; empty for none.</summary>
    public static IReadOnlyList<(Answer Answer, double Value)> Differing(RunResult run) => run.Coasting is not { Status: RunStatus.Finished } twin || run.Status != RunStatus.Finished
        ? []
        : [.. AnswerCatalogue.Asked(run.Scenario).Select(a => (Answer: a, Own: a.Of(run), Value: a.Of(twin))).Where(a => a.Own is not null && a.Value is not null && Differs(a.Own.Value, a.Value.Value)).Select(a => (a.Answer, a.Value!.Value))];

    /// <summary>A clause; empty where nothing differs.</summary>
    public static string Clause(RunResult run) => Differing(run) is { Count: > 0 } rows
        ? $"if its controllers coast between pulses, {string.Join(" and ", rows.Select(r => r.Answer.Clause(run.Opponent is null ? "it" : run.Scenario.Robot.Name, r.Value)))} (between_pulses tells)"
        : "";

    private static bool Differs(double own, double other) => Math.Abs(other - own) > Worth * Math.Abs(own);
}
