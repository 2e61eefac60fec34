using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
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
    public static ChannelLogResult Read(string path, CancellationToken cancel = default)
    {
        string name = SourceFile.Clean(path);
        try
        {
            using OpenedFile file = ReadGate.Open(path, new OpenAsk { TakesPipes = true, Cancel = cancel });
            if (file.State != OpenState.Open)
            {
                return Wrong(name, 0, file.State == OpenState.Folder ? "this is a folder, not a file" : "there is no such file", "check the name and the folder", cannotRead: true);
            }

            using var reader = new StreamReader(file.Stream!, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true);
            var text = new StringBuilder();
            char[] buffer = new char[1 << 16];
            for (int n = reader.Read(buffer); n > 0 && text.Length < LongestText; n = reader.Read(buffer))
            {
                cancel.ThrowIfCancellationRequested();
                text.Append(buffer, 0, n);
            }

            return Parse(name, text.ToString());
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Wrong(name, 0, SourceFile.Clean(e.Message), "check the name and the folder", cannotRead: true);
        }
    }

    /// <summary>Reads a text.</summary>
    /// <param name="name">Name that messages use.</param>
    /// <param name="text">The log.</param>
    public static ChannelLogResult Parse(string name, string text)
    {
        if (text.Trim().Length == 0)
        {
            return Wrong(name, 0, "the file is empty", "export the log again, with a column of time");
        }

        if (text.Contains('\0', StringComparison.Ordinal))
        {
            return Wrong(name, 0, "this is not text", "export the log as CSV");
        }

        LogFormat format = LogFormat.Of(text[..Math.Min(text.Length, 1 << 16)], text.Length <= 1 << 16);
        var cells = new LogCells(format);
        List<(string[] Cells, int Line)> rows = Rows(text, format);
        int head = rows.FindIndex(r => r.Cells.Length > 1 && r.Cells.Any(c => c.Any(char.IsLetter) && !cells.TryTime(c, out _)));
        if (head < 0 || head == rows.Count - 1)
        {
            return Wrong(name, 0, "the log has no head, or no rows below it", "name the columns in a first line, for example time_s, left_command, right_command, yaw_rate_rad_per_s");
        }

        string[] names = rows[head].Cells;
        bool hasUnits = rows.Count > head + 1 && rows[head + 1].Cells.All(c => !cells.TryNumber(c, out _)) && rows[head + 1].Cells.Any(LogColumn.IsUnit);
        ChannelHead[] heads = [.. names.Select((n, i) => ChannelHead.Of(i, n, hasUnits && i < rows[head + 1].Cells.Length ? rows[head + 1].Cells[i] : null))];
        if (heads.FirstOrDefault(h => h.IsTime) is not ChannelHead time)
        {
            return Wrong(name, rows[head].Line, "no column is the time", "name one time_s or time_ms");
        }

        ChannelHead[] known = [.. heads.Where(h => h.Kind is not null)];
        if (known.Length == 0)
        {
            return Wrong(name, rows[head].Line, "no column is a command, speed, yaw rate, voltage, current or force that is known here", "name them as in time_s, left_command, left_rpm, left_speed_m_per_s, yaw_rate_rad_per_s, battery_v, battery_a, force_n");
        }

        return Collect(name, cells, rows[(head + (hasUnits ? 2 : 1))..], time, known, [.. heads.Where(h => h.Kind is null && !h.IsTime && !known.Contains(h)).Select(h => h.Name)]);
    }

    private static List<(string[] Cells, int Line)> Rows(string text, LogFormat format)
    {
        using var parser = new CsvParser(new StringReader(text), new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = format.Separator.ToString(), Mode = format.Separator == ' ' ? CsvMode.NoEscape : CsvMode.RFC4180, WhiteSpaceChars = [], BadDataFound = null, HasHeaderRecord = false, DetectColumnCountChanges = false,
        });
        List<(string[] Cells, int Line)> rows = [];
        while (rows.Count <= MostRows && parser.Read())
        {
            string[] cells = [.. Enumerable.Range(0, parser.Count).Select(i => parser[i].Trim()).Where(c => format.Separator != ' ' || c.Length > 0)];
            if (cells.Length > 0 && !LogFormat.IsComment(cells[0], format.Separator) && cells.Any(c => c.Length > 0))
            {
                rows.Add((cells, parser.RawRow));
            }
        }

        return rows;
    }

    private static ChannelLogResult Collect(string name, LogCells cells, List<(string[] Cells, int Line)> rows, ChannelHead time, ChannelHead[] known, string[] unused)
    {
        List<string> notes = [];
        List<double> times = [];
        List<double>[] values = [.. known.Select(_ => new List<double>())];
        foreach ((string[] row, int line) in rows)
        {
            if (time.Index >= row.Length || !cells.TryTime(row[time.Index], out double t))
            {
                return Wrong(name, line, "the time is no number", "mend the cell, or turn the line into a remark with a leading #");
            }

            if (times.Count > 0 && t < times[^1])
            {
                return Wrong(name, line, "time runs backwards", "the rows must stand in the order of time");
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
                values[k].Add(known[k].Index < row.Length && cells.TryNumber(row[known[k].Index], out double v) ? v : double.NaN);
            }
        }

        double factor = time.Factor;
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
