namespace PushSim.Scenarios.Logs;

/// <summary>Gathers what is wrong with a log, and tells when reading on would help nobody.</summary>
internal sealed class LogProblems(string name)
{
    // Complaints after which reading stops [1].
    private const int MostErrors = 10;

    private readonly List<Problem> _all = [];

    public IReadOnlyList<Problem> All => _all;

    /// <summary>True once nothing further is to be read.</summary>
    public bool IsStopped { get; private set; }

    public void Error(int line, int column, string message, string help, string raw = "", int length = 1)
    {
        _all.Add(new Problem(name, line, column, Severity.Error, message, help) { SourceLine = SourceFile.Clean(raw.TrimEnd('\r', '\n')), Length = length });
        IsStopped |= _all.Count >= MostErrors;
    }

    /// <summary>An error without which nothing below can be understood.</summary>
    public void Fatal(int line, int column, string message, string help, string raw = "")
    {
        Error(line, column, message, help, raw);
        IsStopped = true;
    }
}
