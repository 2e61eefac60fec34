using System.Text;
using CsvHelper;
using PushSim.Analysis.Compare;
using PushSim.Files;

namespace PushSim.Scenarios.Logs;

/// <summary>Reads a robot's log: a column of time and any of commands, speeds, yaw rate, voltage, current, force, as loggers and `run` write them.</summary>
public static class ChannelLogReader
{
    private const int MostRows = 200_000;
    private const int LongestText = 64 * 1024 * 1024;

    // Rows between which a time that is given in no unit is looked at [1]; longer ones are milliseconds [s].
    private const double LongestStepOfSeconds = 5.0;

    // Full scales that a command without a unit may have [1].
    private static readonly double[] s_scales = [1.0, 100.0, 255.0, 1000.0, 1023.0, 4095.0, 65535.0];

    /// <summary>Reads a file, or what comes from a pipe until it ends.</summary>
    /// <param name="path">The file.</param>
    /// <param name="rate">Rows a second of a log without times [1/s]; null: not known.</param>
    /// <param name="cancel">Interrupt.</param>
    public static ChannelLogResult Read(string path, double? rate = null, CancellationToken cancel = default)
    {
        string name = SourceFile.Clean(path);
        try
        {
            using OpenedFile file = ReadGate.Open(path, new OpenAsk { TakesPipes = true, Cancel = cancel });
            if (file.State != OpenState.Open)
            {
                return new ChannelLogResult { File = name, CannotRead = true, Problems = [UnopenedFile.Problem(file.State, path, ".csv")] };
            }

            using var reader = new StreamReader(file.Stream!, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true);
            var text = new StringBuilder();
            char[] buffer = new char[1 << 16];
            for (int n = reader.Read(buffer); n > 0 && text.Length < LongestText; n = reader.Read(buffer))
            {
                cancel.ThrowIfCancellationRequested();
                text.Append(buffer, 0, n);
            }

            return Parse(name, text.ToString(), rate);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Wrong(name, 0, SourceFile.Clean(e.Message), "check the name and the folder", cannotRead: true);
        }
    }

    /// <summary>Reads a text.</summary>
    /// <param name="name">Name that messages use.</param>
    /// <param name="text">The log.</param>
    /// <param name="rate">Rows a second of a log without times [1/s]; null: not known.</param>
    public static ChannelLogResult Parse(string name, string text, double? rate = null)
    {
        if (text.Trim().Length == 0)
        {
            return Wrong(name, 0, "the file is empty", "export the log again, with a column of time");
        }

        if (text.Contains('\0', StringComparison.Ordinal))
        {
            return Wrong(name, 0, "this is not text", "export the log as CSV");
        }

        text = text.Contains('\n', StringComparison.Ordinal) ? text : text.Replace('\r', '\n');
        LogFormat format = LogFormat.Of(text[..Math.Min(text.Length, 1 << 16)], text.Length <= 1 << 16);
        var cells = new LogCells(format);
        var splitter = new LogSplitter(format);
        List<LogLine> rows = [];
        try
        {
            rows = LogLines.Read(text, format, splitter, MostRows);
        }
        catch (MaxFieldSizeException)
        {
            return Wrong(name, 0, $"a cell is longer than {LogRows.LongestCell} characters", "is a quotation mark left open?");
        }

        // a head among the lines, or names in each of them
        int head = splitter.Head is not null ? -1 : rows.FindIndex(r => r.Cells.Length > 1 && r.Cells.Skip(format.HasStamp ? 1 : 0).Any(c => c.Any(char.IsLetter) && !cells.TryTime(c, out _)));
        if (splitter.Head is null && (head < 0 || head == rows.Count - 1))
        {
            return Wrong(name, 0, "the log has no head, or no rows below it", "name the columns in a first line, for example time_s, left_command, right_command, yaw_rate_rad_per_s");
        }

        string[] names = splitter.Head ?? rows[head].Cells;
        bool hasUnits = splitter.Head is null && rows.Count > head + 1 && rows[head + 1].Cells.All(c => !cells.TryNumber(c, out _)) && rows[head + 1].Cells.Any(LogColumn.IsUnit);
        ChannelHead[] heads = [.. names.Select((n, i) => ChannelHead.Of(i, n, hasUnits && i < rows[head + 1].Cells.Length ? rows[head + 1].Cells[i] : null))];
        ChannelHead? time = heads.FirstOrDefault(h => h.IsTime) ?? (format.HasStamp ? ChannelHead.OfArrival : null);
        if (time is null && rate is null)
        {
            return Wrong(name, head < 0 ? 1 : rows[head].Line, "no column is the time", "name one time_s or time_ms, or add --rate with the rows a second");
        }

        ChannelHead[] known = [.. heads.Where(h => h.Kind is not null)];
        if (known.Length == 0)
        {
            return Wrong(name, head < 0 ? 1 : rows[head].Line, "no column is a command, speed, yaw rate, voltage, current or force that is known here", "name them as in time_s, left_command, left_rpm, left_speed_m_per_s, yaw_rate_rad_per_s, battery_v, battery_a, force_n");
        }

        List<string> notes = [];
        List<LogLine> data = rows[(head + (hasUnits ? 2 : 1))..];
        return Sound(name, cells, data, names, time, notes) ?? Collect(name, cells, data, time, rate, known, [.. heads.Where(h => h.Kind is null && !h.IsTime && !known.Contains(h)).Select(h => h.Name)], notes);
    }

