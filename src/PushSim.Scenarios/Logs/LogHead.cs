namespace PushSim.Scenarios.Logs;

/// <summary>Finds out from the first rows of a log what its columns hold, in which units, and where the data start.</summary>
internal sealed class LogHead
{
    // Unused columns that are named one by one [1].
    private const int MostNamed = 6;

    // Share of the steps in which a column of time rises: a board may have started anew in between [1].
    private const double RisesMostly = 0.9;

    // Whole numbers this far apart are microseconds: as milliseconds they would be seconds apart [1].
    private const double MicrosecondsApart = 1500.0;

    private readonly IReadOnlyList<LogLine> _first;
    private readonly LogCells _cells;
    private readonly LogOptions _options;
    private readonly LogProblems _problems;
    private readonly List<string> _notes;

    // Cells before those of the line itself: the time of arrival [1].
    private readonly int _stamps;

    // Whether blanks keep the cells apart
    private readonly bool _isBlank;

    public LogHead(IReadOnlyList<LogLine> first, LogFormat format, string[]? named, LogCells cells, LogOptions options, LogProblems problems, List<string> notes)
    {
        (_cells, _options, _problems, _notes, _stamps) = (cells, options, problems, notes, format.HasStamp ? 1 : 0);
        (_first, _isBlank) = (first, format.Separator == ' ');
        LogLine? header = named is null ? HeaderOf(format.Columns - _stamps, out int at) : Named(named, out at);
        LogLine? units = header is { } h && named is null && at + 1 < first.Count && IsRowOfUnits(Body(first[at + 1]), Body(h).Length) ? first[at + 1] : null;
        From = at + (header is null || named is not null ? 0 : 1) + (units is null ? 0 : 1);
        Header = header is { } own && named is null ? Body(own) : null;
        List<LogColumn> columns = header is { } row ? LogColumn.OfHeader(Body(row), units is { } u ? Body(u) : null) : WithoutHeader(format.Columns - _stamps);
        Columns = _stamps == 0 ? columns : [new LogColumn(0, LogRole.Ignored, "", "", double.NaN), .. columns.Select(c => c with { Index = c.Index + 1 })];
        if (_stamps > 0 && !Columns.Any(c => c.Role == LogRole.Time))
        {
            Columns = [Columns[0] with { Role = LogRole.Time }, .. Columns.Skip(1)];
            IsTimeOfArrival = true;
        }

        Assign(header, units ?? header ?? first[Math.Min(From, first.Count - 1)]);
        TellUnused();
        if (header is { } wide && named is null && format.Columns == 2 * wide.Cells.Length && format.Separator == ',')
        {
            problems.Error(first[Math.Min(From, first.Count - 1)].Line, 1, $"{format.Columns} cells where the header has {wide.Cells.Length}: decimal commas between commas cannot be told apart", "export with a semicolon or a tab between cells, or with decimal points");
        }
    }

    /// <summary>The line that names the columns; null where there is none.</summary>
    public string[]? Header { get; }

    /// <summary>Whether the time is only that of arrival, which comes in bursts.</summary>
    public bool IsTimeOfArrival { get; }

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

    public LogColumn? Unit { get; private set; }

    /// <summary>Whether the cells of a row are a head, once more or another one.</summary>
    public bool IsHeaderAgain(IReadOnlyList<string> cells)
    {
        string[] body = [.. cells.Skip(_stamps)];
        return body.Length > 0 && !body.Any(_cells.IsNumber) && ((Header is not null && body.SequenceEqual(Header)) || (IsHeader(body) && (body.Length > 1 || body.Length == Columns.Count - _stamps) && LogColumn.OfHeader(body, null).Any(c => c.Role is LogRole.Time or LogRole.Tyre or LogRole.Pull or LogRole.Peak)));
    }

    private static bool IsHeader(string[] cells) => cells.Length > 0 && LogColumn.OfHeader(cells, null).Any(c => c.Role == LogRole.Force);

    private static bool IsRowOfUnits(string[] cells, int columns) =>
        cells.Length == columns && cells.All(c => c.Trim().Length == 0 || LogColumn.IsUnit(c)) && cells.Any(LogColumn.IsUnit);

    private string[] Body(LogLine line) => _stamps == 0 ? line.Cells : [.. line.Cells.Skip(_stamps)];

    // The line that names the columns, behind what a program or a board says before it begins
    private LogLine? HeaderOf(int columns, out int at)
    {
        at = 0;

        // words between blanks are a head only if they are as many as the cells below them
        bool IsHeader(string[] cells) => LogHead.IsHeader(cells) && (!_isBlank || cells.Length == columns);
        while (at < _first.Count - 1 && !IsHeader(Body(_first[at])) && (Body(_first[at]).Length < columns || (_isBlank && (at > 0 || Body(_first[at]).Length > columns) && !Body(_first[at]).Any(_cells.IsNumber)) || (columns == 1 && !Body(_first[at]).Any(_cells.IsNumber) && _first.Skip(at + 1).Any(r => Body(r).Any(_cells.IsNumber)))))
        {
            at++;
        }

        // "load cell ready" may be one, "time,force" below it is
        for (int i = at + 1; i < _first.Count && Body(_first[at]).Length < columns && !Body(_first[i]).Any(_cells.IsNumber); i++)
        {
            at = IsHeader(Body(_first[i])) && Body(_first[i]).Length >= columns ? i : at;
        }

        return Body(_first[at]).Any(_cells.IsNumber) ? null : _first[at];
    }

