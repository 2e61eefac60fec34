namespace PushSim.Words.Tables;

/// <summary>What is read first of every answer, the same on the terminal and at the top of a page: a sentence, why, a few numbers, how sure, what to change next.</summary>
/// <param name="Answer">The answer, a sentence or two.</param>
public sealed record AnswerCard(string Answer)
{
    /// <summary>Most numbers of a card [1].</summary>
    public const int MostNumbers = 6;

    /// <summary>Numbers that a page shows beside its picture [1].</summary>
    public const int PageNumbers = 3;

    /// <summary>Why it is so: what binds, since when; may be empty.</summary>
    public string Facts { get; init; } = "";

    /// <summary>Its numbers, the most important first.</summary>
    public IReadOnlyList<CardNumber> Numbers { get; init; } = [];

    /// <summary>How sure it is; may be empty.</summary>
    public string Sure { get; init; } = "";

    /// <summary>What to change or measure next; may be empty.</summary>
    public string Next { get; init; } = "";

    /// <summary>Commands that tell more.</summary>
    public IReadOnlyList<Suggestion> Suggestions { get; init; } = [];

    /// <summary>Names of the robots, the first one's first: a page sets them in their colours.</summary>
    public IReadOnlyList<string> Robots { get; init; } = [];

    /// <summary>Whether a page shows its first numbers as tiles side by side in place of a picture.</summary>
    public bool IsTiled { get; init; }

    /// <summary>How drawn matches ended; null where none were drawn.</summary>
    public WinSplit? Split { get; init; }

    /// <summary>Whether a page of it can be had.</summary>
    public bool HasPage { get; init; } = true;

    /// <summary>Whether something pulls or heats on the way to this answer, so that a caution belongs under it.</summary>
    public bool IsCautioned { get; init; } = true;
}
