using System.Runtime.InteropServices;

namespace PushSim.Numerics;

/// <summary>Lists the numbers of scalar equations, in the order of <see cref="INumbers{T}.Show"/>.</summary>
internal sealed class NumberReader : NumberWalk<R1>
{
    private double[] _values = new double[256];
    private int _count;

    /// <summary>The numbers of equations [unit of their use]; good until the next call.</summary>
    public ReadOnlySpan<double> Read(INumbers<R1> from)
    {
        _count = 0;
        from.Show(this);
        return _values.AsSpan(0, _count);
    }

    public override void Take(Span<R1> numbers)
    {
        if (_count + numbers.Length > _values.Length)
        {
            Array.Resize(ref _values, 2 * (_count + numbers.Length));
        }

        MemoryMarshal.Cast<R1, double>(numbers).CopyTo(_values.AsSpan(_count));
        _count += numbers.Length;
    }
}
