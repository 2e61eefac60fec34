using PushSim.Analysis.Fit;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Logs;

/// <summary>Collects the readings of a table, one row a pull.</summary>
internal sealed class LogReadings(LogCells cells, LogOptions options, LogProblems problems, Action<LogRow, LogColumn, string> complain)
{
    private const int MostReadings = 100_000;

    private readonly List<PullReading> _all = [];

    /// <summary>The readings.</summary>
    public IReadOnlyList<PullReading> All => _all;

    /// <summary>Rows without a force [1].</summary>
    public long Blank { get; private set; }

    /// <summary>Adds a row.</summary>
    public void Add(LogHead head, in LogRow row, string? tyre)
    {
        int before = problems.All.Count;
        var reading = new PullReading(Value(row, head.Force, "force"), Value(row, head.Peak, "peak"), Value(row, head.Load, "load"))
        {
            Tyre = tyre,
            Line = row.Line,
            Pull = head.Pull is not null && cells.TryNumber(row.Cell(head.Pull.Index), out double number) ? number : null,
        };
        if (problems.All.Count > before)
        {
            return;
        }

        if (reading.Force is null && reading.Peak is null)
        {
            Blank++;
            return;
        }

        _all.Add(reading);
        if (_all.Count == MostReadings)
        {
            problems.Fatal(row.Line, 1, $"more than {MostReadings} readings without a time column", "a log needs a column of time, or " + options.Advice.Rate);
        }
    }

    /// <summary>Complains about samples of one log that stand there without a time: each would pass for a pull.</summary>
    public void CheckOrder(LogHead head)
    {
        if (head.Pull is not null || head.Peak is not null || head.Load is not null || _all.Count == 0)
        {
            return;
        }

        // rows of several tyres are sorted by tyre, and so alike; only slack then tells a log
        foreach (IGrouping<string?, PullReading> tyre in _all.GroupBy(r => r.Tyre))
        {
            double[] force = [.. tyre.Select(r => r.Force!.Value)];
            if (Neighbours.AreAlike(force) && (head.Tyre is null || Neighbours.HaveSlack(force)))
            {
                problems.Error(tyre.First().Line, 1, $"{force.Length} readings follow each other like one log, but no column is their time", options.Advice.Rate);
                return;
            }
        }
    }

    private double? Value(in LogRow row, LogColumn? column, string what)
    {
        string text = column is null ? "" : row.Cell(column.Index);
        if (text.Trim().Length == 0)
        {
            return null;
        }

        if (cells.TryNumber(text, out double v))
        {
            return v * column!.Factor;
        }

        // a person writes the unit into the cell
        if (Quantity.TryParse(text, Dimension.Force, out Quantity q, out _, out _))
        {
            return options.IsReversed ? -q.Value : q.Value;
        }

        if (cells.TryWithUnit(text, out v, out string unit) && LogColumn.ForceFactor(unit) is double factor && double.IsFinite(factor))
        {
            return (options.IsReversed && column!.Role != LogRole.Load ? -v : v) * factor;
        }

        complain(row, column!, what);
        return null;
    }
}
