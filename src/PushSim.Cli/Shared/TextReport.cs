using Spectre.Console;

namespace PushSim.Cli.Shared;

/// <summary>What the text of every command has: a console, tables, cautions, the files written.</summary>
internal static class TextReport
{
    private const int PlainWidth = 100;

    /// <summary>Whether the command line asks for no colour.</summary>
    public static bool HasNoColour { get; set; }

    /// <summary>A whole report: question if there is one, verdict, tables, warnings, notes, what is printed smaller (estimates, how it was computed), cautions, files.</summary>
    public static void Write(
        TextWriter output, string verdict, IEnumerable<AnswerTable> tables, IEnumerable<string> warnings, IEnumerable<string> notes, IEnumerable<string> asides, IEnumerable<string> files,
        string question = "", IEnumerable<Suggestion>? suggestions = null)
    {
        WriteHead(output, verdict, question);
        WriteRest(output, tables, warnings, notes, asides, files, suggestions);
    }

    /// <summary>Its head: question if there is one, and verdict.</summary>
    public static void WriteHead(TextWriter output, string verdict, string question = "")
    {
        IAnsiConsole console = Console(output);
        if (question.Length > 0)
        {
            Line(console, question, Decoration.Dim);
        }

        Line(console, verdict, Decoration.Bold);
        output.Flush();
    }

    /// <summary>All that stands below the head.</summary>
    public static void WriteRest(
        TextWriter output, IEnumerable<AnswerTable> tables, IEnumerable<string> warnings, IEnumerable<string> notes, IEnumerable<string> asides, IEnumerable<string> files, IEnumerable<Suggestion>? suggestions = null)
    {
        IAnsiConsole console = Console(output);
        console.WriteLine();
        foreach (AnswerTable table in tables)
        {
            Write(console, table);
        }

        foreach (string line in warnings.Select(w => "warning: " + w).Concat(notes))
        {
            Line(console, line);
        }

        foreach (string line in asides.Append(Cautions.OfPredictions))
        {
            Line(console, line, Decoration.Dim);
        }

        foreach (Suggestion s in suggestions ?? [])
        {
            output.WriteLine(Of(s));
        }

        WriteFiles(output, files);
    }

    /// <summary>A command that tells more, on a line that is not wrapped: it is there to be pasted.</summary>
    public static string Of(Suggestion s) => $"{s.Tells}: {PlainText.Of(s.Line)}";

    /// <summary>Writes a table and its remarks on the terminal.</summary>
    public static void Write(IAnsiConsole console, AnswerTable table)
    {
        if (table.Rows.Count > 0)
        {
            ScreenTable.Write(console, table);
        }

        foreach ((string text, bool isAside) in table.Remarks)
        {
            Line(console, text, isAside ? Decoration.Dim : Decoration.None);
        }
    }

    /// <summary>Writes a line as it stands: no marks of style or pictures are looked for in it.</summary>
    public static void Line(IAnsiConsole console, string text, Decoration decoration = Decoration.None) =>
        console.Write(new Text(PlainText.Of(text) + Environment.NewLine, new Style(decoration: decoration)));

    /// <summary>A text broken at the width of answer cards.</summary>
    public static void Wrapped(IAnsiConsole console, string text, Decoration decoration = Decoration.None)
    {
        foreach (string line in WrappedText.Lines("", "  ", text))
        {
            Line(console, line, decoration);
        }
    }

    /// <summary>A console on a writer; colour only on a terminal that wants it.</summary>
    public static IAnsiConsole Console(TextWriter output)
    {
        bool isTerminal = ReferenceEquals(output, System.Console.Out) && !System.Console.IsOutputRedirected;
        bool hasColour = isTerminal && !HasNoColour && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) && Environment.GetEnvironmentVariable("TERM") != "dumb";
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = hasColour ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = hasColour ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Out = new AnsiConsoleOutput(hasColour ? output : new TrimmedWriter(output)),
            Interactive = InteractionSupport.No,
        });
        if (!isTerminal)
        {
            console.Profile.Width = PlainWidth;
        }

        return console;
    }

    /// <summary>Names the files that were written, straight to the writer: a path must not be wrapped.</summary>
    public static void WriteFiles(TextWriter output, IEnumerable<string> files)
    {
        foreach (string file in files)
        {
            output.WriteLine("wrote " + file);
        }
    }
}
