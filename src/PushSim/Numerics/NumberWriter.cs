namespace PushSim.Numerics;

/// <summary>Replaces all numbers of equations by those of a list, in the order of <see cref="INumbers{T}.Show"/>. What is no number stays.</summary>
internal abstract class NumberWriter<T> : NumberWalk<T>
    where T : struct, IReal<T>
{
    private double[] _values = [];
    private int _next;

    /// <summary>Replaces them.</summary>
    /// <param name="to">The equations.</param>
    /// <param name="values">As many numbers [unit of their use].</param>
    /// <exception cref="ArgumentException">The equations have another shape: they hold more numbers, or fewer.</exception>
    public void Write(INumbers<T> to, ReadOnlySpan<double> values)
    {
        if (_values.Length < values.Length)
        {
            _values = new double[values.Length];
        }

        values.CopyTo(_values);
        _next = 0;
        to.Show(this);
        if (_next != values.Length)
        {
            throw new ArgumentException($"{values.Length} numbers for {_next} places", nameof(values));
        }
    }

    public sealed override void Take(Span<T> numbers)
    {
        Put(numbers, _values.AsSpan(_next, numbers.Length));
        _next += numbers.Length;
    }

    /// <summary>Replaces a run of numbers by as many values.</summary>
    protected abstract void Put(Span<T> numbers, ReadOnlySpan<double> values);
}
