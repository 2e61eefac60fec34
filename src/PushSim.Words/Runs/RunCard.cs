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
    /// <param name="file">The file as the user named it, for the commands that tell more; empty: none is named.</param>
    /// <param name="opponent">The opponent's file as the user named it behind the first; empty: the scenario has it.</param>
    public static AnswerCard Of(RunResult run, string file, string opponent = "") => new(Answer(run))
    {
        Facts = Facts(run),
        Numbers = [.. RunNumbers.Of(run).Take(AnswerCard.MostNumbers)],
        Sure = Sure(run, file, opponent),
        Next = Next(run, file),
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
            string[] told = [shove.FirstContact is null ? "" : ShoveVerdict.Limits(run), Answer(run).Contains(" is turned ", StringComparison.Ordinal) ? "" : ShoveVerdict.Turned(run), ChatterWords.InShove(run.Chatter, run.Scenario.Robot.Name)];
            return string.Join(' ', told.Where(t => t.Length > 0));
        }

        // how it chatters is told once, with what feeds it
        string verdict = RunWords.Sentence(run);
        string rest = Clauses.Rest(verdict);
        string ease = run.Turning is TurnResult turn && run.Answers.IsTurning ? string.Concat(TurnWords.Reserve(turn).Select(c => Phrase.Capital(c) + ". ")) : "";
        return (ease + (run.Chatter.Cure is { } cure ? WithoutCure(rest, ChatterWords.Of(cure)) : rest)).Trim();
    }

    // the cure is what to do next
    private static string WithoutCure(string rest, string cure) => rest.Replace($" {Phrase.Capital(cure)} keeps it quiet.", "", StringComparison.Ordinal).Replace($" {Phrase.Capital(cure)} takes it further away.", "", StringComparison.Ordinal);

    private static string Sure(RunResult run, string file, string opponent)
    {
        if (run.Status != RunStatus.Finished)
        {
            return "";
        }

        string drawn = LookWords.Drawn(run);
        string ask = file.Length == 0 ? "" : $"{(drawn.Length > 0 ? "More" : "How often with drawn values")}: pushsim odds {Clauses.Argument(file)}{(opponent.Length > 0 ? " " + Clauses.Argument(opponent) : "")}";
        string odds = Behind(drawn) + Behind(ask);
        return run.Shove switch
        {
            { TooCloseToCall: true, Close: { } close } => $"too close to call: {ShoveVerdict.TooCloseInShort(close)}.{odds}",
            { TooCloseToCall: false } => "starts that differ by less than anyone can set up end the same way." + odds,
            { } => "nearly equal starts were not tried." + odds,
            _ => "one run of the middle values." + (file.Length == 0 ? "" : $" What of them is estimated: pushsim check --derived {Clauses.Argument(file)}"),
        };
    }

    private static string Next(RunResult run, string file)
    {
        string limits = file.Length == 0 ? "" : $" How much: pushsim limits {Clauses.Argument(file)}";
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

        return run.Answers.LimitedBy is BindingKind kind && BindingTable.Advice(kind, run.Answers.Binding is not { } bound || bound.Named.Count < 2) is { Length: > 0 } more ? $"{more}.{limits}" : "";
    }

    private static string Behind(string sentence) => sentence.Length == 0 ? "" : " " + sentence;
}
