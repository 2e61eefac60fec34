using CsvHelper;

namespace PushSim.Scenarios.Logs;

/// <summary>Takes the rows of a log one by one: first finds out its columns, then hands on samples or readings.</summary>
/// <param name="name">The file, as messages name it.</param>
/// <param name="format">How it keeps its cells apart.</param>
/// <param name="options">What the user says about it.</param>
/// <param name="live">Given every sample, which is then not kept; null: kept as histories.</param>
internal sealed class LogRows(string name, LogFormat format, LogOptions options, Action<LogSample>? live = null)
{
    // Rows kept until the columns are told: room for a preamble [1].
    private const int RowsLookedAt = 40;

    /// <summary>Characters that a cell may have [1].</summary>
    public const int LongestCell = 1000;

    private readonly LogProblems _problems = new(name);
    private readonly LogCells _cells = new(format);
    private readonly LogSplitter _splitter = new(format);
    private readonly LogStrays _strays = new();
    private readonly List<string> _notes = [];
    private readonly List<LogLine> _first = [];
    private readonly Dictionary<string, string> _materials = new(StringComparer.Ordinal);
    private readonly ArrivalClock _arrival = new();
    private readonly DayClock _clock = new();
    private LogTraces? _traces;
    private LogReadings? _readings;
    private LogValues? _values;
    private LogHead? _head;
    private long _rows;
    private long _skipped;
    private long _blank;
    private int _heads;
    private int _lastLine;

    /// <summary>Whether more rows would help.</summary>
    public bool WantsMore => !_problems.IsStopped && !_strays.IsHopeless(_rows);

    /// <summary>What is wrong so far.</summary>
    public IReadOnlyList<Problem> Problems => _problems.All;

    /// <summary>Lines that are no readings so far [1].</summary>
    public long Strays => _strays.Count;

    /// <summary>Whether rows name a time of their own; false before that is known.</summary>
    public bool HasOwnTime => _head is { Time: not null, IsTimeOfArrival: false };

    private LogTraces Traces => _traces ??= new LogTraces(options, _problems);

    private LogReadings Readings => _readings ??= new LogReadings(_cells, options, _problems, NotANumber);

    /// <summary>Takes the row at which a parser stands.</summary>
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

