using CsvHelper;
using PushSim.Analysis.Fit;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Logs;

/// <summary>Takes the rows of a log one by one: first finds out its columns, then collects samples or readings.</summary>
internal sealed class LogRows(string name, LogFormat format, LogOptions options)
{
    // A history that starts anew before it has this many samples is not several pulls but a wrong column of time [1].
    private const int ShortestTrace = 8;

    // A person's pull lasts longer than this, and a cell reads more often than this [s].
    private const double ShortestPull = 0.1;
    private const double LongestInterval = 1.0;

    private const double SecondsOfDay = 86400.0;

    // Rows kept until the columns are told: room for a preamble [1].
    private const int RowsLookedAt = 12;

    private const int MostReadings = 100_000;

    /// <summary>Characters that a cell may have [1].</summary>
    public const int LongestCell = 1000;

    private readonly LogProblems _problems = new(name);
    private readonly LogCells _cells = new(format);
    private readonly List<string> _notes = [];
    private readonly List<LogLine> _first = [];
    private readonly List<TraceStore> _stores = [];
    private readonly List<PullReading> _readings = [];
    private readonly Dictionary<string, string> _materials = new(StringComparer.Ordinal);
    private readonly double[] _values = new double[TraceStore.Slots];
    private readonly double[] _scale = new double[TraceStore.Slots];
    private int[] _slot = [];
    private LogHead? _head;
    private string? _lastTyre;
    private string? _lastPull;
    private long _rows;
    private int _days;
    private double _lastClock = double.NegativeInfinity;
    private long _blank;
    private int _lastLine;

    public bool WantsMore => !_problems.IsStopped;

    public void Take(CsvParser parser)
    {
        _lastLine = parser.RawRow;
        string first = parser.Count > 0 ? parser[0] : "";
        if (LogFormat.IsComment(first, format.Separator) || (string.IsNullOrWhiteSpace(first) && parser.RawRecord.Trim().Length == 0))
        {
            return;
        }

        if (_head is not null)
        {
            Row(_head, format.Separator == ' ' ? new LogRow(Line(parser)) : new LogRow(parser));
            return;
        }

        _first.Add(Line(parser));
        if (_first.Count >= RowsLookedAt)
        {
            Begin();
        }
    }

    /// <summary>Complains about a cell beyond <see cref="LongestCell"/>, at which the parser gave up.</summary>
    public void TooLong(int line) => _problems.Error(line, 1, $"a cell is longer than {LongestCell} characters", "is a quotation mark left open above?");

    public LogResult Finish()
    {
        if (_head is null && !_problems.IsStopped)
        {
            if (_first.Count == 0)
            {
                _problems.Error(0, 0, "the file has no rows of data, only remarks", "export the log again, with a column of time and one of force");
            }
            else
            {
                Begin();
            }
        }

        if (_problems.All.Count == 0 && _rows == 0)
        {
            (string what, string help) = _blank > 0 ? ($"{_blank} {(_blank == 1 ? "row" : "rows")}, but none has a force", "fill in the column of force") : ("there are no rows of data below the header", "export the log again, with its rows");
            _problems.Error(_lastLine, 1, what, help);
        }
        else if (_problems.All.Count == 0 && _head?.Time is not null && _rows == 1)
        {
            _problems.Error(_lastLine, 1, "there is one row of data only, which is no log", "log the whole pull, from slack to slack; for single readings off a display leave the time column out");
        }

        if (_blank > 0)
        {
            _notes.Add($"{_blank} {(_blank == 1 ? "row" : "rows")} without a force left out");
        }

        List<LogTrace> traces = _problems.All.Any(p => p.Severity == Severity.Error) ? [] : [.. _stores.Where(s => s.Count > 0).Select(s => s.Finish())];
        if (_problems.All.Count == 0 && traces.Count == 0 && _readings.Count == 0)
        {
            _problems.Error(_lastLine, 1, "no row has a force", "export the log again, with the column of force filled");
        }

        if (traces.Select(OddTime).FirstOrDefault(t => t is not null) is string odd)
        {
            _notes.Add(odd);
        }

        int most = traces.Count == 0 ? 1 : traces.Max(t => t.PerSample);
        if (most > 1)
        {
            _notes.Add(FormattableString.Invariant($"{_rows} rows: up to {most} neighbours averaged into one sample"));
        }

        return new LogResult { File = name, Problems = _problems.All, Notes = _notes, Traces = traces, Readings = _readings, Materials = _materials, Rows = _rows };
    }

