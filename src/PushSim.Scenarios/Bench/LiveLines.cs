using PushSim.Scenarios.Logs;

namespace PushSim.Scenarios.Bench;

/// <summary>Reads lines as they come, by the rules that read a whole log: the first ones tell the layout, and so do later ones if most of a while were strays.</summary>
internal sealed class LiveLines(LogOptions options, Action<LogSample> sample)
{
    // The layout is told by so many lines with a number in them, or by fewer after so long, or by what there is when nothing helps [1], [s].
    private const int Enough = 12;
    private const int Fewest = 3;
    private const double Patience = 1.0;
    private const int TooMany = 200;

    // After so many strays in a row the layout has changed [1].
    private const int Changed = 40;

    private readonly List<(string Line, int Number)> _first = [];
    private LogRows? _rows;
    private int _withNumber;
    private int _inARow;
    private double _since = double.NaN;

    /// <summary>Whether lines have a time of their own, not only that of their arrival.</summary>
    public bool HasOwnTime => _rows?.HasOwnTime ?? false;

    /// <summary>What is wrong; null if nothing is.</summary>
    public Problem? Problem => _rows?.Problems.FirstOrDefault(p => p.Severity == Severity.Error);

    /// <summary>Takes a line with the time of its arrival before it.</summary>
    /// <param name="line">The line.</param>
    /// <param name="number">Its number from 1.</param>
    /// <param name="arrival">Time of its arrival [s].</param>
    /// <returns>Whether it is a stray; never while the layout is not known.</returns>
    public bool Take(string line, int number, double arrival)
    {
        if (_rows is { } rows)
        {
            long before = rows.Strays;
            rows.Take(line, number);
            bool isStray = rows.Strays > before;
            _inARow = isStray ? _inARow + 1 : 0;
            if (_inARow >= Changed)
            {
                (_rows, _inARow, _since, _withNumber) = (null, 0, double.NaN, 0);
            }

            return isStray;
        }

        _since = double.IsNaN(_since) ? arrival : _since;
        _first.Add((line, number));
        string body = LogStamp.TryTake(line, out _, out string own) ? own : line;
        _withNumber += body.Any(char.IsAsciiDigit) ? 1 : 0;
        if (_withNumber >= Enough || (_withNumber >= Fewest && arrival - _since > Patience) || _first.Count >= TooMany)
        {
            Begin();
        }

        return false;
    }

    /// <summary>No more lines come.</summary>
    public void Finish()
    {
        if (_rows is null && _withNumber > 0)
        {
            Begin();
        }
    }

    private void Begin()
    {
        _rows = new LogRows("the lines", LogFormat.Of(string.Join('\n', _first.Select(f => f.Line)), isWhole: true), options, sample);
        foreach ((string line, int number) in _first)
        {
            _rows.Take(line, number);
        }

        _first.Clear();
        _rows.Settle();
    }
}
