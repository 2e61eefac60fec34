using System.Diagnostics;

namespace PushSim.Cli.Bench;

/// <summary>What a person sees while a bench listens: on a terminal a strip that is drawn over itself with what happened above it, elsewhere a plain line now and then.</summary>
/// <param name="error">Where to.</param>
/// <param name="isQuiet">Whether nothing is shown but what must be.</param>
internal sealed class BenchScreen(TextWriter error, bool isQuiet)
{
    private const double TerminalSeconds = 0.1;
    private const double PlainSeconds = 10.0;
    private const int Columns = 72;
    private const int Rows = 5;
    private const double Shown = 12.0;

    private readonly bool _isTerminal = !isQuiet && !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") is not (null or "dumb");
    private readonly TraceStrip _strip = new(Columns, Rows, Shown);
    private readonly long _start = Stopwatch.GetTimestamp();
    private double _next;
    private int _drawn;

    /// <summary>Takes a reading.</summary>
    public void Add(double time, double force) => _strip.Add(time, force);

    /// <summary>Tells something at once.</summary>
    /// <param name="text">A sentence without end.</param>
    /// <param name="isNeeded">Whether it is told when quiet too.</param>
    public void Say(string text, bool isNeeded = false)
    {
        if (isQuiet && !isNeeded)
        {
            return;
        }

        Clear();
        foreach (string line in WrappedText.Lines("", "  ", PlainText.Of(text)))
        {
            error.WriteLine(line);
        }

        error.Flush();
    }

    /// <summary>Draws, if it is time to.</summary>
    /// <param name="force">The last force [N]; NaN while there is none.</param>
    /// <param name="words">How it stands, in a few words.</param>
    public void Refresh(double force, string words)
    {
        double seconds = Stopwatch.GetElapsedTime(_start).TotalSeconds;
        if (isQuiet || seconds < _next)
        {
            return;
        }

        bool isFirst = _next == 0.0;
        _next = seconds + (_isTerminal ? TerminalSeconds : PlainSeconds);
        string now = double.IsNaN(force) ? words : $"{ForceWords.Both(force)}, {words}";
        if (!_isTerminal)
        {
            if (!isFirst)
            {
                error.WriteLine(now);
            }

            return;
        }

        Clear();
        IReadOnlyList<string> rows = _strip.Draw();
        string top = FormattableString.Invariant($"{_strip.Scale:0.##} N");
        for (int i = 0; i < rows.Count; i++)
        {
            error.WriteLine(rows[i] + (i == 0 ? " " + top : ""));
        }

        error.WriteLine(now.Length < Columns ? now : now[..Columns]);
        error.Flush();
        _drawn = rows.Count + 1;
    }

    /// <summary>Takes the strip off the terminal.</summary>
    public void Clear()
    {
        if (_drawn > 0)
        {
            // up so many lines, and clear from there to the end of the screen (ECMA-48, CUU and ED)
            error.Write(FormattableString.Invariant($"\u001b[{_drawn}A\u001b[0J"));
            _drawn = 0;
        }
    }
}
