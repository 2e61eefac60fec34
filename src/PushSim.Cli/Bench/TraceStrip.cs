namespace PushSim.Cli.Bench;

/// <summary>The last seconds of a force as a strip of block signs, in fixed memory: each column the greatest force of its share of the time.</summary>
/// <param name="columns">Columns [1].</param>
/// <param name="rows">Rows [1].</param>
/// <param name="seconds">Time that they show [s].</param>
internal sealed class TraceStrip(int columns, int rows, double seconds)
{
    private const string Blocks = " ▁▂▃▄▅▆▇█";

    // The scale is never finer than this [N].
    private const double LeastScale = 0.1;

    private readonly double[] _most = [.. Enumerable.Repeat(double.NaN, columns)];
    private long _last = long.MinValue;

    /// <summary>Force at the top [N].</summary>
    public double Scale => Math.Max(LeastScale, Rounded(_most.Where(double.IsFinite).DefaultIfEmpty(0.0).Max()));

    /// <summary>Takes a reading.</summary>
    public void Add(double time, double force)
    {
        long column = (long)Math.Floor(time * columns / seconds);
        for (long c = Math.Max(_last + 1, column - columns + 1); c <= column && _last < column; c++)
        {
            _most[Index(c)] = double.NaN;
        }

        _last = Math.Max(_last, column);
        double before = _most[Index(_last)];
        _most[Index(_last)] = double.IsNaN(before) ? force : Math.Max(before, force);
    }

    /// <summary>The rows from the top; a gap is blank.</summary>
    public IReadOnlyList<string> Draw()
    {
        double scale = Scale;
        List<string> lines = [];
        for (int row = rows - 1; row >= 0; row--)
        {
            lines.Add(string.Concat(Enumerable.Range(0, columns).Select(k =>
            {
                double f = _last == long.MinValue ? double.NaN : _most[Index(_last - columns + 1 + k)];
                double eighths = double.IsNaN(f) ? 0.0 : (Math.Max(0.0, f / scale) * rows * 8.0) - (row * 8.0);
                return Blocks[(int)Math.Clamp(row == 0 && !double.IsNaN(f) ? Math.Max(1.0, eighths) : eighths, 0.0, 8.0)];
            })));
        }

        return lines;
    }

    private int Index(long column) => (int)(((column % columns) + columns) % columns);

    // up to 1, 2 or 5 times a power of ten
    private static double Rounded(double value)
    {
        if (value <= 0.0)
        {
            return 0.0;
        }

        double power = Math.Pow(10.0, Math.Floor(Math.Log10(value)));
        return power * (value <= power ? 1.0 : value <= 2.0 * power ? 2.0 : value <= 5.0 * power ? 5.0 : 10.0);
    }
}
