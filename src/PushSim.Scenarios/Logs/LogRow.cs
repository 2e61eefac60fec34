using CsvHelper;

namespace PushSim.Scenarios.Logs;

/// <summary>A row kept aside, or the one that the parser stands at: then nothing is copied.</summary>
internal readonly struct LogRow
{
    private readonly CsvParser? _parser;
    private readonly LogLine _kept;

    public LogRow(LogLine kept) => _kept = kept;

    public LogRow(CsvParser parser) => _parser = parser;

    /// <summary>Its line, from 1.</summary>
    public int Line => _parser?.RawRow ?? _kept.Line;

    /// <summary>The line as it stands.</summary>
    public string Raw => _parser?.RawRecord ?? _kept.Raw;

    /// <summary>Cells [1].</summary>
    public int Count => _parser?.Count ?? _kept.Cells.Length;

    /// <summary>Text of a cell; empty past the end.</summary>
    public string Cell(int index) => _parser is null ? _kept.Cell(index) : index < _parser.Count ? _parser[index] : "";

    /// <summary>A copy that stays.</summary>
    public LogLine Kept()
    {
        LogRow own = this;
        return new LogLine([.. Enumerable.Range(0, Count).Select(i => own.Cell(i))], Line, Raw);
    }
}