    // Times that no pull on a load cell has, in words; null for others.
    private static string? OddTime(LogTrace trace)
    {
        double[] time = trace.Trace.Time;
        double length = time[^1] - time[0];
        double apart = length / Math.Max(1, (time.Length - 1) * trace.PerSample);
        return time.Length < ShortestTrace ? null
            : length < ShortestPull ? FormattableString.Invariant($"the log lasts {1e3 * length:G3} ms in all: is the unit of its time right?")
            : apart >= LongestInterval ? FormattableString.Invariant($"the readings are {apart:G3} s apart: is the unit of their time right?")
            : null;
    }

    private LogLine Line(CsvParser parser)
    {
        IEnumerable<string> cells = Enumerable.Range(0, parser.Count).Select(i => parser[i]);
        return new LogLine([.. format.Separator == ' ' ? cells.Where(c => c.Trim().Length > 0) : cells], parser.RawRow, parser.RawRecord);
    }

    private void Begin()
    {
        _head = new LogHead(_first, format, _cells, options, _problems, _notes);
        _slot = [.. Enumerable.Repeat(-1, _head.Columns.Count)];
        foreach (LogColumn c in _head.Columns.Where(c => TraceStore.Slot(c.Role) >= 0))
        {
            _slot[c.Index] = TraceStore.Slot(c.Role);
            _scale[_slot[c.Index]] = c.Role == LogRole.Force ? _head.Force!.Factor : c.Factor;
        }

        for (int i = _head.From; i < _first.Count && !_problems.IsStopped; i++)
        {
            Row(_head, new LogRow(_first[i]));
        }
    }

    private void Row(LogHead head, in LogRow row)
    {
        _rows++;
        if (head.Time is not LogColumn time || head.Force is not LogColumn force)
        {
            Reading(head, row);
            return;
        }

        string text = row.Cell(force.Index);
        if (text.Trim().Length == 0)
        {
            _blank++;
            return;
        }

        string clock = row.Cell(time.Index);
        if (!_cells.TryTime(clock, out double t))
        {
            NotANumber(row, time, "time");
            return;
        }

        t = PastMidnight(clock, t);

        for (int i = 0; i < _slot.Length; i++)
        {
            if (_slot[i] < 0)
            {
                continue;
            }

            if (_cells.TryNumber(row.Cell(i), out double v))
            {
                _values[_slot[i]] = v * _scale[_slot[i]];
            }
            else if (i == force.Index)
            {
                NotANumber(row, force, "force");
                return;
            }
            else
            {
                _values[_slot[i]] = double.NaN;
            }
        }

        Store(head, row, t * time.Factor).Add(t * time.Factor, _values, row.Line);
    }

    // a clock without a date that falls back by more than half a day has passed midnight
    private double PastMidnight(string clock, double t)
    {
        if (!clock.Contains(':'))
        {
            return t;
        }

        _days += t + (_days * SecondsOfDay) < _lastClock - (0.5 * SecondsOfDay) ? 1 : 0;
        _lastClock = t + (_days * SecondsOfDay);
        return _lastClock;
    }

