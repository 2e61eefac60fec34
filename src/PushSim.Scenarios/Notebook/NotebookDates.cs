namespace PushSim.Scenarios.Notebook;

/// <summary>
/// Moments as they are written and as spreadsheets rewrite them: 2026-03-01 18:30:15 (ISO 8601 with a blank), 2026/03/01, 01.03.2026, and 3/1/2026 where some row of the file
/// tells day from month.
/// </summary>
internal sealed class NotebookDates
{
    private static readonly string[] s_times = ["", " H:m", " H:m:s", " H:m:s.FFF", " h:m tt", " h:m:s tt"];
    private static readonly string[] s_plain = [.. new[] { "yyyy-M-d", "yyyy/M/d", "d.M.yyyy", "d.M.yy" }.SelectMany(d => s_times.Select(t => d + t))];
    private static readonly string[] s_dayFirst = [.. new[] { "d/M/yyyy", "d/M/yy" }.SelectMany(d => s_times.Select(t => d + t))];
    private static readonly string[] s_monthFirst = [.. new[] { "M/d/yyyy", "M/d/yy" }.SelectMany(d => s_times.Select(t => d + t))];

    private readonly bool _isDayFirst;
    private readonly bool _isMonthFirst;

    /// <summary>Looks at all moments of a file.</summary>
    public NotebookDates(IEnumerable<string> cells)
    {
        string[] slashed = [.. cells.Where(c => c.Contains('/') && !Parses(c, s_plain, out _))];
        _isDayFirst = slashed.Length > 0 && slashed.All(c => Parses(c, s_dayFirst, out _));
        _isMonthFirst = slashed.Length > 0 && slashed.All(c => Parses(c, s_monthFirst, out _));
    }

    /// <summary>Whether slashed dates could be read either way.</summary>
    public bool IsAmbiguous => _isDayFirst && _isMonthFirst;

    /// <summary>Reads one.</summary>
    public bool TryRead(string cell, out DateTime when)
    {
        if (Parses(cell, s_plain, out when) || (_isDayFirst != _isMonthFirst && Parses(cell, _isDayFirst ? s_dayFirst : s_monthFirst, out when)))
        {
            return true;
        }

        // with a zone: the wall's clock of that zone
        bool isIso = cell.Length >= 16 && cell[4] == '-' && DateTimeOffset.TryParse(cell, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTimeOffset moment) && (when = moment.DateTime) > DateTime.MinValue;
        return isIso;
    }

    /// <summary>As it is written.</summary>
    public static string Text(DateTime when) => when.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);

    private static bool Parses(string cell, string[] formats, out DateTime when) => DateTime.TryParseExact(cell.Trim().Replace('T', ' '), formats, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out when);
}
