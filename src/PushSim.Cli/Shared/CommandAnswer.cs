namespace PushSim.Cli.Shared;

/// <summary>What a command prints for a person: its card, and with --details all of its tables instead.</summary>
/// <param name="Card">The card.</param>
/// <param name="Verdict">The whole answer in words, which heads the tables.</param>
internal sealed record CommandAnswer(AnswerCard Card, string Verdict)
{
    /// <summary>The question that was asked; may be empty.</summary>
    public string Question { get; init; } = "";

    /// <summary>All tables.</summary>
    public IEnumerable<AnswerTable> Tables { get; init; } = [];

    /// <summary>What to know before believing it.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>What is printed after the warnings.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>What is printed smaller: estimates, how it was computed.</summary>
    public IReadOnlyList<string> Asides { get; init; } = [];

    /// <summary>Commands that tell more, under the tables.</summary>
    public IEnumerable<Suggestion> Suggestions { get; init; } = [];

    /// <summary>Files that were written.</summary>
    public IReadOnlyList<string> Files { get; init; } = [];

    /// <summary>Writes it in the form that was asked for.</summary>
    public void Write(TextWriter output, bool isDetailed) => WriteRest(output, WriteHead(output, Card.Answer, Verdict, isDetailed, Question));

    /// <summary>Writes the answer as soon as it is known, before files are made.</summary>
    /// <returns>The card that it begins; null where all tables are wanted.</returns>
    public static CardText? WriteHead(TextWriter output, string answer, string verdict, bool isDetailed, string question = "")
    {
        if (isDetailed)
        {
            CommandText.WriteHead(output, verdict, question);
            return null;
        }

        var card = new CardText(output);
        card.WriteHead(answer, question);
        return card;
    }

    /// <summary>Writes all that stands below the answer.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="begun">What <see cref="WriteHead"/> began.</param>
    public void WriteRest(TextWriter output, CardText? begun)
    {
        if (begun is null)
        {
            CommandText.WriteRest(output, Tables, Warnings, Notes, Asides, Files, Card.Suggestions.Concat(Suggestions).DistinctBy(s => s.Line));
        }
        else
        {
            begun.WriteRest(Card, Warnings, Files);
        }
    }
}
