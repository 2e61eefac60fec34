namespace PushSim.Numerics;

/// <summary>Carries the numbers of scalar equations into one lane of equations of the same shape.</summary>
internal sealed class LaneNumbers<T> : NumberWriter<T>
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly NumberReader _reader = new();
    private int _lane;

    /// <summary>Replaces one lane of all numbers.</summary>
    /// <param name="to">The lanes.</param>
    /// <param name="lane">Index of the lane [1].</param>
    /// <param name="from">The scalar equations.</param>
    public void Carry(INumbers<T> to, int lane, INumbers<R1> from) => Write(to, lane, _reader.Read(from));

    /// <summary>Replaces one lane of all numbers by a list of them, in the order of <see cref="INumbers{T}.Show"/>.</summary>
    public void Write(INumbers<T> to, int lane, ReadOnlySpan<double> values)
    {
        _lane = lane;
        Write(to, values);
    }

    protected override void Put(Span<T> numbers, ReadOnlySpan<double> values)
    {
        for (int i = 0; i < numbers.Length; i++)
        {
            Lane.Set(ref numbers[i], _lane, values[i]);
        }
    }
}