    // Leaves heads in between and a few stray lines out; complains about more of them
    private static ChannelLogResult? Sound(string name, LogCells cells, List<LogLine> rows, string[] names, ChannelHead? time, List<string> notes)
    {
        var strays = new LogStrays();
        int heads = rows.RemoveAll(r => r.Cells.SequenceEqual(names));
        var problems = new LogProblems(name);
        int all = rows.Count;
        rows.RemoveAll(r =>
        {
            string cell = time is null ? "0" : r.Cell(time.Index);
            bool isStray = (r.Cells.Length == 1 && names.Length > 1) || !cells.TryTime(cell, double.IsNaN(time?.Factor ?? 1.0) ? 1.0 : time?.Factor ?? 1.0, out _);
            if (isStray)
            {
                strays.Add(r.Line, r.Raw, () => problems.Error(r.Line, 1, cell.Trim().Length == 0 ? "the time is missing" : "the time is no number", "mend the cell, or turn the line into a remark with a leading #", r.Raw));
            }

            return isStray;
        });
        strays.Tell(rows.Count, notes);
        if (heads > 0)
        {
            notes.Add($"the head comes {(heads == 1 ? "once" : FormattableString.Invariant($"{heads} times"))} more");
        }

        return problems.All.Count > 0 ? new ChannelLogResult { File = name, Problems = problems.All } : null;
    }

    private static ChannelLogResult Collect(string name, LogCells cells, List<LogLine> rows, ChannelHead? time, double? rate, ChannelHead[] known, string[] unused, List<string> notes)
    {
        List<double> times = [];
        List<double>[] values = [.. known.Select(_ => new List<double>())];
        double factor = time?.Factor ?? 1.0;
        foreach (LogLine row in rows)
        {
            double t = times.Count / (rate ?? 1.0);
            if (time is not null)
            {
                _ = cells.TryTime(row.Cell(time.Index), double.IsNaN(factor) ? 1.0 : factor, out t);
            }

            if (times.Count > 0 && t < times[^1])
            {
                return Wrong(name, row.Line, "time runs backwards", "the rows must stand in the order of time");
            }

            if (times.Count > 0 && t == times[^1])
            {
                // two rows at a jump: the one after it counts
                times.RemoveAt(times.Count - 1);
                Array.ForEach(values, v => v.RemoveAt(v.Count - 1));
            }

            times.Add(t);
            for (int k = 0; k < known.Length; k++)
            {
                values[k].Add(cells.TryNumber(row.Cell(known[k].Index), out double v) ? v : double.NaN);
            }
        }

        if (double.IsNaN(factor))
        {
            bool isMilli = times.Count > 1 && (times[^1] - times[0]) / (times.Count - 1) > LongestStepOfSeconds;
            factor = isMilli ? 1e-3 : 1.0;
            notes.Add($"the time is taken to be in {(isMilli ? "milliseconds" : "seconds")}");
        }

        if (times.Count < 3)
        {
            return Wrong(name, 0, "the log has fewer than three rows", "log the whole run");
        }

        double scale = CommandScale(known, values, notes);
        Channel[] channels = Merged([.. known.Select((h, k) => new Channel(h.Kind!.Value, h.Side, h.Name, [.. values[k].Select(v => v * (double.IsNaN(h.Factor) ? scale : h.Factor))]))]);
        string[] named = [.. unused.Where(u => u.Any(char.IsLetter))];
        if (named.Length is > 0 and <= 12)
        {
            notes.Add("columns that are not used: " + string.Join(", ", named));
        }

        return new ChannelLogResult { File = name, Log = new ChannelLog([.. times.Select(t => factor * (t - times[0]))], channels), Start = factor * times[0], Notes = notes };
    }

    // A quantity twice: of a side's wheels the mean, of all else the first
    private static Channel[] Merged(Channel[] channels) =>
    [
        .. channels.GroupBy(c => (c.Kind, c.Side)).Select(g => g.First() is { IsWheels: true } first && g.Count() > 1
            ? first with { Values = [.. first.Values.Select((_, i) => g.Average(c => c.Values[i]))] }
            : g.First()),
    ];

    // Commands in no unit: the least full scale that holds them all
    private static double CommandScale(ChannelHead[] known, List<double>[] values, List<string> notes)
    {
        double[] open = [.. known.Select((h, k) => (h, k)).Where(p => double.IsNaN(p.h.Factor)).SelectMany(p => values[p.k]).Where(double.IsFinite).Select(Math.Abs)];
        double most = open.Length == 0 ? 0.0 : open.Max();
        double full = s_scales.FirstOrDefault(s => most <= 1.0001 * s, most);
        if (full != 1.0 && most > 0.0)
        {
            notes.Add(FormattableString.Invariant($"commands up to {most:G4} are taken to be of {full:G6}"));
        }

        return 1.0 / full;
    }

    private static ChannelLogResult Wrong(string name, int line, string message, string help, bool cannotRead = false) =>
        new() { File = name, CannotRead = cannotRead, Problems = [new Problem(name, line, line > 0 ? 1 : 0, Severity.Error, message, help)] };
}
