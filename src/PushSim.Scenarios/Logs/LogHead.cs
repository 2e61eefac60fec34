namespace PushSim.Scenarios.Logs;

/// <summary>Finds out from the first rows of a log what its columns hold, in which units, and where the data start.</summary>
internal sealed class LogHead
{
    // Unused columns that are named one by one [1].
    private const int MostNamed = 6;

    private readonly IReadOnlyList<LogLine> _first;
    private readonly LogCells _cells;
    private readonly LogOptions _options;
    private readonly LogProblems _problems;
    private readonly List<string> _notes;

    public LogHead(IReadOnlyList<LogLine> first, LogFormat format, LogCells cells, LogOptions options, LogProblems problems, List<string> notes)
    {
        (_first, _cells, _options, _problems, _notes) = (first, cells, options, problems, notes);
        int at = 0;
        while (at < first.Count - 1 && first[at].Cells.Length < format.Columns && !IsHeader(first[at].Cells))
        {
            at++;
        }

        LogLine? header = first[at].Cells.Any(cells.IsNumber) ? null : first[at];
        LogLine? units = header is { } h && at + 1 < first.Count && IsRowOfUnits(first[at + 1].Cells, h.Cells.Length) ? first[at + 1] : null;
        Columns = header is null ? WithoutHeader() : LogColumn.OfHeader(header.Value.Cells, units?.Cells);
        From = at + (header is null ? 0 : 1) + (units is null ? 0 : 1);
        Assign(header, units ?? header ?? first[0]);
        TellUnused();
        if (header is { } row && format.Columns == 2 * row.Cells.Length && format.Separator == ',')
        {
            problems.Error(first[Math.Min(From, first.Count - 1)].Line, 1, $"{format.Columns} cells where the header has {row.Cells.Length}: decimal commas between commas cannot be told apart", "export with a semicolon or a tab between cells, or with decimal points");
        }
    }

    public IReadOnlyList<LogColumn> Columns { get; }

    /// <summary>Place of the first row of data among the first rows [1].</summary>
    public int From { get; }

    public LogColumn? Time { get; private set; }

    public LogColumn? Force { get; private set; }

    public LogColumn? Tyre { get; private set; }

    public LogColumn? Material { get; private set; }

    public LogColumn? Pull { get; private set; }

    public LogColumn? Peak { get; private set; }

    public LogColumn? Load { get; private set; }

    private static bool IsHeader(string[] cells) => cells.Length > 0 && LogColumn.OfHeader(cells, null).Any(c => c.Role == LogRole.Force);

    private static bool IsRowOfUnits(string[] cells, int columns) =>
        cells.Length == columns && cells.All(c => c.Trim().Length == 0 || LogColumn.IsUnit(c)) && cells.Any(LogColumn.IsUnit);

    // Time is the column that rises, force the other; a first column of words names the tyre.
    private List<LogColumn> WithoutHeader()
    {
        string[] cells = _first[^1].Cells;
        int count = cells.Length;
        if (count <= 1)
        {
            return [new LogColumn(0, LogRole.Force, "", "", double.NaN)];
        }

        if (!_cells.IsNumber(cells[0]))
        {
            return [new LogColumn(0, LogRole.Tyre, "", "", 1.0), new LogColumn(1, LogRole.Force, "", "", double.NaN)];
        }

        bool Rises(int i) => _first.Zip(_first.Skip(1)).All(p => _cells.TryTime(p.First.Cell(i), out double a) && _cells.TryTime(p.Second.Cell(i), out double b) && b > a);
        bool isSecond = count == 2 && Rises(1) && !Rises(0);
        _notes.Add($"no header: column {(isSecond ? 2 : 1)} taken as time, column {(isSecond ? 1 : 2)} as force");
        return [new LogColumn(isSecond ? 1 : 0, LogRole.Time, "", "", double.NaN), new LogColumn(isSecond ? 0 : 1, LogRole.Force, "", "", double.NaN)];
    }

