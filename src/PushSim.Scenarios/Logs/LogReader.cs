using System.Text;
using CsvHelper;
using PushSim.Files;

namespace PushSim.Scenarios.Logs;

/// <summary>
/// Reads the log of a load cell, or a table of readings, as loggers, spreadsheets and people write them. Streams: memory does
/// not grow with the file beyond <see cref="LogOptions.MostSamples"/>.
/// </summary>
public static class LogReader
{
    // Characters looked at to tell separator and decimals.
    private const int Head = 64 * 1024;

    // Characters looked at to tell text from other bytes, and the share of odd signs among them that a text in an old encoding may have [1].
    private const int LookedForText = 2000;
    private const double MostOddShare = 0.1;

    /// <summary>Reads a file, or what comes from a pipe until it ends.</summary>
    public static LogResult Read(string path, LogOptions? options = null, CancellationToken cancel = default) =>
        Read(path, options ?? new LogOptions(), new OpenAsk { TakesPipes = true, Cancel = cancel });

    /// <summary>Reads a file as it may be opened.</summary>
    internal static LogResult Read(string path, LogOptions options, OpenAsk ask)
    {
        string name = SourceFile.Clean(path);
        try
        {
            using OpenedFile file = ReadGate.Open(path, ask);
            return file.State switch
            {
                OpenState.Open => ReadStream(file.Stream!, name, options, ask.Cancel),
                _ => Unreadable(UnopenedFile.Problem(file.State, path, ".csv")),
            };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Unreadable(new Problem(name, 0, 0, Severity.Error, SourceFile.Clean(e.Message), "check the name and the folder"));
        }
    }

    /// <summary>Reads a stream from its present position; the start is kept to look at twice.</summary>
    /// <param name="stream">The text, UTF-8 or with a byte-order mark.</param>
    /// <param name="name">Name that messages use.</param>
    /// <param name="options">What the user says about it.</param>
    /// <param name="cancel">Interrupt.</param>
    public static LogResult ReadStream(Stream stream, string name, LogOptions options, CancellationToken cancel = default)
    {
        using var text = new StreamReader(stream, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true, 1 << 16);
        char[] head = new char[Head];
        int length = text.ReadBlock(head, 0, Head);
        string start = new(head, 0, length);
        if (start.Trim().Length == 0)
        {
            return new LogResult { File = name, Problems = [new Problem(name, 0, 0, Severity.Error, "the file is empty", "export the log again, with a column of time and one of force")] };
        }

        if (!IsText(start))
        {
            return new LogResult { File = name, Problems = [new Problem(name, 0, 0, Severity.Error, "this is not text", "export the log as CSV")] };
        }

        if (Path.GetExtension(name).Equals(".toml", StringComparison.OrdinalIgnoreCase))
        {
            return new LogResult { File = name, Problems = [new Problem(name, 0, 0, Severity.Error, "this is a robot or scenario file, not a log", "name the log, a CSV file, here; a robot or scenario goes with --robot")] };
        }

        // lines of old editors end in a carriage return alone
        bool isOld = start.Contains('\r', StringComparison.Ordinal) && !start.Contains('\n', StringComparison.Ordinal);
        LogFormat format = LogFormat.Of(isOld ? start.Replace('\r', '\n') : start, length < Head);
        var work = new LogRows(name, format, options);
        using var joined = new JoinedReader(isOld ? start.Replace('\r', '\n') : start, text, isOld);
        if (format.IsPrinted)
        {
            ReadLines(joined, work, cancel);
        }
        else
        {
            ReadCells(joined, format, work, cancel);
        }

        return work.Finish();
    }

    // Lines as a board or a terminal program prints them
    private static void ReadLines(TextReader text, LogRows work, CancellationToken cancel)
    {
        var lines = new LineAssembler((line, number, _) => work.Take(line, number));
        char[] buffer = new char[1 << 14];
        for (int n = text.Read(buffer, 0, buffer.Length); n > 0 && work.WantsMore; n = text.Read(buffer, 0, buffer.Length))
        {
            cancel.ThrowIfCancellationRequested();
            lines.Push(buffer.AsSpan(0, n));
        }

        lines.Finish();
    }

    private static void ReadCells(TextReader text, LogFormat format, LogRows work, CancellationToken cancel)
    {
        using var parser = new CsvParser(text, LogLines.Configuration(format));
        try
        {
            while (work.WantsMore && parser.Read())
            {
                work.Take(parser);
                if (parser.Row % 65536 == 0)
                {
                    cancel.ThrowIfCancellationRequested();
                }
            }
        }
        catch (MaxFieldSizeException)
        {
            work.TooLong(parser.RawRow);
        }
    }

    // No zero, and few signs that no text has: a log in an old encoding may have some in its heads.
    private static bool IsText(string start)
    {
        string looked = start[..Math.Min(start.Length, LookedForText)];
        int odd = looked.Count(c => c == '\uFFFD' || (char.IsControl(c) && c is not ('\t' or '\r' or '\n' or '\f')));
        return !start.Contains('\0') && odd <= MostOddShare * looked.Length;
    }

    private static LogResult Unreadable(Problem why) => new() { File = why.File, CannotRead = true, Problems = [why] };

    // The start that was looked at, then the rest.
    private sealed class JoinedReader(string start, TextReader rest, bool isOld) : TextReader
    {
        private int _at;

        public override int Read(char[] buffer, int index, int count)
        {
            if (_at >= start.Length)
            {
                int read = rest.Read(buffer, index, count);
                if (isOld)
                {
                    buffer.AsSpan(index, read).Replace('\r', '\n');
                }

                return read;
            }

            int n = Math.Min(count, start.Length - _at);
            start.CopyTo(_at, buffer, index, n);
            _at += n;
            return n;
        }
    }
}
