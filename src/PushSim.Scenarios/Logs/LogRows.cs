using System.Globalization;
using CsvHelper;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Logs;

/// <summary>Takes the rows of a log one by one: first finds out its columns, then collects samples or readings.</summary>
internal sealed class LogRows(string name, LogFormat format, LogOptions options)
{
    // Complaints after which reading stops: more of the same help nobody [1].
    private const int MostErrors = 10;

    // A history that starts anew before it has this many samples is not several pulls but a wrong column of time [1].
    private const int ShortestTrace = 8;

    // Rows kept until the columns are told: room for a preamble [1].
    private const int RowsLookedAt = 12;

    private const int MostReadings = 100_000;

    private readonly List<Problem> _problems = [];
    private readonly List<string> _notes = [];
    private readonly List<(string[] Cells, int Line, string Raw)> _first = [];
    private readonly List<TraceStore> _stores = [];
    private readonly List<LogReading> _readings = [];
    private readonly double[] _values = new double[TraceStore.Slots];
    private readonly double[] _scale = new double[TraceStore.Slots];
    private readonly int[] _slot = new int[32];
    private List<LogColumn>? _columns;
    private LogColumn? _time;
    private LogColumn? _force;
    private LogColumn? _tyre;
    private LogColumn? _pull;
    private LogColumn? _peak;
    private LogColumn? _load;
    private string? _lastTyre;
    private string? _lastPull;
    private long _rows;
    private long _blank;
    private int _lastLine;
    private bool _isStopped;

    public bool WantsMore => !_isStopped;

    public void Take(CsvParser parser)
    {
        int line = parser.RawRow;
        _lastLine = line;
        string first = parser.Count > 0 ? parser[0] : "";
        if (LogFormat.IsComment(first, format.Separator) || (first.Length == 0 && parser.RawRecord.Trim().Length == 0))
        {
            return;
        }

        if (_columns is null)
        {
            _first.Add(([.. Cells(parser)], line, parser.RawRecord));
            if (_first.Count >= RowsLookedAt)
            {
                Begin();
            }

            return;
        }

        if (format.Separator == ' ')
        {
            string[] cells = [.. Cells(parser)];
            Row(i => i < cells.Length ? cells[i] : "", cells.Length, line, parser.RawRecord);
        }
        else
        {
            Row(parser, line);
        }
    }

    public LogResult Finish()
    {
        if (_columns is null && !_isStopped)
        {
            if (_first.Count == 0)
            {
                Error(0, 0, "the file has no rows of data, only remarks", "export the log again, with a column of time and one of force");
            }
            else
            {
                Begin();
            }
        }

        if (_problems.Count == 0 && _rows == 0)
        {
            Error(_lastLine, 1, "there are no rows of data below the header", "");
        }
        else if (_problems.Count == 0 && _time is not null && _rows == 1)
        {
            Error(_lastLine, 1, "there is one row of data only, which is no log", "log the whole pull, from slack to slack; for single readings off a display leave the time column out");
        }

        if (_blank > 0)
        {
            _notes.Add($"{_blank} {(_blank == 1 ? "row" : "rows")} without a force left out");
        }

        List<LogTrace> traces = _problems.Any(p => p.Severity == Severity.Error) ? [] : [.. _stores.Where(s => s.Count > 0).Select(s => s.Finish())];
        if (_problems.Count == 0 && traces.Count == 0 && _readings.Count == 0)
        {
            Error(_lastLine, 1, "no row has a force", "export the log again, with the column of force filled");
        }

        int most = traces.Count == 0 ? 1 : traces.Max(t => t.PerSample);
        if (most > 1)
        {
            _notes.Add(FormattableString.Invariant($"{_rows} rows: up to {most} neighbours averaged into one sample"));
        }

        return new LogResult { File = name, Problems = _problems, Notes = _notes, Traces = traces, Readings = _readings, Rows = _rows };
    }

    public void Error(int line, int column, string message, string help, string raw = "", int length = 1)
    {
        _problems.Add(new Problem(name, line, column, Severity.Error, message, help) { SourceLine = SourceFile.Clean(raw.TrimEnd('\r', '\n')), Length = length });
        _isStopped |= _problems.Count >= MostErrors;
    }

    private IEnumerable<string> Cells(CsvParser parser)
    {
        for (int i = 0; i < parser.Count; i++)
        {
            if (format.Separator != ' ' || parser[i].Trim().Length > 0)
            {
                yield return parser[i];
            }
        }
    }

