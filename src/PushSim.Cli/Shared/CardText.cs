using Spectre.Console;

namespace PushSim.Cli.Shared;

/// <summary>An answer card on a terminal: never more lines than a small window has, whatever a robot brings up; what does not fit is told under --details.</summary>
internal sealed class CardText
{
    /// <summary>Lines that an answer takes at most [1].</summary>
    public const int MostLines = 24;

    // Lines of a question, of an answer, of any other paragraph and of a warning [1].
    private const int MostOfQuestion = 2;
    private const int MostOfAnswer = 4;
    private const int MostOfParagraph = 3;
    private const int LeastOfWarning = 2;
    private const int MostOfWarning = 4;

    // Lines that a caution and the files need [1].
    private const int Foot = 3;

    private const string Indent = "  ";
    private const string Cut = " …";
    private const string Warned = "warning: ";

    // lines that are kept for the commands
    private int _kept;

    private readonly TextWriter _output;
    private readonly IAnsiConsole _console;
    private int _lines;

    /// <param name="output">Where to.</param>
    public CardText(TextWriter output) => (_output, _console) = (output, CommandText.Console(output));

    /// <summary>Question and answer, as soon as they are known.</summary>
    public void WriteHead(string answer, string question = "")
    {
        if (question.Length > 0)
        {
            Paragraph(question, "", "", MostOfQuestion, Decoration.Dim);
        }

        Paragraph(answer, "", "", MostOfAnswer, Decoration.Bold);
        _output.Flush();
    }

    /// <summary>All that stands below the head.</summary>
    /// <param name="card">The card.</param>
    /// <param name="warnings">What to know before believing it.</param>
    /// <param name="files">Files that were written.</param>
    public void WriteRest(AnswerCard card, IReadOnlyList<string> warnings, IReadOnlyList<string> files)
    {
        _kept = card.Suggestions.Count;
        Paragraph(card.Facts, "", "", MostOfParagraph);
        Numbers(card.Numbers);
        Paragraph(card.Sure, "How sure: ", Indent, MostOfParagraph);
        Paragraph(card.Next, "Next: ", Indent, MostOfParagraph);
        foreach (Suggestion s in card.Suggestions)
        {
            _output.WriteLine(CommandText.Of(s));
            _lines++;
        }

        _kept = 0;
        Warnings(warnings);
        if (card.IsCautioned)
        {
            Line(Cautions.Short, Decoration.Dim);
        }

        Files(files, card.HasPage);
    }

    /// <summary>The whole card.</summary>
    public static void Write(TextWriter output, AnswerCard card, IReadOnlyList<string> warnings, IReadOnlyList<string> files, string question = "")
    {
        var text = new CardText(output);
        text.WriteHead(card.Answer, question);
        text.WriteRest(card, warnings, files);
    }

    // each in a line: what it is, the number, the same in another unit, since when
    private void Numbers(IReadOnlyList<CardNumber> numbers)
    {
        if (numbers.Count == 0)
        {
            return;
        }

        Line("");
        string[] values = [.. numbers.Select(n => n.Beside.Length == 0 ? n.Value : !char.IsAsciiDigit(n.Beside[0]) ? $"{n.Value} {n.Beside}" : $"{n.Value} ({n.Beside})")];
        int label = numbers.Max(n => n.Label.Length);

        // notes stand in a column, as wide as the values that have one
        int value = numbers.Zip(values).Where(n => n.First.Note.Length > 0).Select(n => n.Second.Length).DefaultIfEmpty().Max();
        foreach ((CardNumber n, string v) in numbers.Zip(values))
        {
            // clauses of a note that find no room, from the last on, are told under --details: half a number would be a wrong one
            string line = $"{Indent}{n.Label.PadRight(label)}{Indent}{v}";
            string[] clauses = n.Note.Length > 0 ? n.Note.Split("; ") : [];
            string[] notes = [.. Enumerable.Range(0, clauses.Length).Select(k => Indent + string.Join("; ", clauses[..(clauses.Length - k)]))];
            string column = $"{Indent}{n.Label.PadRight(label)}{Indent}{v.PadRight(value)}";
            string? noted = notes.Select(note => column + note).Concat(notes.Select(note => line + note)).FirstOrDefault(l => l.Length <= WrappedText.Width);
            Line(noted ?? Short(line));
        }

        Line("");
    }

