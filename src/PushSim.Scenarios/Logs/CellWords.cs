namespace PushSim.Scenarios.Logs;

/// <summary>What is wrong with one cell of a log, in words.</summary>
internal static class CellWords
{
    /// <summary>Whether a spreadsheet would work it out.</summary>
    public static bool IsFormula(string t) =>
        t.StartsWith('=') || t.StartsWith('@') || t.StartsWith("'=", StringComparison.Ordinal) || ((t.StartsWith('+') || t.StartsWith('-')) && t.Length > 1 && char.IsLetter(t[1]));

    /// <summary>Complains about a cell that is no number.</summary>
    public static void NotANumber(LogProblems problems, LogFormat format, LogCells cells, LogRow row, LogColumn column, string what)
    {
        string t = row.Cell(column.Index).Trim();
        bool isFormula = IsFormula(t);
        string message = isFormula
            ? $"\"{SourceFile.Clean(t, 40)}\" in the {what} column is a formula, which is not worked out here"
            : t.Length == 0 ? $"the {what} is missing" : $"\"{SourceFile.Clean(t, 40)}\" in the {what} column is no number";
        string help = isFormula ? "export values instead of formulas"
            : !format.HasDecimalComma && t.Contains(',') ? "write decimals with a point, or all of them with a comma and a semicolon between cells"
            : "mend the cell, empty it, or turn the line into a remark with a leading #";
        int at = t.Length == 0 ? 0 : Math.Max(0, format.IsPrinted ? row.Raw.IndexOf(t, StringComparison.Ordinal) : cells.Start(row.Raw, column.Index, t));
        problems.Error(row.Line, at + 1, message, help, row.Raw, Math.Max(1, Math.Min(t.Length, 60)));
    }
}
