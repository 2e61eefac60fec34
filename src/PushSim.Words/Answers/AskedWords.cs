namespace PushSim.Words.Answers;

/// <summary>What a verdict must tell besides its sentence.</summary>
public static class AskedWords
{
    // Of a robot that did not get off the line [m].
    private const double StandsStill = 1e-3;

    /// <summary>A second sentence with every asked quantity that the first does not name, and whether a quantity has no value; empty where there is none.</summary>
    /// <param name="run">The run.</param>
    /// <param name="said">The first sentence.</param>
    public static string Rest(RunResult run, string said)
    {
        if (run.Scenario.Ask.Count == 0 && DidNothing(run))
        {
            return "";
        }

        string[] clauses = [.. AnswerCatalogue.Asked(run.Scenario).Where(a => !IsTold(a, run, said)).Select(a => Clause(a, run)).Distinct()];
        bool isName = clauses.Length > 0 && new[] { run.Scenario.Robot.Name, run.Opponent?.Robot.Name }.Any(n => n is not null && clauses[0].StartsWith(n, StringComparison.Ordinal));
        return clauses.Length == 0 ? "" : $" {(isName ? clauses[0][0] : char.ToUpperInvariant(clauses[0][0]))}{clauses[0][1..]}{string.Concat(clauses[1..].Select((c, i) => (i == clauses.Length - 2 ? " and " : ", ") + c))}.";
    }

    // it did not move or could not turn, as the sentence says: what is usually asked adds nothing
    private static bool DidNothing(RunResult run) => run.Scenario.Manoeuvre.Traits.Family switch
    {
        ManoeuvreFamily.Drive => run.Answers is { TimeTo90PercentSpeed: null, Travel: < StandsStill },
        ManoeuvreFamily.Turn => !run.Answers.IsTurning,
        _ => false,
    };

    // of a run that lost its stand or came to no end the sentence says why it gives no number
    private static bool IsTold(Answer a, RunResult run, string said) => a.Of(run) is double value
        ? a.IsSaidIn(said, value)
        : run.Stop is not null || (a.Key == AnswerCatalogue.ChatterKey && run.Chatter.Kind == ChatterKind.Close) || (a.SaysNone == AnswerCatalogue.Told && a.IsOf(run.Scenario.Manoeuvre.Kind));

    private static string Clause(Answer a, RunResult run) => a.Clause(a.IsOpponents ? run.Opponent?.Robot.Name ?? "the opponent" : run.Opponent is null ? "it" : run.Scenario.Robot.Name, a.Of(run));
}
