using System.Runtime.CompilerServices;

namespace PushSim.Numerics;

/// <summary>Access to single lanes, for what is done lane by lane: step control, events, refilling.</summary>
internal static class Lane
{
    /// <summary>Whether the lanes are floats.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool IsSingle<T>()
        where T : struct, IReal<T> => T.Resolution > R1.RoundingUnit;

    /// <summary>Bytes of a lane [1].</summary>
    public static int Bytes<T>()
        where T : struct, IReal<T> => IsSingle<T>() ? sizeof(float) : sizeof(double);

    /// <summary>One lane of a number [unit of its use].</summary>
    /// <param name="x">The number.</param>
    /// <param name="lane">Index of the lane, not checked [1].</param>
    public static double Get<T>(in T x, int lane)
        where T : struct, ILanes<T>, IReal<T> =>
        IsSingle<T>() ? Unsafe.Add(ref Unsafe.As<T, float>(ref Unsafe.AsRef(in x)), lane) : Unsafe.Add(ref Unsafe.As<T, double>(ref Unsafe.AsRef(in x)), lane);

    /// <summary>Replaces one lane of a number.</summary>
    /// <param name="x">The number.</param>
    /// <param name="lane">Index of the lane, not checked [1].</param>
    /// <param name="value">New value of the lane [unit of its use].</param>
    public static void Set<T>(ref T x, int lane, double value)
        where T : struct, ILanes<T>, IReal<T>
    {
        if (IsSingle<T>())
        {
            Unsafe.Add(ref Unsafe.As<T, float>(ref x), lane) = (float)value;
        }
        else
        {
            Unsafe.Add(ref Unsafe.As<T, double>(ref x), lane) = value;
        }
    }

    /// <summary>Replaces one lane of a number.</summary>
    /// <param name="x">The number.</param>
    /// <param name="lane">Index of the lane, not checked [1].</param>
    /// <param name="value">New value of the lane [unit of its use].</param>
    public static void Set<T>(ref T x, int lane, R1 value)
        where T : struct, ILanes<T>, IReal<T> => Set(ref x, lane, value.Value);

    /// <summary>Replaces one lane of each number of a list.</summary>
    /// <param name="x">The numbers.</param>
    /// <param name="lane">Index of the lane, not checked [1].</param>
    /// <param name="values">New values of the lane, as many [unit of their use].</param>
    public static void Set<T>(Span<T> x, int lane, ReadOnlySpan<R1> values)
        where T : struct, ILanes<T>, IReal<T>
    {
        for (int i = 0; i < values.Length; i++)
        {
            Set(ref x[i], lane, values[i].Value);
        }
    }
}
