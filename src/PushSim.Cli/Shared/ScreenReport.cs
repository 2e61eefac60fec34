namespace PushSim.Cli.Shared;

/// <summary>What a command prints for a person: its card, and with --details all of its tables instead.</summary>
/// <param name="Card">The card.</param>
/// <param name="Verdict">The whole answer in words, which heads the tables.</param>
internal sealed record ScreenReport(AnswerCard Card, string Verdict)
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
    public void Write(TextWriter output, bool isDetailed)
    {
        if (isDetailed)
        {
            TextReport.Write(output, Verdict, Tables, Warnings, Notes, Asides, Files, Question, Card.Suggestions.Concat(Suggestions).DistinctBy(s => s.Line));
        }
        else
        {
            CardText.Write(output, Card, Warnings, Files, Question);
        }
    }
}
