namespace PushSim.Cli.Shared;

/// <summary>Writes what is wrong in files: place, message, source line with a caret, advice.</summary>
internal static class ProblemWriter
{
    // Further lines of one cause that are named [1].
    private const int MostLines = 10;

    /// <summary>Writes them; the exit code of what stands in the way, null if nothing does.</summary>
    public static int? Tell(TextWriter writer, IReadOnlyCollection<Problem> problems, bool cannotRead)
    {
        Write(writer, problems);
        return Code(problems, cannotRead);
    }

    /// <summary>The exit code of what stands in the way, null if nothing does; what is wrong with the command line alone is no wrong file.</summary>
    public static int? Code(IEnumerable<Problem> problems, bool cannotRead)
    {
        Problem[] errors = [.. problems.Where(p => p.Severity == Severity.Error)];
        return cannotRead ? ExitCode.CannotReadOrWrite
            : errors.Length == 0 ? null
            : Array.TrueForAll(errors, p => p.File == ReadOptions.CommandLine) ? ExitCode.WrongCommandLine : ExitCode.WrongInput;
    }

    public static void Write(TextWriter writer, IEnumerable<Problem> problems)
    {
        // a file that both robots use is read twice, and complained about once; one cause in several lines is one complaint
        foreach (Problem[] same in problems.Distinct().GroupBy(p => (p.File, p.Severity, p.Message, p.Help)).Select(g => g.ToArray()))
        {
            Problem p = same[0];
            writer.WriteLine(PlainText.Of(p.ToString()));
            if (p.SourceLine.Length > 0)
            {
                writer.WriteLine("  " + PlainText.Of(p.SourceLine));
                writer.WriteLine("  " + new string(' ', Math.Max(0, p.Column - 1)) + new string('^', Math.Max(1, p.Length)));
            }

            if (same.Length > 1)
            {
                writer.WriteLine($"  also {(same.Length == 2 ? "line" : "lines")} {string.Join(", ", same.Skip(1).Take(MostLines).Select(q => q.Line))}{(same.Length > MostLines + 1 ? ", ..." : "")}");
            }

            if (p.Help.Length > 0)
            {
                writer.WriteLine("  advice: " + PlainText.Of(p.Help));
            }
        }
    }
}