    // Lines that name their values themselves
    private LogLine Named(string[] named, out int at)
    {
        at = 0;
        while (at < _first.Count - 1 && !(_first[at].Cells.Length == named.Length && Body(_first[at]).Any(_cells.IsNumber)))
        {
            at++;
        }

        return new LogLine(named, _first[at].Line, _first[at].Raw);
    }

    // Time is the column that rises, force the next one; a first column of words names the tyre, one of units belongs to the force.
    private List<LogColumn> WithoutHeader(int count)
    {
        string[][] rows = [.. _first.Skip(From).Select(Body).Where(r => r.Length == count)];
        if (count <= 1 || rows.Length == 0)
        {
            return [new LogColumn(0, LogRole.Force, "", "", double.NaN)];
        }

        int unit = Array.FindIndex([.. Enumerable.Range(0, count)], i => rows.All(r => LogColumn.IsUnit(r[i]) && !_cells.IsNumber(r[i])));
        if (!_cells.IsNumber(rows[^1][0]) && unit != 0)
        {
            return Roles(count, (0, LogRole.Tyre), (1, LogRole.Force), (unit, LogRole.Unit));
        }

        bool Rises(int i)
        {
            double[] t = [.. rows.Select(r => _cells.TryTime(r[i], 1.0, out double v) ? v : double.NaN)];
            int steps = t.Zip(t.Skip(1)).Count(p => p.Second > p.First || (p.Second == p.First && rows[0][i].Contains(':')));
            return steps >= RisesMostly * (t.Length - 1) && t.Length > 1;
        }

        int[] rising = [.. Enumerable.Range(0, count).Where(i => i != unit && Rises(i))];

        // a number of the row before the time
        bool isNumbered = rising.Length > 1 && rows.Zip(rows.Skip(1)).All(p => _cells.TryNumber(p.First[rising[0]], out double a) && _cells.TryNumber(p.Second[rising[0]], out double b) && b == a + 1.0) && count > 2;
        int time = _stamps > 0 && rising.Length == 0 ? -1 : rising.Length == 0 ? count == 2 || _options.Rate is null ? 0 : -1 : rising[isNumbered ? 1 : 0];
        int force = Enumerable.Range(0, count).FirstOrDefault(i => i != time && i != unit && !(isNumbered && i == rising[0]), count - 1);
        if (_stamps == 0 && time >= 0)
        {
            _notes.Add($"no header: column {time + 1} taken as time, column {force + 1} as force");
        }

        return Roles(count, (time, LogRole.Time), (force, LogRole.Force), (unit, LogRole.Unit));
    }

    private static List<LogColumn> Roles(int count, params (int Index, LogRole Role)[] told) =>
        [.. Enumerable.Range(0, count).Select(i => told.Where(t => t.Index == i).Select(t => t.Role).FirstOrDefault(LogRole.Ignored)).Select((role, i) => new LogColumn(i, role, "", "", role == LogRole.Tyre ? 1.0 : double.NaN))];

    private void Assign(LogLine? header, LogLine blamed)
    {
        LogColumn? Of(LogRole role) => Columns.FirstOrDefault(c => c.Role == role);
        (Time, Force, Tyre, Material, Pull, Peak, Load, Unit) = (Of(LogRole.Time), Of(LogRole.Force), Of(LogRole.Tyre) ?? Of(LogRole.Material), Of(LogRole.Material), Of(LogRole.Pull), Of(LogRole.Peak), Of(LogRole.Load), Of(LogRole.Unit));
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

        string unit = column.Unit.Length > 0 ? column.Unit : UnitOfCells(column) ?? _options.ForceUnit ?? "";
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

        if (_first.Skip(From).Any(r => r.Cell(time.Index).Contains(':')))
        {
            return 1.0;
        }

        if (_first.Skip(From).Select(r => _cells.TryWithUnit(r.Cell(time.Index), out _, out string own) ? LogColumn.TimeFactor(own) : double.NaN).FirstOrDefault(double.IsFinite) is > 0.0 and double named)
        {
            return named;
        }

        // whole numbers a good way apart are milliseconds
        double[] times = [.. _first.Skip(From).Select(r => _cells.TryTime(r.Cell(time.Index), out double t) ? t : double.NaN).Where(double.IsFinite)];
        bool isMilli = times.Length > 1 && times.All(t => t == Math.Floor(t)) && times[^1] - times[^2] >= 2.0;
        string lacks = time.Unit.Length > 0 ? $"\"{SourceFile.Clean(time.Unit, 20)}\" is no unit of time known here" : "no unit of time";
        if (isMilli && times.Zip(times.Skip(1), (a, b) => b - a).Order().ElementAt((times.Length - 1) / 2) >= MicrosecondsApart)
        {
            _notes.Add($"{lacks}: taken as us ({_options.Advice.NotSeconds})");
            return 1e-6;
        }

        _notes.Add(lacks + (isMilli ? $": taken as ms ({_options.Advice.NotMilliseconds})" : $": taken as s ({_options.Advice.NotSeconds})"));
        return isMilli ? 1e-3 : 1.0;
    }

    // The unit behind most numbers of a column, or in the column of units; null if none is
    private string? UnitOfCells(LogColumn column)
    {
        IEnumerable<string> behind = _first.Skip(From).Select(r => Unit is { } u && column.Role == LogRole.Force ? r.Cell(u.Index).Trim() : _cells.TryWithUnit(r.Cell(column.Index), out _, out string own) ? own : "");
        return behind.Where(u => u.Length > 0 && (u == LogColumn.Millivolt || !double.IsNaN(LogColumn.ForceFactor(u)))).GroupBy(u => u).MaxBy(g => g.Count())?.Key;
    }
}
