namespace PushSim.Scenarios.Logs;

/// <summary>A row kept until the columns are told.</summary>
/// <param name="Cells">Its cells.</param>
/// <param name="Line">Its line in the file, from 1.</param>
/// <param name="Raw">The line as it stands.</param>
internal readonly record struct LogLine(string[] Cells, int Line, string Raw)
{
    /// <summary>Text of a cell; empty past the end.</summary>
    public string Cell(int index) => index < Cells.Length ? Cells[index] : "";
}
