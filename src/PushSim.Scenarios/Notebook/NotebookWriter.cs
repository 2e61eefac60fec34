using System.Text;
using CsvHelper;
using PushSim.Files;
using PushSim.Scenarios.Logs;

namespace PushSim.Scenarios.Notebook;

/// <summary>
/// Adds pulls to a notebook. Nothing that stands in it is ever changed: a row is added to its end, in one write that is on the disk before the call returns, in the separator, decimal sign,
/// units, column order and line ends that the file has by now. A row that a fall of the machine cut off is closed and marked as left out.
/// </summary>
public static class NotebookWriter
{
    private const string CutOff = "cut off while it was written";

    /// <summary>The head of a new notebook.</summary>
    /// <param name="separator">Between cells.</param>
    public static string HeadLine(char separator) => string.Join(separator, NotebookColumn.All.Select(c => c.Head));

    /// <summary>Adds a pull; a notebook that is not there is begun. Throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/> where the disk refuses.</summary>
    /// <param name="path">The notebook.</param>
    /// <param name="row">The pull.</param>
    /// <param name="ask">Who asks for the lock, under which several commands add to one notebook.</param>
    /// <returns>What stands against it, with its place; empty: the row is on the disk.</returns>
    public static IReadOnlyList<Problem> Append(string path, PullRow row, LockAsk ask)
    {
        string full = Path.GetFullPath(path);
        string folder = Path.GetDirectoryName(full)!;
        Disk.MakeFolders(folder);
        using HeldLock held = HeldLock.Take(Path.Combine(folder, $".{Path.GetFileName(full)}.pushsim-lock"), ask);
        if (Disk.Look(full) == PathKind.None)
        {
            NotebookHead own = NotebookHead.Of(HeadLine(','))!;
            WriteGate.Create(full, s => s.Write(Encoding.UTF8.GetBytes(HeadLine(',') + "\n" + Line(own, row, isComma: false))), isSynced: true);
            return [];
        }

        string name = SourceFile.Clean(path);
        if (NotebookReader.Text(full) is not string text)
        {
            return [new Problem(name, 0, 0, Severity.Error, "the notebook is too long, or no file", "begin a new one and keep this one under another name")];
        }

        // an empty file is begun like one that is not there
        bool isBlank = text.Trim('\uFEFF', ' ', '\r', '\n').Length == 0;
        if ((isBlank ? NotebookHead.Of(HeadLine(',')) : NotebookHead.Of(text)) is not NotebookHead head)
        {
            return [new Problem(name, 0, 0, Severity.Error, "the notebook has no head", "its first row names the columns: " + HeadLine(','))];
        }

        if (Lacks(head, row) is { } lack)
        {
            return [new Problem(name, head.Line, 1, Severity.Error, $"the notebook has no column \"{NotebookColumn.HeadOf(lack)}\", which this pull needs", "add it to the first row; nothing else needs to change")];
        }

        bool isComma = head.Format.HasDecimalComma || (head.Format.Separator == ';' && !HasDecimalPoints(text, head));
        string added = (isBlank ? (text.Length > 0 && text[^1] is not '\n' and not '\uFEFF' ? "\n" : "") + HeadLine(',') + "\n" : Closed(text, head)) + Line(head, row, isComma);
        using WatchedStream file = WriteGate.Append(full);
        file.Write(Encoding.UTF8.GetBytes(added));
        file.Sync();
        return [];
    }

    // A column that a file has not and that the row has something for.
    private static NotebookRole? Lacks(NotebookHead head, PullRow row)
    {
        foreach ((string _, NotebookRole role, string[] _) in NotebookColumn.All)
        {
            NotebookColumn? column = head.Of(role);
            if ((column is null || double.IsNaN(column.Factor)) && Cell(role, row, 1.0, isComma: false).Length > 0)
            {
                return role;
            }
        }

        return null;
    }

    // What ends the last line, if it has no end; a row with too few cells or an open quotation mark was cut off.
    private static string Closed(string text, NotebookHead head)
    {
        if (text[^1] == '\n')
        {
            return "";
        }

        string last = text[(text.LastIndexOf('\n') + 1)..];
        bool isOpen = last.Count(c => c == '"') % 2 == 1;
        using CsvParser parser = NotebookHead.Parser(new StringReader(last + (isOpen ? "\"" : "")), head.Format);
        int cells = parser.Read() ? parser.Count : 0;
        bool isCut = text.Contains('\n', StringComparison.Ordinal) && (isOpen || cells < head.Columns.Count) && last.Trim().Length > 0 && !NotebookHead.IsRemark([last]);
        if (!isCut || head.Of(NotebookRole.LeftOut) is not { } left)
        {
            return (isOpen ? "\"" : "") + head.LineEnd;
        }

        return (isOpen ? "\"" : "") + (cells <= left.Index ? new string(head.Format.Separator, left.Index - cells + 1) : "") + (cells <= left.Index ? CutOff : "") + head.LineEnd;
    }

    private static string Line(NotebookHead head, PullRow row, bool isComma)
    {
        IEnumerable<string> cells = head.Columns.Select(c => c.Role is { } role ? Quoted(Cell(role, row, c.Factor, isComma), head.Format.Separator) : "");
        return string.Join(head.Format.Separator, cells) + head.LineEnd;
    }

    private static string Cell(NotebookRole role, PullRow row, double factor, bool isComma)
    {
        return role switch
        {
            NotebookRole.When => row.When is { } w ? NotebookDates.Text(w) : "",
            NotebookRole.Tyre => Safe(row.Tyre),
            NotebookRole.Robot => Safe(row.Robot),
            NotebookRole.Mass => Number(row.Mass),
            NotebookRole.Motors => Safe(row.Motors),
            NotebookRole.Floor => Safe(row.Floor),
            NotebookRole.State => Safe(row.State.ToString()),
            NotebookRole.Load => Number(row.Load),
            NotebookRole.Peak => Number(row.Peak),
            NotebookRole.Sliding => Number(row.Sliding),
            NotebookRole.Source => Safe(row.Source),
            NotebookRole.Note => Safe(row.Note),
            _ => Safe(row.LeftOut),
        };

        string Number(double? si)
        {
            string text = si is double v ? (v / factor).ToString("G6", CultureInfo.InvariantCulture) : "";
            return isComma ? text.Replace('.', ',') : text;
        }
    }

    // one line, no formula
    private static string Safe(string text)
    {
        string one = SourceFile.Clean(text, LogRows.LongestCell / 2).Trim();
        return one is ['=' or '+' or '-' or '@', ..] ? "'" + one : one;
    }

    private static string Quoted(string cell, char separator) => cell.Contains(separator) || cell.Contains('"') || cell.StartsWith('#') ? "\"" + cell.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : cell;

    private static bool HasDecimalPoints(string text, NotebookHead head)
    {
        using CsvParser parser = NotebookHead.Parser(new StringReader(text.TrimStart('\uFEFF')), head.Format);
        while (parser.Read())
        {
            if (parser.RawRow > head.Line && head.Columns.Any(c => c.Role is { } r && NotebookColumn.IsQuantity(r) && c.Index < parser.Count && parser[c.Index].Contains('.')))
            {
                return true;
            }
        }

        return false;
    }
}
