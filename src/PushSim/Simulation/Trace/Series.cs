using System.Collections;

namespace PushSim.Simulation;

/// <summary>One recorded series, a value at each of the times of its <see cref="Trace"/>. Who reads it cannot change it.</summary>
public sealed class Series : IReadOnlyList<double>
{
    private double[] _values;

    internal Series(string key, string unit, double[] values) => (Key, Unit, _values) = (key, unit, values);

    /// <summary>snake_case name with the SI unit as last part, e.g. "wheel_front_left_load_n"; used in CSV and JSON.</summary>
    public string Key { get; }

    /// <summary>SI unit as printed, e.g. "N".</summary>
    public string Unit { get; }

    /// <summary>Number of samples [1].</summary>
    public int Length => _values.Length;

    /// <summary>All values [<see cref="Unit"/>].</summary>
    public ReadOnlySpan<double> Values => _values;

    int IReadOnlyCollection<double>.Count => _values.Length;

    /// <summary>The value of a sample [<see cref="Unit"/>].</summary>
    /// <param name="index">Which sample, from 0 on [1].</param>
    public double this[int index] => _values[index];

    /// <summary>A copy of some of the values [<see cref="Unit"/>].</summary>
    /// <param name="start">The first sample [1].</param>
    /// <param name="length">How many [1].</param>
    public double[] Slice(int start, int length) => _values.AsSpan(start, length).ToArray();

    /// <summary>Mean over samples from..to, both included [<see cref="Unit"/>].</summary>
    /// <param name="from">The first sample [1].</param>
    /// <param name="to">The last sample [1].</param>
    public double Mean(int from, int to) => this[from..(to + 1)].Average();

    /// <summary>The first sample from one on whose value fits; -1 if there is none [1].</summary>
    /// <param name="match">What fits.</param>
    /// <param name="from">The sample to begin with [1].</param>
    public int FindIndex(Predicate<double> match, int from = 0) => Array.FindIndex(_values, from, match);

    /// <inheritdoc/>
    public IEnumerator<double> GetEnumerator() => ((IEnumerable<double>)_values).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    internal void Set(int index, double value) => _values[index] = value;

    internal void Cut(int length) => Array.Resize(ref _values, length);
}
