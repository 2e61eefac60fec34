using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PushSim.Numerics;

/// <summary>Sees the numbers of equations one run of them after the other; see <see cref="INumbers{T}"/>.</summary>
internal abstract class NumberWalk<T>
    where T : struct, IReal<T>
{
    /// <summary>The next numbers.</summary>
    public abstract void Take(Span<T> numbers);

    /// <summary>The next numbers, those of a struct that holds nothing else.</summary>
    public void Take<TGroup>(ref TGroup group)
        where TGroup : struct => Take(Numbers(MemoryMarshal.CreateSpan(ref group, 1)));

    /// <summary>The next numbers, those of structs that hold nothing else.</summary>
    public void Take<TGroup>(TGroup[] groups)
        where TGroup : struct => Take(Numbers(groups.AsSpan()));

    private static Span<T> Numbers<TGroup>(Span<TGroup> groups)
        where TGroup : struct => Unsafe.SizeOf<TGroup>() % Unsafe.SizeOf<T>() == 0
            ? MemoryMarshal.Cast<TGroup, T>(groups) : throw new InvalidOperationException($"{typeof(TGroup)} holds more than numbers");
}