    private void Assign(LogLine? header, LogLine blamed)
    {
        LogColumn? Of(LogRole role) => Columns.FirstOrDefault(c => c.Role == role);
        (Time, Force, Tyre, Material, Pull, Peak, Load) = (Of(LogRole.Time), Of(LogRole.Force), Of(LogRole.Tyre) ?? Of(LogRole.Material), Of(LogRole.Material), Of(LogRole.Pull), Of(LogRole.Peak), Of(LogRole.Load));
        if (Force is null && !(Peak is not null && Time is null))
        {
            string have = header is { } h ? "columns: " + string.Join(", ", h.Cells.Select(c => SourceFile.Clean(c, 40))) : "";
            _problems.Fatal(blamed.Line, 1, "there is no force column", $"name it \"force [N]\" (or gf, kgf, lbf, ozf, mV) in the first row; {have}".TrimEnd(' ', ';'), blamed.Raw);
            return;
        }

        Force = WithUnit(Force, blamed);
        Peak = WithUnit(Peak, blamed);
        Load = Load is { } load && double.IsNaN(load.Factor) ? WithUnit(load, blamed) : Load;
        if (Time is { } time && double.IsNaN(time.Factor))
        {
            Time = time with { Factor = TimeFactor(time) };
        }
    }

    // Columns that nothing comes of: those not understood, and in a log over time or a table of readings what only the other has.
    private void TellUnused()
    {
        bool isLog = Time is not null && Force is not null;
        string[] unused =
        [
            .. Columns.Where(c => (c.Role == LogRole.Ignored || (isLog ? c.Role is LogRole.Peak or LogRole.Load : TraceStore.Slot(c.Role) >= 0 && c.Role != LogRole.Force)) && c.IsWorthTelling)
                .Select(c => $"\"{SourceFile.Clean(c.Name, 40)}\""),
        ];
        if (unused.Length > 0 && !_problems.IsStopped)
        {
            string[] told = unused.Length > MostNamed ? [.. unused[..(MostNamed - 1)], $"{unused.Length - MostNamed + 1} more"] : unused;
            _notes.Add(told.Length == 1 ? $"column {told[0]} is not used" : $"columns {string.Join(", ", told[..^1])} and {told[^1]} are not used");
        }
    }

    private LogColumn? WithUnit(LogColumn? column, LogLine blamed)
    {
        if (column is null)
        {
            return null;
        }

        string unit = column.Unit.Length > 0 ? column.Unit : _options.ForceUnit ?? "";
        double factor = LogColumn.ForceFactor(unit);
        int place = Math.Max(0, blamed.Raw.IndexOf(column.Name, StringComparison.Ordinal)) + 1;
        if (unit == LogColumn.Millivolt)
        {
            factor = _options.ForcePerMillivolt ?? double.NaN;
            if (double.IsNaN(factor))
            {
                _problems.Fatal(blamed.Line, place, "the force is in mV, so the cell's calibration must be said", _options.Advice.Calibration, blamed.Raw);
            }
        }
        else if (double.IsNaN(factor))
        {
            string what = unit.Length == 0 ? "the unit of the force is missing" : $"\"{SourceFile.Clean(unit, 20)}\" is no unit of force known here";
            _problems.Fatal(blamed.Line, place, what, "write it in the header, for example \"force [gf]\", or " + _options.Advice.Unit, blamed.Raw);
        }

        return column with { Factor = _options.IsReversed && column.Role != LogRole.Load ? -factor : factor };
    }

    private double TimeFactor(LogColumn time)
    {
        if (_options.TimeUnit is string unit)
        {
            return LogColumn.TimeFactor(unit);
        }

        if (_first.Any(r => r.Cell(time.Index).Contains(':')))
        {
            return 1.0;
        }

        // whole numbers a good way apart are milliseconds
        double[] times = [.. _first.Select(r => _cells.TryTime(r.Cell(time.Index), out double t) ? t : double.NaN).Where(double.IsFinite)];
        bool isMilli = times.Length > 1 && times.All(t => t == Math.Floor(t)) && times[^1] - times[^2] >= 2.0;
        string lacks = time.Unit.Length > 0 ? $"\"{SourceFile.Clean(time.Unit, 20)}\" is no unit of time known here" : "no unit of time";
        _notes.Add(lacks + (isMilli ? $": taken as ms ({_options.Advice.NotMilliseconds})" : $": taken as s ({_options.Advice.NotSeconds})"));
        return isMilli ? 1e-3 : 1.0;
    }
}
