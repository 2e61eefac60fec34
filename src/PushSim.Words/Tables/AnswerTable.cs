namespace PushSim.Words.Tables;

/// <summary>A table of an answer, as plain text: the screen and the page print the same one.</summary>
/// <param name="caption">What it shows.</param>
public sealed class AnswerTable(string caption)
{
    private readonly List<(string Title, bool IsNumber)> _columns = [];
    private readonly List<IReadOnlyList<string>> _rows = [];
    private readonly List<(string Text, bool IsAside)> _remarks = [];

    /// <summary>What it shows.</summary>
    public string Caption => caption;

    /// <summary>Heads of its columns, and whether a column holds numbers (set flush right).</summary>
    public IReadOnlyList<(string Title, bool IsNumber)> Columns => _columns;

    /// <summary>Its rows: one text per column, the first names the row.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Rows => _rows;

    /// <summary>Sentences under it; an aside is printed smaller. A table may consist of them alone.</summary>
    public IReadOnlyList<(string Text, bool IsAside)> Remarks => _remarks;

    /// <summary>Whether a page shows it only to who asks: numbers of single wheels, and what few need.</summary>
    public bool IsFolded { get; init; }

    /// <summary>Whether there is nothing to show.</summary>
    public bool IsEmpty => _rows.Count == 0 && _remarks.Count == 0;

    /// <summary>Adds a column of words.</summary>
    public AnswerTable AddColumn(string title)
    {
        _columns.Add((title, false));
        return this;
    }

    /// <summary>Adds a column of numbers.</summary>
    public AnswerTable AddNumberColumn(string title)
    {
        _columns.Add((title, true));
        return this;
    }

    /// <summary>Adds a row; a zero has no sign.</summary>
    public AnswerTable AddRow(params string[] cells)
    {
        _rows.Add([.. cells.Select(PlainNumber.UnsignedZero)]);
        return this;
    }

    /// <summary>Adds a sentence under the table.</summary>
    /// <param name="text">The sentence.</param>
    /// <param name="isAside">Whether it only qualifies the others.</param>
    public AnswerTable AddRemark(string text, bool isAside = false)
    {
        _remarks.Add((text, isAside));
        return this;
    }

    /// <summary>Adds sentences under the table, in their order.</summary>
    public AnswerTable AddRemarks(IEnumerable<string> texts)
    {
        _remarks.AddRange(texts.Select(t => (t, false)));
        return this;
    }
}
