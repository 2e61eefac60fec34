namespace PushSim.Numerics;

/// <summary>Carries the numbers of scalar equations into those of another number type, into all its lanes.</summary>
internal sealed class NumberCopy<T> : NumberWriter<T>
    where T : struct, IReal<T>
{
    /// <summary>Replaces all numbers.</summary>
    public void Carry(INumbers<T> to, INumbers<R1> from) => Write(to, new NumberReader().Read(from));

    protected override void Put(Span<T> numbers, ReadOnlySpan<double> values)
    {
        for (int i = 0; i < numbers.Length; i++)
        {
            numbers[i] = values[i];
        }
    }
}
