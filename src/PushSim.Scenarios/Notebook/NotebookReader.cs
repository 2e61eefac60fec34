using System.Text;
using CsvHelper;
using PushSim.Files;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Notebook;

/// <summary>
/// Reads the notebook of a garage, `readings.csv`: one row a pull. A spreadsheet may have changed separator, decimal sign, line ends, order and units of its columns, added columns of
/// the user's own and rewritten the dates. A row that is left out is kept as far as it can be read.
/// </summary>
public static class NotebookReader
{
    /// <summary>Name of the notebook in a garage.</summary>
    public const string FileName = "readings.csv";

    private const int LongestText = 32 * 1024 * 1024;
    private const int MostRows = 200_000;

    // Characters in which the head must stand [1].
    private const int HeadLength = 1 << 14;

    // Further complaints say nothing new [1].
    private const int MostErrors = 10;

    /// <summary>The notebook of a garage, there or not; null without a garage.</summary>
    /// <param name="garage">The garage; null: none.</param>
    public static string? FileOf(GarageFolder? garage) => garage is null ? null : Path.Combine(garage.Path, FileName);

    /// <summary>Whether a text is a notebook: a head with the tyre, and the floor's state or what is left out.</summary>
    /// <param name="text">The text, or its beginning.</param>
    public static bool IsNotebook(string text) => NotebookHead.Of(text) is not null;

    /// <summary>Whether a file is a notebook; false where there is none. Throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/> where it cannot be read: it would be taken for another kind of log.</summary>
    /// <param name="path">The file. A pipe is none.</param>
    public static bool IsNotebookFile(string path)
    {
        try
        {
            // a pipe that is opened and closed again would lose what is written into it
            if (Disk.Look(RealPath.Of(path)) != PathKind.File)
            {
                return false;
            }

            using OpenedFile file = ReadGate.Open(path);
            char[] begin = new char[HeadLength];
            using var reader = new StreamReader(file.Stream ?? Stream.Null, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true);
            return IsNotebook(new string(begin, 0, reader.ReadBlock(begin, 0, begin.Length)));
        }
        catch (Exception e) when (e is ArgumentException or NotSupportedException)
        {
            return false;
        }
    }

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file.</param>
    public static NotebookResult Read(string path)
    {
        string name = SourceFile.Clean(path);
        try
        {
            using OpenedFile file = ReadGate.Open(path);
            if (file.State != OpenState.Open)
            {
                return new NotebookResult { File = name, CannotRead = true, Problems = [UnopenedFile.Problem(file.State, path, ".csv")] };
            }

            return Of(file.Stream!) is string text ? Parse(name, text) : Wrong(name, 0, $"the notebook is longer than {LongestText / 1024 / 1024} MB", "begin a new one and keep this one under another name");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Wrong(name, 0, SourceFile.Clean(e.Message), "check the name and the folder", cannotRead: true);
        }
    }

    /// <summary>Reads a text.</summary>
    /// <param name="name">Name that messages use.</param>
    /// <param name="text">The notebook.</param>
    public static NotebookResult Parse(string name, string text)
    {
        text = text.TrimStart('\uFEFF');
        if (text.Contains('\0', StringComparison.Ordinal))
        {
            return Wrong(name, 0, "this is not text", "save the notebook as CSV, in UTF-8");
        }

        if (NotebookHead.Of(text) is not NotebookHead head)
        {
            return Wrong(name, 0, "the notebook has no head", "its first row names the columns: " + NotebookWriter.HeadLine(','));
        }

        List<(string[] Cells, int Line, string Raw)> rows = [];
        using CsvParser parser = NotebookHead.Parser(new StringReader(text), head.Format);
        try
        {
            while (rows.Count <= MostRows && parser.Read())
            {
                if (parser.RawRow > head.Line && parser.Record is { Length: > 0 } cells && !NotebookHead.IsRemark(cells) && cells.Any(c => c.Trim().Length > 0))
                {
                    rows.Add((cells, parser.RawRow, parser.RawRecord));
                }
            }
        }
        catch (CsvHelperException)
        {
            return Wrong(name, parser.RawRow, $"a cell is longer than {LogRows.LongestCell} characters", "is a quotation mark left open above?");
        }

        return rows.Count > MostRows ? Wrong(name, 0, FormattableString.Invariant($"the notebook has more than {MostRows} rows"), "begin a new one and keep this one under another name") : new Sheet(name, head, rows).Result();
    }

