using PushSim.Words.Answers;
using PushSim.Words.Tables;
using PushSim.Words.Turns;

namespace PushSim.Words.Runs;

/// <summary>The answer card of a run.</summary>
public static class RunCard
{
    /// <summary>The answer alone, which stands as soon as the run has ended.</summary>
    public static string Answer(RunResult run)
    {
        string said = Clauses.First(RunWords.Verdict(run with { Turning = null }));
        return said + (run.Status == RunStatus.Failed ? "" : Asked(run, said));
    }

    /// <summary>The card.</summary>
    /// <param name="run">The run.</param>
    /// <param name="asked">What it was asked about, for the commands that tell more.</param>
    public static AnswerCard Of(RunResult run, AskedFiles asked) => new(Answer(run))
    {
        Facts = Facts(run),
        Numbers = [.. RunNumbers.Of(run).Take(AnswerCard.MostNumbers)],
        Sure = Sure(run),
        Next = Next(run),
        Suggestions = run.Status == RunStatus.Failed || !asked.IsKnown ? [] : [.. Suggestions(run, asked)],
        Robots = run.Opponent is null ? [run.Scenario.Robot.Name] : [run.Scenario.Robot.Name, run.Opponent.Robot.Name],
        IsTiled = run is { Opponent: null, Scenario.Manoeuvre.Traits.Family: ManoeuvreFamily.Turn, Status: RunStatus.Finished },
        IsCautioned = run.Scenario.Manoeuvre.Traits.Family != ManoeuvreFamily.Hold,
    };

    // what a file asks and the first clause does not name
    private static string Asked(RunResult run, string said) => run.Scenario.Ask.Count == 0 ? "" : AskedWords.Rest(run, said);

    private static string Facts(RunResult run)
    {
        if (GripShare.Of(run) is { } grip)
        {
            return Text($"It uses {100.0 * grip.Share:0} % of the grip of its wheels; {grip.Wheel} comes nearest to sliding.");
        }

        if (run.Status == RunStatus.Failed)
        {
            return "";
        }

        if (run.Shove is { } shove)
        {
            string[] told = [shove.FirstContact is null ? "" : ShoveVerdict.Limits(run), Answer(run).Contains(" is turned ", StringComparison.Ordinal) ? ShoveVerdict.Steering(run.Scenario, shove).TrimStart() : ShoveVerdict.Turned(run), ChatterWords.InShove(run.Chatter, run.Scenario.Robot.Name)];
            return string.Join(' ', told.Where(t => t.Length > 0));
        }

        // how it chatters is told once, with what feeds it
        string verdict = RunWords.Sentence(run);
        string rest = Clauses.Rest(verdict);
        string ease = run.Turning is TurnResult turn && run.Answers.IsTurning ? string.Concat(TurnWords.Reserve(turn).Select(c => Phrase.Capital(c) + ". ")) : "";
        return (ease + ChatterWords.Behind(Answer(run), run.Chatter.Cure is { } cure ? WithoutCure(rest, ChatterWords.Of(cure)) : rest, run.Chatter)).Trim();
    }

    // the cure is what to do next
    private static string WithoutCure(string rest, string cure) => rest.Replace($" {Phrase.Capital(cure)} keeps it quiet.", "", StringComparison.Ordinal).Replace($" {Phrase.Capital(cure)} takes it further away.", "", StringComparison.Ordinal);

    private static string Sure(RunResult run)
    {
        if (run.Status != RunStatus.Finished)
        {
            return "";
        }

        string odds = Behind(LookWords.Drawn(run));
        return run.Shove switch
        {
            { TooCloseToCall: true, Close: { } close } => $"too close to call: {ShoveVerdict.TooCloseInShort(close)}.{odds}",
            { TooCloseToCall: false } => "starts that differ by less than anyone can set up end the same way." + odds,
            { } => "nearly equal starts were not tried." + odds,
            _ => "one run of the middle values.",
        };
    }

    // how often with drawn values, or what is estimated; and how much a change of what binds is worth
    private static IEnumerable<Suggestion> Suggestions(RunResult run, AskedFiles asked)
    {
        if (run.Status == RunStatus.Finished)
        {
            yield return run.Shove is null ? asked.Derived("What is estimated") : asked.Odds(LookWords.Drawn(run).Length > 0 ? "More matches" : "With drawn values");
        }

        if (Next(run) is { Length: > 0 } next && next == Binding(run))
        {
            yield return asked.Limits("How much");
        }
    }

    private static string Binding(RunResult run) =>
        run.Answers.LimitedBy is BindingKind kind && BindingTable.Advice(kind, run.Answers.Binding is not { } bound || bound.Named.Count < 2) is { Length: > 0 } more ? more + "." : "";

    private static string Next(RunResult run)
    {
        if (run.Status == RunStatus.Failed)
        {
            return "";
        }

        if (run.Start is { Worth: var worth } && StartWords.Advice(worth) is { Length: > 0 } advice)
        {
            return advice + ".";
        }

        if (run.Turning is { Ease: TurnEase.CannotTurn } turn)
        {
            return Phrase.Capital(TurnWords.Needs(turn)) + ".";
        }

        if (run.Chatter is { Kind: ChatterKind.Buzzes or ChatterKind.Close, Cure: { } cure })
        {
            return $"{ChatterWords.Of(cure)} {(run.Chatter.Kind == ChatterKind.Buzzes ? "keeps the tyres quiet" : "takes the tyres further from chatter")}.";
        }

        return Binding(run);
    }

    private static string Behind(string sentence) => sentence.Length == 0 ? "" : " " + sentence;
}