    private void Warnings(IReadOnlyList<string> warnings)
    {
        for (int i = 0; i < warnings.Count; i++)
        {
            // a last line tells how many are left
            int room = MostLines - Foot - _kept - _lines - (i < warnings.Count - 1 ? 1 : 0);
            if (room < Math.Min(LeastOfWarning, Lines(warnings[i])))
            {
                Line($"{warnings.Count - i} {(i == 0 ? "" : "more ")}{(warnings.Count - i == 1 ? "warning" : "warnings")}: --details");
                return;
            }

            int most = Math.Min(MostOfWarning, room);
            Paragraph(Fitted(warnings[i], most), Warned, Indent, most);
        }
    }

    // a warning without room for all of it keeps its beginning and its last clause, which says what to do
    private static string Fitted(string warning, int lines)
    {
        int last = warning.LastIndexOf("; ", StringComparison.Ordinal);
        if (last < 0 || Lines(warning) <= lines)
        {
            return warning;
        }

        string[] words = warning[..last].Split(' ');
        string advice = Cut + ";" + warning[(last + 1)..];
        for (int n = words.Length - 1; n > 0; n--)
        {
            if (Lines(string.Join(' ', words[..n]) + advice) <= lines)
            {
                return string.Join(' ', words[..n]) + advice;
            }
        }

        return warning;
    }

    private static int Lines(string warning) => WrappedText.Lines(Warned, Indent, PlainText.Of(warning)).Count();

    private void Files(IReadOnlyList<string> files, bool hasPage)
    {
        if (files.Count == 0)
        {
            Line("More numbers: --details");
            return;
        }

        string? page = files.FirstOrDefault(f => f.EndsWith(".html", StringComparison.Ordinal));
        string? picture = files.FirstOrDefault(f => f.EndsWith(".png", StringComparison.Ordinal));
        string first = page ?? picture ?? files[0];
        int others = files.Count - 1;
        Link(page is not null ? "page: " : picture is not null ? "picture: " : "file: ", first);
        Line($"{(others == 0 ? "" : $"and {others} {(others == 1 ? "file" : "files")} beside it. ")}More numbers: --details{(page is null && hasPage ? ", a page: --report" : "")}");
    }

    private void Paragraph(string text, string first, string next, int most, Decoration decoration = Decoration.None)
    {
        if (text.Length == 0)
        {
            return;
        }

        int room = Math.Min(most, MostLines - Foot - _kept - _lines);
        string[] lines = Wrapped(text);
        while (lines.Length > room && LastSentence(text) is int end)
        {
            text = text[..end];
            lines = Wrapped(text);
        }

        string[] Wrapped(string whole) => [.. WrappedText.Lines(first, next, PlainText.Of(first.Length == 0 ? whole : Lower(whole)))];
        for (int i = 0; i < Math.Min(room, lines.Length); i++)
        {
            bool isCut = i == room - 1 && lines.Length > room;
            Line(isCut ? lines[i][..Math.Min(lines[i].Length, WrappedText.Width - Cut.Length)] + Cut : Short(lines[i]), decoration);
        }
    }

    // where the last sentence but the first begins; null where there is one alone, which is then cut
    private static int? LastSentence(string text) => text.LastIndexOf(". ", StringComparison.Ordinal) is int at and > 0 ? at + 1 : null;

    // after "How sure:" a sentence goes on; a name stays as it is, and so does what begins by several capitals
    private static string Lower(string text) => text.Length > 1 && char.IsUpper(text[0]) && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    private static string Short(string line) => line.Length <= WrappedText.Width ? line : line[..(WrappedText.Width - 1)] + "…";

    private void Line(string text, Decoration decoration = Decoration.None)
    {
        CommandText.Line(_console, text, decoration);
        _lines++;
    }

    // straight to the writer where there is no terminal: a path must not be wrapped
    private void Link(string before, string path)
    {
        string text = PlainText.Of(path);
        if (_console.Profile.Capabilities.Links)
        {
            _console.Write(new Text(before));
            _console.Write(new Markup($"[link={Markup.Escape(new Uri(Path.GetFullPath(path)).AbsoluteUri)}]{Markup.Escape(text)}[/]"));
            _console.WriteLine();
        }
        else
        {
            _output.WriteLine(before + text);
        }

        _lines++;
    }
}
