namespace PushSim.Scenarios.Logs;

/// <summary>The numbers of one row at a time, each in SI.</summary>
internal sealed class LogValues
{
    private readonly LogHead _head;
    private readonly LogCells _cells;
    private readonly LogOptions _options;
    private readonly int[] _slot;
    private readonly double[] _scale = new double[TraceStore.Slots];
    private readonly double[] _all = new double[TraceStore.Slots];

    /// <param name="head">The columns.</param>
    /// <param name="cells">How their cells are read.</param>
    /// <param name="options">What the user says about the log.</param>
    public LogValues(LogHead head, LogCells cells, LogOptions options)
    {
        (_head, _cells, _options) = (head, cells, options);
        _slot = [.. Enumerable.Repeat(-1, head.Columns.Count)];
        foreach (LogColumn c in head.Columns.Where(c => TraceStore.Slot(c.Role) >= 0))
        {
            _slot[c.Index] = TraceStore.Slot(c.Role);
            _scale[_slot[c.Index]] = c.Role == LogRole.Force ? head.Force?.Factor ?? double.NaN : c.Factor;
        }
    }

    /// <summary>The numbers of the row that was taken last, by <see cref="TraceStore.Slot"/>; NaN where a cell has none.</summary>
    public double[] All => _all;

    /// <summary>Takes the numbers of a row; false where the force is none.</summary>
    /// <param name="force">Column of the force.</param>
    /// <param name="row">The row.</param>
    public bool Take(LogColumn force, in LogRow row)
    {
        for (int i = 0; i < _slot.Length; i++)
        {
            if (_slot[i] < 0)
            {
                continue;
            }

            string cell = row.Cell(i);
            if (i == force.Index && _head.Unit is { } unit && LogColumn.ForceFactor(row.Cell(unit.Index)) is double named && double.IsFinite(named) && _cells.TryNumber(cell, out double own))
            {
                _all[_slot[i]] = _options.IsReversed ? -own * named : own * named;
            }
            else if (_cells.TryNumber(cell, out double v))
            {
                _all[_slot[i]] = v * _scale[_slot[i]];
            }
            else if (i == force.Index)
            {
                if (!_cells.TryWithUnit(cell, out double number, out string behind) || Factor(force, behind) is not double factor)
                {
                    return false;
                }

                _all[_slot[i]] = number * factor;
            }
            else
            {
                _all[_slot[i]] = double.NaN;
            }
        }

        return true;
    }

    // Newton per unit that stands behind a number of the force; null if it is none of force
    private double? Factor(LogColumn force, string unit)
    {
        double factor = unit == LogColumn.Millivolt ? _options.ForcePerMillivolt ?? double.NaN : LogColumn.ForceFactor(unit);
        return double.IsNaN(factor) ? null : unit == force.Unit ? force.Factor : _options.IsReversed ? -factor : factor;
    }
}