    /// <summary>The text of a file; null where it is too long or no file.</summary>
    internal static string? Text(string path)
    {
        using OpenedFile file = ReadGate.Open(path);
        return file.State == OpenState.Open ? Of(file.Stream!) : null;
    }

    private static string? Of(Stream stream)
    {
        using var reader = new StreamReader(stream, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true);
        var text = new StringBuilder();
        char[] buffer = new char[1 << 14];
        for (int n = reader.Read(buffer); n > 0; n = reader.Read(buffer))
        {
            text.Append(buffer, 0, n);
            if (text.Length > LongestText)
            {
                return null;
            }
        }

        return text.ToString();
    }

    private static NotebookResult Wrong(string name, int line, string message, string help, bool cannotRead = false) =>
        new() { File = name, CannotRead = cannotRead, Problems = [new Problem(name, line, line > 0 ? 1 : 0, Severity.Error, message, help)] };

    // Rows of one notebook, and what is wrong with them.
    private sealed class Sheet(string name, NotebookHead head, List<(string[] Cells, int Line, string Raw)> rows)
    {
        private readonly List<Problem> _problems = [];
        private readonly LogCells _numbers = head.Numbers();
        private readonly NotebookDates _dates = new(head.Of(NotebookRole.When) is { } w ? rows.Select(r => Cell(r.Cells, w)).Where(c => c.Length > 0) : []);
        private bool _isDateTold;

        public NotebookResult Result()
        {
            List<string> notes = [];
            foreach (NotebookColumn c in head.Columns.Where(c => c.Role is { } r && NotebookColumn.IsQuantity(r) && double.IsNaN(c.Factor)))
            {
                string unit = c.Unit.Length == 0 ? $"the column \"{SourceFile.Clean(c.Name, 40)}\" names no unit" : $"\"{SourceFile.Clean(c.Unit, 20)}\" is no unit of {(c.Role == NotebookRole.Mass ? "mass" : "force")} known here";
                _problems.Add(new Problem(name, head.Line, 1, Severity.Error, unit, $"write it in the head, for example {NotebookColumn.HeadOf(c.Role!.Value)} or \"{NotebookColumn.HeadOf(c.Role.Value).Split('_')[0]} [{(c.Role == NotebookRole.Mass ? "g" : "gf")}]\""));
            }

            if (head.Of(NotebookRole.Peak) is null && head.Of(NotebookRole.Sliding) is null)
            {
                _problems.Add(new Problem(name, head.Line, 1, Severity.Error, "no column for the force of a pull", "name one peak_n or sliding_n"));
            }

            string[] own = [.. head.Columns.Where(c => c.Role is null && c.Name.Any(char.IsLetter)).Select(c => $"\"{SourceFile.Clean(c.Name, 40)}\"")];
            if (own.Length is > 0 and <= 12)
            {
                notes.Add($"{(own.Length == 1 ? "column" : "columns")} of your own, kept and not used: {string.Join(", ", own)}");
            }

            List<PullRow> read = [];
            if (_problems.Count == 0)
            {
                foreach ((string[] cells, int line, string raw) in rows)
                {
                    if (_problems.Count >= MostErrors)
                    {
                        break;
                    }

                    read.Add(Row(cells, line, raw));
                }
            }

            return new NotebookResult { File = name, Rows = _problems.Count == 0 ? read : [], Problems = _problems, Notes = notes };
        }

