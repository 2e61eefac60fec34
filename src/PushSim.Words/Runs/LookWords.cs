using PushSim.Words.Turns;

namespace PushSim.Words.Runs;

/// <summary>What a closer look adds to the verdict of a run, and what it left out.</summary>
public static class LookWords
{
    /// <summary>What it adds, in a sentence or two; empty if nothing.</summary>
    /// <param name="run">The run after the closer look.</param>
    public static string Of(RunResult run)
    {
        string chatter = Chatter(run);
        string[] clauses =
        [
            .. run.Turning is TurnResult turn ? TurnWords.Reserve(turn) : [],
            .. TurnWords.Sideways(run) is { } sideways ? [sideways] : Array.Empty<string>(),
            .. CoastingWords.Clause(run) is { Length: > 0 } coasting ? [coasting] : Array.Empty<string>(),
            .. chatter.Length > 0 ? [char.ToLowerInvariant(chatter[0]) + chatter[1..]] : Array.Empty<string>(),
            .. run.Shove?.TooCloseToCall == true ? ["too close to call: " + RunWords.TooClose(run)] : Array.Empty<string>(),
        ];
        string[] sentences = [.. clauses.Length == 0 ? [] : new[] { $"Looked closer: {string.Join("; ", clauses)}." }, .. Drawn(run) is { Length: > 0 } drawn ? [drawn] : Array.Empty<string>()];
        return string.Join(' ', sentences);
    }

    // what the run alone does not tell: a clause that stands in the verdict is not said again
    private static string Chatter(RunResult run)
    {
        var alone = ChatterVerdict.OfRun(run.Status, run.Answers);
        if (run.Shove is not null)
        {
            string name = run.Scenario.Robot.Name;
            return ChatterWords.InShove(run.Chatter, name) is var said && said != ChatterWords.InShove(alone, name) ? said.TrimEnd('.') : "";
        }

        (string clause, string before) = (ChatterWords.Clause(run.Chatter), ChatterWords.Clause(alone));
        string rest = before.Length > 0 && clause.StartsWith(before, StringComparison.Ordinal) ? clause[before.Length..].TrimStart(',', ';', ' ') : clause.TrimStart(';', ' ');
        return clause == before ? "" : rest.StartsWith("fed by", StringComparison.Ordinal) ? "the chatter is " + rest : rest;
    }

    /// <summary>How often a shove is won with drawn values; empty where nobody looked.</summary>
    /// <param name="run">The run after the closer look.</param>
    public static string Drawn(RunResult run) => run is not { Drawn: { Matches: > 0 } d, Opponent: OpponentRun opponent } ? ""
        : Text($"Of {d.Matches} matches with drawn values {run.Scenario.Robot.Name} wins {d.Wins}, {opponent.Robot.Name} {d.Losses}{(d.Stalemates > 0 ? Text($", nobody {d.Stalemates}") : "")}.");

    /// <summary>What was left out and how to ask for it; empty if nothing was.</summary>
    /// <param name="look">The closer look; null for none.</param>
    public static string LeftOut(LookCost? look) => look is not { LeftOut.Count: > 0 } ? ""
        : string.Create(CultureInfo.InvariantCulture, $"the closer look left out {string.Join(", ", look.LeftOut.Select(Of))}: more than its {look.Allowed / 1e6:0.#} million evaluations; --closer takes the time");

    /// <summary>Key of a part for scripts.</summary>
    public static string Key(LookPart part) => Row(part).Key;

    private static string Of(LookPart part) => Row(part).Words;

    private static (string Key, string Words) Row(LookPart part) => part switch
    {
        LookPart.CloseCall => ("close_call", "whether it is too close to call"),
        LookPart.Coasting => ("coasting", "what controllers that coast between pulses would do"),
        LookPart.Starts => ("starts", "what the shove owes to who moves first"),
        LookPart.Bump => ("bump", "what the bump gave"),
        LookPart.Drawn => ("drawn", "how often it wins with drawn values"),
        LookPart.LeastCurrent => ("least_current", "the least current limit that turns it"),
        LookPart.LeastMotor => ("least_motor", "the least motors that turn it"),
        LookPart.Helps => ("helps", "what a change would do"),
        LookPart.Modes => ("modes", "whether small swings grow"),
        LookPart.Range => ("range", "the damping at which chatter begins and stops"),
        LookPart.Cure => ("cure", "what would keep its tyres quiet"),
        _ => ("grip", "grip over the runs"),
    };
}