        Keep(Line(parser));
    }

    /// <summary>Takes a line.</summary>
    /// <param name="line">The line without its end.</param>
    /// <param name="number">Its number, from 1.</param>
    public void Take(string line, int number)
    {
        _lastLine = number;
        if (line.AsSpan().Trim().Length == 0 || LogFormat.IsComment(line, format.Separator))
        {
            return;
        }

        var kept = new LogLine(_splitter.Split(line), number, line);
        if (_head is not null)
        {
            Row(_head, new LogRow(kept));
            return;
        }

        Keep(kept);
    }

    /// <summary>Complains about a cell beyond <see cref="LongestCell"/>, at which the parser gave up.</summary>
    public void TooLong(int line) => _problems.Error(line, 1, $"a cell is longer than {LongestCell} characters", "is a quotation mark left open above?");

    /// <summary>Tells the columns from the rows so far.</summary>
    public void Settle()
    {
        if (_head is null && !_problems.IsStopped && _first.Count > 0)
        {
            Begin();
        }
    }

    /// <summary>All that was read.</summary>
    public LogResult Finish()
    {
        if (_head is null && !_problems.IsStopped && _first.Count == 0)
        {
            _problems.Error(0, 0, "the file has no rows of data, only remarks", "export the log again, with a column of time and one of force");
        }

        Settle();
        _strays.Tell(_rows, _notes);
        _blank += _readings?.Blank ?? 0;
        _rows -= _readings?.Blank ?? 0;
        if (_problems.All.Count == 0 && _rows == 0)
        {
            (string what, string help) = _blank > 0 ? ($"{_blank} {(_blank == 1 ? "row" : "rows")}, but none has a force", "fill in the column of force") : ("there are no rows of data below the header", "export the log again, with its rows");
            _problems.Error(_lastLine, 1, what, help);
        }
        else if (_problems.All.Count == 0 && _head?.Time is not null && _rows == 1)
        {
            _problems.Error(_lastLine, 1, "there is one row of data only, which is no log", "log the whole pull, from slack to slack; for single readings off a display leave the time column out");
        }

        if (_head is not null && _problems.All.Count == 0)
        {
            _readings?.CheckOrder(_head);
        }

        TellSkipped();
        List<LogTrace> traces = _problems.All.Any(p => p.Severity == Severity.Error) ? [] : _traces?.Finish() ?? [];
        if (_problems.All.Count == 0 && traces.Count == 0 && (_readings?.All.Count ?? 0) == 0 && live is null)
        {
            _problems.Error(_lastLine, 1, "no row has a force", "export the log again, with the column of force filled");
        }

        if (traces.Select(LogTraces.OddTime).FirstOrDefault(t => t is not null) is string odd)
        {
            _notes.Add(odd);
        }

        int most = traces.Count == 0 ? 1 : traces.Max(t => t.PerSample);
        if (most > 1)
        {
            _notes.Add(FormattableString.Invariant($"{_rows} rows: up to {most} neighbours averaged into one sample"));
        }

        return new LogResult { File = name, Problems = _problems.All, Notes = _notes, Traces = traces, Readings = _readings?.All ?? [], Materials = _materials, Rows = _rows };
    }

    private void TellSkipped()
    {
        if (_blank > 0)
        {
            _notes.Add($"{_blank} {(_blank == 1 ? "row" : "rows")} without a force left out");
        }

        if (_heads > 0)
        {
            _notes.Add($"the head comes {(_heads == 1 ? "once" : FormattableString.Invariant($"{_heads} times"))} more");
        }
    }

    private LogLine Line(CsvParser parser)
    {
        IEnumerable<string> cells = Enumerable.Range(0, parser.Count).Select(i => parser[i]);
        return new LogLine([.. format.Separator == ' ' ? LogFormat.Joined(cells.Select(c => c.Trim())) : cells], parser.RawRow, parser.RawRecord);
    }

    private void Keep(LogLine line)
    {
        _first.Add(line);
        if (_first.Count >= RowsLookedAt)
        {
            Begin();
        }
    }

    private void Begin()
    {
        if (_first.Count > 2 && !_first.Any(r => r.Cells.Any(_cells.IsNumber)))
        {
            _problems.Fatal(_first[0].Line, 1, "no line is a reading", "a log has a number in each line; export it again, with a column of time and one of force", _first[0].Raw);
            return;
        }

        _head = new LogHead(_first, format, _splitter.Head, _cells, options, _problems, _notes);
        _values = new LogValues(_head, _cells, options);
        LogLine[] rows = [.. _first.Skip(_head.From)];
        _first.Clear();
        for (int i = 0; i < rows.Length && !_problems.IsStopped; i++)
        {
            // a head among them begins anew
            if (_head is null)
            {
                Keep(rows[i]);
                continue;
            }

            Row(_head, new LogRow(rows[i]));
        }
    }

    private void Row(LogHead head, in LogRow row)
    {
        _rows++;
        if (head.Force is not LogColumn force || (head.Time is null && (options.Rate is null || head.Pull is not null || head.Peak is not null)))
        {
            Readings.Add(head, row, TyreOf(head, row));
            return;
        }

        string text = row.Cell(force.Index);
        double factor = head.Time?.Factor ?? 1.0;
        double t = (_rows + _skipped - 1) / (options.Rate ?? 1.0);
        string clock = head.Time is { } time ? row.Cell(time.Index) : "";
        bool isTimed = head.Time is null || _cells.TryTime(clock, factor, out t);
        if (text.AsSpan().Trim().Length == 0 && (isTimed || !format.IsPrinted))
        {
            _blank++;
            return;
        }

        if (!isTimed || !_values!.Take(force, row))
        {
            Stray(head, row, isTimed ? force : head.Time!, isTimed ? "force" : "time");
            return;
        }

        t = _clock.PastMidnight(clock, t) * factor;
        var sample = new LogSample(head.IsTimeOfArrival ? _arrival.Take(t) : t, _values.All, row.Line, live is null ? TyreOf(head, row) : null, head.Pull is null || live is not null ? null : row.Cell(head.Pull.Index).Trim());
        if (live is not null)
        {
            live(sample);
            return;
        }

        Traces.Add(sample, head.Columns);
    }

    // A row that is no reading: the head once more, another head, or something stray
    private void Stray(LogHead head, in LogRow row, LogColumn column, string what)
    {
        _rows--;
        LogLine kept = row.Kept();
        if (_splitter.Head is null && head.IsHeaderAgain(kept.Cells))
        {
            _heads++;
            if (head.Header is null || !kept.Cells.Skip(format.HasStamp ? 1 : 0).SequenceEqual(head.Header))
            {
                _head = null;
                Keep(kept);
            }

            return;
        }

        string text = row.Cell(column.Index).Trim();
        if (live is null && CellWords.IsFormula(text))
        {
            NotANumber(row, column, what);
            return;
        }

        _skipped++;
        _strays.Add(kept.Line, kept.Raw, () => NotANumber(new LogRow(kept), column, what));
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

    private static string? Told(LogColumn? column, in LogRow row) => column is not null && row.Cell(column.Index).Trim().TrimEnd(':') is { Length: > 0 } text ? text : null;

    private void NotANumber(LogRow row, LogColumn column, string what) => CellWords.NotANumber(_problems, format, _cells, row, column, what);
}