        private PullRow Row(string[] cells, int line, string raw)
        {
            string Text(NotebookRole role) => head.Of(role) is { } c ? SourceFile.Clean(Bare(Cell(cells, c)), 300) : "";
            string left = Text(NotebookRole.LeftOut);
            bool counts = left.Length == 0;
            void Tell(NotebookColumn? c, string message, string help)
            {
                if (counts)
                {
                    string cell = c is null ? "" : Cell(cells, c);
                    int at = c is null ? 0 : Math.Max(0, _numbers.Start(raw, c.Index, cell));
                    _problems.Add(new Problem(name, line, at + 1, Severity.Error, message, help) { SourceLine = SourceFile.Clean(raw.TrimEnd('\r', '\n')), Length = Math.Max(1, cell.Length) });
                }
            }

            double? Number(NotebookRole role)
            {
                if (head.Of(role) is not { } c || Cell(cells, c) is not { Length: > 0 } cell)
                {
                    return null;
                }

                if (!Value(cell, c, out double v))
                {
                    Tell(c, $"\"{SourceFile.Clean(cell, 40)}\" is no number", "write a number, or say in the column left_out why the pull does not count");
                    return null;
                }

                if (v <= 0.0)
                {
                    Tell(c, $"{c.Name} is {SourceFile.Clean(cell, 40)}, and must be above zero", "forces and masses have no sign here; say in left_out why the pull does not count");
                    return null;
                }

                return v;
            }

            DateTime? when = null;
            if (head.Of(NotebookRole.When) is { } day && Cell(cells, day) is { Length: > 0 } text)
            {
                when = _dates.TryRead(text, out DateTime moment) ? moment : null;
                if (when is null && !(_dates.IsAmbiguous && _isDateTold))
                {
                    _isDateTold |= _dates.IsAmbiguous;
                    Tell(day, _dates.IsAmbiguous ? $"\"{SourceFile.Clean(text, 40)}\": is the day or the month first? No row of the file tells" : $"\"{SourceFile.Clean(text, 40)}\" is no date", "write it as 2026-03-01 18:30");
                }
            }

            string tyre = Text(NotebookRole.Tyre);
            if (tyre.Length == 0)
            {
                Tell(head.Of(NotebookRole.Tyre), "the row names no tyre", "write its name, or say in left_out why the pull does not count");
            }

            (double? peak, double? sliding, double? load, double? mass) = (Number(NotebookRole.Peak), Number(NotebookRole.Sliding), Number(NotebookRole.Load), Number(NotebookRole.Mass));
            if (counts && Missing(cells, NotebookRole.Peak) && Missing(cells, NotebookRole.Sliding))
            {
                Tell(head.Of(NotebookRole.Peak) ?? head.Of(NotebookRole.Sliding), "the row has neither a peak nor a sliding force", "write one, or say in left_out why the pull does not count");
            }

            return new PullRow
            {
                When = when, Tyre = tyre, Robot = Text(NotebookRole.Robot), Mass = mass, Motors = Text(NotebookRole.Motors), Floor = Text(NotebookRole.Floor), State = FloorState.Of(Text(NotebookRole.State)),
                Load = load, Peak = peak, Sliding = sliding, Source = Text(NotebookRole.Source), Note = Text(NotebookRole.Note), LeftOut = left, Line = line,
            };
        }

        private bool Missing(string[] cells, NotebookRole role) => head.Of(role) is not { } c || Cell(cells, c).Length == 0;

        // A number in the column's unit, or one with its own: "420 gf"
        private bool Value(string cell, NotebookColumn c, out double si)
        {
            if (_numbers.TryNumber(cell, out double number))
            {
                si = number * c.Factor;
                return true;
            }

            bool isRead = Quantity.TryParse(cell, c.Role == NotebookRole.Mass ? Dimension.Mass : Dimension.Force, out Quantity q, out _, out _);
            si = q.Value;
            return isRead;
        }

        private static string Cell(string[] cells, NotebookColumn c) => c.Index < cells.Length ? cells[c.Index].Trim() : "";

        // what a spreadsheet must not take for a formula has an apostrophe before it
        private static string Bare(string text) => text is ['\'', '=' or '+' or '-' or '@', ..] ? text[1..] : text;
    }
}