    // The first rows: a preamble, a header, a row of units, or data at once.
    private void Begin()
    {
        int at = 0;
        while (at < _first.Count - 1 && _first[at].Cells.Length < format.Columns && !IsHeader(_first[at].Cells))
        {
            at++;
        }

        bool hasHeader = !_first[at].Cells.Any(c => IsNumber(c));
        string[] header = _first[at].Cells;
        if (hasHeader)
        {
            bool hasUnits = at + 1 < _first.Count && _first[at + 1].Cells.Length == header.Length && _first[at + 1].Cells.All(c => c.Trim().Length == 0 || LogColumn.IsUnit(c)) && _first[at + 1].Cells.Any(LogColumn.IsUnit);
            _columns = LogColumn.OfHeader(header, hasUnits ? _first[at + 1].Cells : null);
            at += hasUnits ? 2 : 1;
        }
        else
        {
            _columns = WithoutHeader();
        }

        Assign(hasHeader ? (header, _first[hasHeader ? at - 1 : at].Line, _first[Math.Max(0, at - 1)].Raw) : null);
        if (hasHeader && format.Columns == 2 * header.Length && format.Separator == ',')
        {
            Error(_first[Math.Min(at, _first.Count - 1)].Line, 1, $"{format.Columns} cells where the header has {header.Length}: decimal commas between commas cannot be told apart", "export with a semicolon or a tab between cells, or with decimal points");
        }

        for (int i = at; i < _first.Count && !_isStopped; i++)
        {
            (string[] cells, int line, string raw) = _first[i];
            Row(k => k < cells.Length ? cells[k] : "", cells.Length, line, raw);
        }
    }

    private static bool IsHeader(string[] cells) => cells.Length > 0 && LogColumn.OfHeader(cells, null).Any(c => c.Role == LogRole.Force);

    // Time is the column that rises, force the other; a first column of words names the tyre.
    private List<LogColumn> WithoutHeader()
    {
        string[] cells = _first[^1].Cells;
        int count = cells.Length;
        if (count <= 1)
        {
            return [new LogColumn(0, LogRole.Force, "", "", double.NaN)];
        }

        if (!IsNumber(cells[0]))
        {
            return [new LogColumn(0, LogRole.Tyre, "", "", 1.0), new LogColumn(1, LogRole.Force, "", "", double.NaN)];
        }

        bool Rises(int i) => _first.Zip(_first.Skip(1)).All(p => i < p.First.Cells.Length && i < p.Second.Cells.Length
            && TryTime(p.First.Cells[i], out double a) && TryTime(p.Second.Cells[i], out double b) && b > a);
        bool isSecond = count == 2 && Rises(1) && !Rises(0);
        _notes.Add($"no header: column {(isSecond ? 2 : 1)} taken as time, column {(isSecond ? 1 : 2)} as force");
        return [new LogColumn(isSecond ? 1 : 0, LogRole.Time, "", "", double.NaN), new LogColumn(isSecond ? 0 : 1, LogRole.Force, "", "", double.NaN)];
    }

    private void Assign((string[] Cells, int Line, string Raw)? header)
    {
        LogColumn? Of(LogRole role) => _columns!.FirstOrDefault(c => c.Role == role);
        (_time, _force, _tyre, _pull, _peak, _load) = (Of(LogRole.Time), Of(LogRole.Force), Of(LogRole.Tyre), Of(LogRole.Pull), Of(LogRole.Peak), Of(LogRole.Load));
        int line = header?.Line ?? _first[0].Line;
        string raw = header?.Raw ?? _first[0].Raw;
        if (_force is null && !(_peak is not null && _time is null))
        {
            string have = header is { } h ? "columns: " + string.Join(", ", h.Cells.Select(c => SourceFile.Clean(c, 40))) : "";
            Error(line, 1, "there is no force column", $"name it \"force [N]\" (or gf, kgf, lbf, ozf, mV) in the first row; {have}".TrimEnd(' ', ';'), raw);
            _isStopped = true;
            return;
        }

        _force = WithUnit(_force, line, raw);
        _peak = WithUnit(_peak, line, raw);
        _load = _load is null ? null : double.IsNaN(_load.Factor) ? WithUnit(_load, line, raw) : _load;
        if (_time is not null && double.IsNaN(_time.Factor))
        {
            _time = _time with { Factor = TimeFactor() };
        }

        Array.Fill(_slot, -1);
        foreach (LogColumn c in _columns!.Where(c => c.Index < _slot.Length && TraceStore.Slot(c.Role) >= 0))
        {
            _slot[c.Index] = TraceStore.Slot(c.Role);
            _scale[_slot[c.Index]] = c.Role == LogRole.Force ? _force!.Factor : c.Factor;
        }
    }

