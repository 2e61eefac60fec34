using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PushSim.Numerics;

/// <summary>Arrays whose first element stands on a cache line, so that no wide vector in them straddles two.</summary>
internal static class Aligned
{
    private const int Line = 64;
    private const int Attempts = 200;

    /// <summary>Doubles of a cache line; rows that begin off one cost a fifth of the speed [1].</summary>
    public const int DoublesOfLine = Line / sizeof(double);

    /// <summary>Index of the first element of a pinned array that stands on a cache line; the array needs a line more than it holds.</summary>
    public static unsafe int First(double[] pinned)
    {
        ulong place = (ulong)Unsafe.AsPointer(ref pinned[0]) / sizeof(double);
        return (int)((DoublesOfLine - (place % DoublesOfLine)) % DoublesOfLine);
    }

    /// <summary>A copy of an array that stands so.</summary>
    public static T[] Copy<T>(T[] values)
        where T : struct
    {
        T[] copy = Array<T>(values.Length);
        values.CopyTo(copy, 0);
        return copy;
    }

    /// <summary>An array of zeros; of elements that hold references or are no multiple of a line an ordinary one.</summary>
    public static unsafe T[] Array<T>(int count)
        where T : struct
    {
        if (count == 0 || RuntimeHelpers.IsReferenceOrContainsReferences<T>() || Unsafe.SizeOf<T>() % Line != 0)
        {
            return new T[count];
        }

        // the pinned heap gives places one behind the other: fillers shift the next array until it stands well
        for (int attempt = 0; attempt < Attempts; attempt++)
        {
            T[] array = GC.AllocateArray<T>(count, pinned: true);
            ulong place = (ulong)Unsafe.AsPointer(ref MemoryMarshal.GetArrayDataReference(array));
            if (place % Line == 0)
            {
                return array;
            }

            _ = GC.AllocateUninitializedArray<byte>(8 * (1 + (attempt % 8)), pinned: true);
        }

        return new T[count];
    }
}
