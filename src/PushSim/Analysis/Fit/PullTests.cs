namespace PushSim.Analysis.Fit;

/// <summary>Traces and readings of pull tests by the name of their tyre, in the order in which the tyres first came.</summary>
public sealed class PullTests
{
    // Loads that differ by less are the same weighing [1].
    private const double SameLoad = 0.005;

    private readonly Dictionary<string, List<FoundTrace>> _traces = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<PullReading>> _readings = new(StringComparer.Ordinal);
    private readonly List<string> _names = [];

    /// <summary>Whether there are logs over time.</summary>
    public bool HasTraces => _traces.Count > 0;

    /// <summary>Whether each test tells the load on its tyres, so that none need be given.</summary>
    public bool HasOwnLoads => !HasTraces && AllReadings.All(r => r.Load > 0.0);

    // Steady and greatest forces of all pulls whose load is not known [N].
    private IEnumerable<double> Forces =>
    [
        .. _traces.Values.SelectMany(t => t).SelectMany(t => t.Pulls).SelectMany(p => new[] { p.Breakaway.Value, p.Plateau?.Value ?? 0.0 }),
        .. AllReadings.Where(r => !(r.Load > 0.0)).SelectMany(r => new[] { r.Force ?? 0.0, r.Peak ?? 0.0 }),
    ];

    private IEnumerable<PullReading> AllReadings => _readings.Values.SelectMany(r => r);

    /// <summary>Adds a log over time.</summary>
    /// <param name="tyre">Name of its tyre.</param>
    /// <param name="trace">What was found in it.</param>
    public void Add(string tyre, FoundTrace trace) => Add(_traces, tyre, trace);

    /// <summary>Adds a reading; one without a line stands in the order in which it comes.</summary>
    public void Add(string tyre, PullReading reading) => Add(_readings, tyre, reading.Line > 0 ? reading : reading with { Line = AllReadings.Count() + 1 });

    /// <summary>Readings whose own load, which counts, is another than this [1].</summary>
    /// <param name="load">A load [N].</param>
    public int ReadingsOfOtherLoad(double load) => AllReadings.Count(r => r.Load > 0.0 && Math.Abs(r.Load.Value - load) > SameLoad * load);

    /// <summary>A force so great that on a tether of its height the tyres under test leave the floor [N]; null if none does.</summary>
    /// <param name="load">Load on the tyres under test.</param>
    public double? ForceThatLifts(GripLoad load)
    {
        double most = Forces.DefaultIfEmpty(0.0).Max();
        return load.DependsOnHeight && load.LoadAt(most) <= 0.0 ? most : null;
    }

    /// <summary>Fits each tyre.</summary>
    /// <param name="load">Load on the tyres under test; a reading's own one counts before it.</param>
    /// <param name="stall">The motors' force; null if nothing is known of them.</param>
    /// <param name="isDrag">Whether the robot was dragged with its wheels locked.</param>
    /// <param name="isOneTable">Whether all readings stand in one table; between tables no order is known.</param>
    /// <param name="cancel">Stops the work.</param>
    public IReadOnlyList<TyreFit> Fit(GripLoad load, StallForce? stall = null, bool isDrag = false, bool isOneTable = true, CancellationToken cancel = default)
    {
        // readings of one table stand in the order of its numbers of pulls, or of its rows
        bool hasOrder = isOneTable && !HasTraces;
        bool isNumbered = hasOrder && AllReadings.All(r => r.Pull is not null);
        List<TyreFit> fits = [];
        foreach (string name in _names)
        {
            cancel.ThrowIfCancellationRequested();
            if (_traces.TryGetValue(name, out List<FoundTrace>? logs))
            {
                fits.Add(PullFit.OfTraces(name, logs, load, stall, isDrag));
                continue;
            }

            List<PullReading> readings = isNumbered ? Ordered(_readings[name]) : _readings[name];
            double[] order = [.. hasOrder ? readings.Where(r => r.Force is not null).Select(r => r.Pull ?? r.Line) : []];
            fits.Add(PullFit.OfReadings(name, readings, load, stall, isDrag) with { Order = order });
        }

        return fits;
    }

    private static List<PullReading> Ordered(List<PullReading> readings)
    {
        List<PullReading> ordered = [.. readings];
        ordered.Sort((a, b) => a.Pull!.Value.CompareTo(b.Pull!.Value));
        return ordered;
    }

    private void Add<T>(Dictionary<string, List<T>> sorted, string name, T item)
    {
        if (!sorted.TryGetValue(name, out List<T>? list))
        {
            sorted.Add(name, list = []);
        }

        list.Add(item);
        if (!_names.Contains(name))
        {
            _names.Add(name);
        }
    }
}