    private LogColumn? WithUnit(LogColumn? column, int line, string raw)
    {
        if (column is null)
        {
            return null;
        }

        string unit = column.Unit.Length > 0 ? column.Unit : options.ForceUnit ?? "";
        double factor = LogColumn.ForceFactor(unit);
        if (unit == LogColumn.Millivolt)
        {
            factor = options.ForcePerMillivolt ?? double.NaN;
            if (double.IsNaN(factor))
            {
                Error(line, Place(column, raw), "the force is in mV, so the cell's calibration must be said", "add --calibration \"25 gf/mV\": hang a known weight on the cell and divide it by the change of the reading", raw);
                _isStopped = true;
            }
        }
        else if (double.IsNaN(factor))
        {
            string what = unit.Length == 0 ? "the unit of the force is missing" : $"\"{SourceFile.Clean(unit, 20)}\" is no unit of force known here";
            Error(line, Place(column, raw), what, "write it in the header, for example \"force [gf]\", or add --unit gf (N, gf, kgf, lbf, ozf, mV)", raw);
            _isStopped = true;
        }

        return column with { Factor = options.IsReversed && column.Role != LogRole.Load ? -factor : factor };
    }

    private static int Place(LogColumn column, string raw) => Math.Max(0, raw.IndexOf(column.Name, StringComparison.Ordinal)) + 1;

    private double TimeFactor()
    {
        if (options.TimeUnit is string unit)
        {
            return LogColumn.TimeFactor(unit);
        }

        if (_first.Any(r => _time!.Index < r.Cells.Length && r.Cells[_time.Index].Contains(':')))
        {
            return 1.0;
        }

        // whole numbers a good way apart are milliseconds
        double[] times = [.. _first.Select(r => _time!.Index < r.Cells.Length && TryTime(r.Cells[_time.Index], out double t) ? t : double.NaN).Where(double.IsFinite)];
        bool isMilli = times.Length > 1 && times.All(t => t == Math.Floor(t)) && times[^1] - times[^2] >= 2.0;
        _notes.Add(isMilli ? "no unit of time: taken as ms (--time-unit s if not)" : "no unit of time: taken as s (--time-unit ms if not)");
        return isMilli ? 1e-3 : 1.0;
    }

    private void Row(CsvParser parser, int line) => Row(i => i < parser.Count ? parser[i] : "", parser.Count, line, null, parser);

    private void Row(Func<int, string> cell, int count, int line, string? raw, CsvParser? parser = null)
    {
        _rows++;
        if (_time is null)
        {
            Reading(cell, line, raw ?? parser!.RawRecord);
            return;
        }

        string text = cell(_force!.Index);
        if (text.Trim().Length == 0)
        {
            _blank++;
            return;
        }

        if (!TryTime(cell(_time.Index), out double t))
        {
            NotANumber(cell(_time.Index), _time, "time", line, raw ?? parser!.RawRecord);
            return;
        }

        for (int i = 0; i < Math.Min(count, _slot.Length); i++)
        {
            if (_slot[i] < 0)
            {
                continue;
            }

            if (TryNumber(cell(i), out double v))
            {
                _values[_slot[i]] = v * _scale[_slot[i]];
            }
            else if (i == _force.Index)
            {
                NotANumber(text, _force, "force", line, raw ?? parser!.RawRecord);
                return;
            }
            else
            {
                _values[_slot[i]] = double.NaN;
            }
        }

        Store(cell, t * _time.Factor, line).Add(t * _time.Factor, _values, line);
    }

    private TraceStore Store(Func<int, string> cell, double t, int line)
    {
        string? tyre = _tyre is null ? null : cell(_tyre.Index).Trim();
        string? pull = _pull is null ? null : cell(_pull.Index).Trim();
        TraceStore? last = _stores.Count > 0 ? _stores[^1] : null;
        bool fellBack = last is not null && t < last.LastTime;
        bool isSame = last is not null && tyre == _lastTyre && pull == _lastPull;
        if (isSame && !fellBack)
        {
            return last!;
        }

        if (isSame && last!.Count * last.PerSample < ShortestTrace)
        {
            Error(line, 1, "time runs backwards", "the rows must stand in the order of time; is this the right column?");
        }

        (_lastTyre, _lastPull) = (tyre, pull);
        _stores.Add(new TraceStore(tyre, _columns!, options.MostSamples));
        return _stores[^1];
    }

