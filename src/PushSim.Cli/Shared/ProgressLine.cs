using System.Diagnostics;

namespace PushSim.Cli.Shared;

/// <summary>How far long work is: a bar that is drawn over itself on a terminal, a plain line now and then elsewhere. Calls come one at a time.
/// Without a total nobody knows how much is left.</summary>
internal sealed class ProgressLine(TextWriter error, string things, long total, bool isQuiet)
{
    private const double TerminalSeconds = 0.2;
    private const double PlainSeconds = 10.0;
    private const int BarWidth = 24;

    // The first few wait for the compiler and tell no rate [1].
    private const int LeastTold = 5;
    private const int UsualWidth = 80;

    private readonly bool _isTerminal = ReferenceEquals(error, Console.Error) && !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") != "dumb";
    private readonly long _start = Stopwatch.GetTimestamp();
    private double _next;
    private bool _hasBar;
    private bool _hasHead;

    /// <summary>Seconds from one plain line to the next, and before the first [s].</summary>
    public double PlainInterval { get; init; } = PlainSeconds;

    /// <summary>What is said once, before the first that is shown; empty if nothing is.</summary>
    public string Head { get; init; } = "";

    /// <summary>Whether the total is only the most that it may take.</summary>
    public bool IsMost { get; init; }

    /// <summary>Done since the start [1].</summary>
    public long Done { get; private set; }

    public double Seconds => Stopwatch.GetElapsedTime(_start).TotalSeconds;

    /// <summary>One more is done.</summary>
    public void Step() => StepTo(Done + 1);

    /// <summary>So many are done.</summary>
    public void StepTo(long done)
    {
        Done = done;
        double seconds = Seconds;
        double interval = _isTerminal ? TerminalSeconds : PlainInterval;
        _next = _next == 0.0 ? interval : _next;
        if (isQuiet || seconds < _next)
        {
            return;
        }

        if (Head.Length > 0 && !_hasHead)
        {
            error.WriteLine("pushsim: " + Head);
            _hasHead = true;
        }

        _next = seconds + interval;
        double rate = Done / seconds;
        string most = IsMost ? "at most " : "";
        string words = total <= 0 ? string.Create(CultureInfo.InvariantCulture, $"{Done} {things}, {rate:0.#} a second")
            : string.Create(CultureInfo.InvariantCulture, $"{Done} of {most}{total} {things}, {rate:0.#} a second{(Done < LeastTold ? "" : $", {most}{Left((total - Done) / rate)} left")}");
        if (!_isTerminal)
        {
            error.WriteLine("pushsim: " + words);
            return;
        }

        error.Write("\r" + Drawn(words, (double)Done / Math.Max(1, total), Width));
        _hasBar = true;
    }

    /// <summary>Takes the bar off the terminal.</summary>
    public void End()
    {
        if (_hasBar)
        {
            error.Write("\r" + new string(' ', Width - 1) + "\r");
        }
    }

    /// <summary>What is drawn, as wide as the terminal but for one column, so that the next one covers it: the bar only where there is room for it.</summary>
    /// <param name="words">How far it is.</param>
    /// <param name="share">The same as a share [1].</param>
    /// <param name="width">Columns of the terminal [1].</param>
    internal static string Drawn(string words, double share, int width)
    {
        int filled = (int)(BarWidth * Math.Min(1.0, share));
        string bar = $"[{new string('#', filled)}{new string('.', BarWidth - filled)}] ";
        string text = bar.Length + words.Length < width ? bar + words : words;
        return text[..Math.Min(text.Length, width - 1)].PadRight(width - 1);
    }

    private static int Width
    {
        get
        {
            try
            {
                return Console.WindowWidth > 1 ? Console.WindowWidth : UsualWidth;
            }
            catch (IOException)
            {
                return UsualWidth;
            }
        }
    }

    private static string Left(double seconds) => seconds < 90.0
        ? string.Create(CultureInfo.InvariantCulture, $"{seconds:0} s")
        : string.Create(CultureInfo.InvariantCulture, $"{seconds / 60.0:0} min");
}
