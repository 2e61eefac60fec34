namespace PushSim.Scenarios.Logs;

/// <summary>Lines of a log that are no readings: what a board prints in between, a line that the cable garbled. A few are skipped and named, many are a wrong log.</summary>
internal sealed class LogStrays
{
    /// <summary>Share of the rows that may be skipped [1].</summary>
    public const double Share = 0.01;

    // Shown one by one [1].
    private const int MostNamed = 3;
    private const int MostKept = 10;

    // With so many, and so large a share, nothing below helps [1].
    private const int Hopeless = 200;
    private const double HopelessShare = 0.2;

    private readonly List<(int Line, string Raw, Action Complain)> _kept = [];

    /// <summary>Lines so far [1].</summary>
    public long Count { get; private set; }

    /// <summary>Adds one.</summary>
    /// <param name="line">Its number.</param>
    /// <param name="raw">What it says.</param>
    /// <param name="complain">What to do about it if there are too many.</param>
    public void Add(int line, string raw, Action complain)
    {
        Count++;
        if (_kept.Count < MostKept)
        {
            _kept.Add((line, raw, complain));
        }
    }

    /// <summary>Whether reading on is of no use.</summary>
    /// <param name="rows">Rows that are readings [1].</param>
    public bool IsHopeless(long rows) => Count >= Hopeless && Count > HopelessShare * rows;

    /// <summary>Names what was skipped, or complains.</summary>
    /// <param name="rows">Rows that are readings [1].</param>
    /// <param name="notes">What a user should know.</param>
    public void Tell(long rows, List<string> notes)
    {
        if (Count == 0)
        {
            return;
        }

        if (Count > Share * rows)
        {
            _kept.ForEach(k => k.Complain());
            return;
        }

        IEnumerable<string> named = _kept.Take(MostNamed).Select(k => $"line {k.Line} \"{SourceFile.Clean(k.Raw.Trim(), 30)}\"");
        string more = Count > MostNamed ? $" and {Count - MostNamed} more" : "";
        notes.Add($"skipped, no {(Count == 1 ? "reading" : "readings")}: {string.Join(", ", named)}{more}");
    }
}
