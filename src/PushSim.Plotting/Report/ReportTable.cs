namespace PushSim.Plotting.Report;

/// <summary>A table of a report, as plain text: the screen and the page print the same one.</summary>
/// <param name="caption">What it shows.</param>
public sealed class ReportTable(string caption)
{
    private readonly List<(string Title, bool IsNumber)> _columns = [];
    private readonly List<IReadOnlyList<string>> _rows = [];

    /// <summary>What it shows.</summary>
    public string Caption => caption;

    /// <summary>Heads of its columns, and whether a column holds numbers (set flush right).</summary>
    public IReadOnlyList<(string Title, bool IsNumber)> Columns => _columns;

    /// <summary>Its rows: one text per column, the first names the row.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Rows => _rows;

    /// <summary>Adds a column of words.</summary>
    /// <param name="title">Its head.</param>
    public ReportTable AddColumn(string title)
    {
        _columns.Add((title, false));
        return this;
    }

    /// <summary>Adds a column of numbers.</summary>
    /// <param name="title">Its head.</param>
    public ReportTable AddNumberColumn(string title)
    {
        _columns.Add((title, true));
        return this;
    }

    /// <summary>Adds a row.</summary>
    /// <param name="cells">One text per column.</param>
    public ReportTable AddRow(params string[] cells)
    {
        _rows.Add(cells);
        return this;
    }
}
