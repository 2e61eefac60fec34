using System.Diagnostics;
using System.Globalization;

namespace PushSim.Cli;

/// <summary>How far a map is: a line with the time left on a terminal, a plain line now and then elsewhere. Called from several threads.</summary>
internal sealed class MapProgress(TextWriter error, int rows)
{
    // A map that takes less says nothing where no one watches [s].
    private const double Quiet = 10.0;

    private readonly Lock _lock = new();
    private readonly long _start = Stopwatch.GetTimestamp();
    private readonly bool _isTerminal = ReferenceEquals(error, Console.Error) && !Console.IsErrorRedirected;
    private double _said;
    private int _done;
    private int _width;

    public void RowDone()
    {
        lock (_lock)
        {
            _done++;
            double elapsed = Stopwatch.GetElapsedTime(_start).TotalSeconds;
            string line = string.Create(CultureInfo.InvariantCulture, $"map: {100.0 * _done / rows:0} %, {elapsed * (rows - _done) / _done:0} s left");
            if (_isTerminal)
            {
                error.Write("\r" + line.PadRight(_width));
                _width = line.Length;
            }
            else if (elapsed - _said > Quiet)
            {
                error.WriteLine(line);
                _said = elapsed;
            }
        }
    }

    public void Clear()
    {
        if (_isTerminal)
        {
            error.Write("\r" + new string(' ', _width) + "\r");
        }
    }
}