    private void Reading(Func<int, string> cell, int line, string raw)
    {
        double? Value(LogColumn? column, string what)
        {
            string text = column is null ? "" : cell(column.Index);
            if (text.Trim().Length == 0)
            {
                return null;
            }

            if (TryNumber(text, out double v))
            {
                return v * column!.Factor;
            }

            // a person writes the unit into the cell
            if (Quantity.TryParse(text, Dimension.Force, out Quantity q, out _, out _))
            {
                return options.IsReversed ? -q.Value : q.Value;
            }

            NotANumber(text, column!, what, line, raw);
            return null;
        }

        int before = _problems.Count;
        string? tyre = _tyre is null ? null : cell(_tyre.Index).Trim();
        var reading = new LogReading(tyre is { Length: > 0 } ? tyre : null, Value(_force, "force"), Value(_peak, "peak"), Value(_load, "load"), line)
        {
            Pull = _pull is not null && TryNumber(cell(_pull.Index), out double number) ? number : null,
        };
        if (_problems.Count > before)
        {
            return;
        }

        if (reading.Force is null && reading.Peak is null)
        {
            _blank++;
            _rows--;
            return;
        }

        _readings.Add(reading);
        if (_readings.Count == MostReadings)
        {
            Error(line, 1, $"more than {MostReadings} readings without a time column", "a log needs a column of time");
            _isStopped = true;
        }
    }

    private void NotANumber(string text, LogColumn column, string what, int line, string raw)
    {
        string t = text.Trim();
        bool isFormula = t.StartsWith('=') || t.StartsWith('@') || t.StartsWith("'=", StringComparison.Ordinal) || ((t.StartsWith('+') || t.StartsWith('-')) && t.Length > 1 && char.IsLetter(t[1]));
        string message = isFormula
            ? $"\"{SourceFile.Clean(t, 40)}\" in the {what} column is a formula, which is not worked out here"
            : t.Length == 0 ? $"the {what} is missing" : $"\"{SourceFile.Clean(t, 40)}\" in the {what} column is no number";
        string help = isFormula ? "export values instead of formulas"
            : !format.HasDecimalComma && t.Contains(',') ? "write decimals with a point, or all of them with a comma and a semicolon between cells"
            : "mend the cell, empty it, or turn the line into a remark with a leading #";
        int at = t.Length == 0 ? 0 : Math.Max(0, CellStart(raw, column.Index, t));
        Error(line, at + 1, message, help, raw.TrimEnd('\r', '\n'), Math.Max(1, Math.Min(t.Length, 60)));
    }

    // Where a cell stands in its line, counting separators outside quotation marks.
    private int CellStart(string raw, int index, string text)
    {
        bool isQuoted = false;
        int from = 0;
        for (int i = 0, k = 0; i < raw.Length && k < index && format.Separator != ' '; i++)
        {
            isQuoted ^= raw[i] == '"';
            if (raw[i] == format.Separator && !isQuoted)
            {
                k++;
                from = i + 1;
            }
        }

        return raw.IndexOf(text, from, StringComparison.Ordinal);
    }

    private bool IsNumber(string cell) => TryTime(cell, out _) || Quantity.TryParse(cell, Dimension.Force, out _, out _, out _);

    private bool TryNumber(string cell, out double value)
    {
        ReadOnlySpan<char> t = cell.AsSpan().Trim();
        if (format.HasDecimalComma && t.Length < 64 && t.Contains(','))
        {
            Span<char> pointed = stackalloc char[t.Length];
            t.Replace(pointed, ',', '.');
            return double.TryParse(pointed, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
        }

        return double.TryParse(t, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
    }

    // A number, or a clock: 12:34:56.789, with a date before it or not.
    private bool TryTime(string cell, out double value)
    {
        if (TryNumber(cell, out value))
        {
            return true;
        }

        string t = cell.Trim().Replace(',', '.');
        if (t.Contains(':') && TimeSpan.TryParse(t, CultureInfo.InvariantCulture, out TimeSpan span))
        {
            value = span.TotalSeconds;
            return true;
        }

        if (t.Length >= 16 && t.Contains(':') && DateTime.TryParse(t, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out DateTime moment))
        {
            value = (moment - DateTime.UnixEpoch).TotalSeconds;
            return true;
        }

        return false;
    }
}