    private TraceStore Store(LogHead head, in LogRow row, double t)
    {
        string? tyre = TyreOf(head, row);
        string? pull = head.Pull is null ? null : row.Cell(head.Pull.Index).Trim();
        TraceStore? last = _stores.Count > 0 ? _stores[^1] : null;
        bool fellBack = last is not null && t < last.LastTime;
        bool isSame = last is not null && tyre == _lastTyre && pull == _lastPull;
        if (isSame && !fellBack)
        {
            return last!;
        }

        if (isSame && last!.Count * last.PerSample < ShortestTrace)
        {
            _problems.Error(row.Line, 1, "time runs backwards", "the rows must stand in the order of time; is this the right column?");
        }

        (_lastTyre, _lastPull) = (tyre, pull);
        _stores.Add(new TraceStore(tyre, head.Columns, options.MostSamples));
        return _stores[^1];
    }

    private void Reading(LogHead head, in LogRow row)
    {
        int before = _problems.All.Count;
        var reading = new PullReading(Value(row, head.Force, "force"), Value(row, head.Peak, "peak"), Value(row, head.Load, "load"))
        {
            Tyre = TyreOf(head, row),
            Line = row.Line,
            Pull = head.Pull is not null && _cells.TryNumber(row.Cell(head.Pull.Index), out double number) ? number : null,
        };
        if (_problems.All.Count > before)
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
            _problems.Fatal(row.Line, 1, $"more than {MostReadings} readings without a time column", "a log needs a column of time");
        }
    }

    private string? TyreOf(LogHead head, in LogRow row)
    {
        string? tyre = Told(head.Tyre, row);
        if (tyre is not null && Told(head.Material, row) is string material)
        {
            _materials.TryAdd(tyre, material);
        }

        return tyre;
    }

    private static string? Told(LogColumn? column, in LogRow row) => column is not null && row.Cell(column.Index).Trim() is { Length: > 0 } text ? text : null;

    private double? Value(in LogRow row, LogColumn? column, string what)
    {
        string text = column is null ? "" : row.Cell(column.Index);
        if (text.Trim().Length == 0)
        {
            return null;
        }

        if (_cells.TryNumber(text, out double v))
        {
            return v * column!.Factor;
        }

        // a person writes the unit into the cell
        if (Quantity.TryParse(text, Dimension.Force, out Quantity q, out _, out _))
        {
            return options.IsReversed ? -q.Value : q.Value;
        }

        NotANumber(row, column!, what);
        return null;
    }

    private void NotANumber(in LogRow row, LogColumn column, string what)
    {
        string t = row.Cell(column.Index).Trim();
        bool isFormula = t.StartsWith('=') || t.StartsWith('@') || t.StartsWith("'=", StringComparison.Ordinal) || ((t.StartsWith('+') || t.StartsWith('-')) && t.Length > 1 && char.IsLetter(t[1]));
        string message = isFormula
            ? $"\"{SourceFile.Clean(t, 40)}\" in the {what} column is a formula, which is not worked out here"
            : t.Length == 0 ? $"the {what} is missing" : $"\"{SourceFile.Clean(t, 40)}\" in the {what} column is no number";
        string help = isFormula ? "export values instead of formulas"
            : !format.HasDecimalComma && t.Contains(',') ? "write decimals with a point, or all of them with a comma and a semicolon between cells"
            : "mend the cell, empty it, or turn the line into a remark with a leading #";
        int at = t.Length == 0 ? 0 : Math.Max(0, _cells.Start(row.Raw, column.Index, t));
        _problems.Error(row.Line, at + 1, message, help, row.Raw, Math.Max(1, Math.Min(t.Length, 60)));
    }

    // A row kept aside, or the one that the parser stands at: then nothing is copied.
    private readonly struct LogRow
    {
        private readonly CsvParser? _parser;
        private readonly LogLine _kept;

        public LogRow(LogLine kept) => _kept = kept;

        public LogRow(CsvParser parser) => _parser = parser;

        public int Line => _parser?.RawRow ?? _kept.Line;

        public string Raw => _parser?.RawRecord ?? _kept.Raw;

        public string Cell(int index) => _parser is null ? _kept.Cell(index) : index < _parser.Count ? _parser[index] : "";
    }
}
