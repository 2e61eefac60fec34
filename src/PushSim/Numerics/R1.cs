using System.Runtime.CompilerServices;

namespace PushSim.Numerics;

/// <summary>One double as an <see cref="IReal{T}"/>: the scalar form of the model.</summary>
internal struct R1 : ILanes<R1>
{
    /// <summary>The number [unit of its use].</summary>
    public double Value;

    /// <summary>Half a unit in the last place of 1 [1].</summary>
    public const double RoundingUnit = 1.0 / (1L << 53);

    public static int Lanes => 1;

    public static double Resolution => RoundingUnit;

    public static bool IsAccelerated => true;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator R1(double a)
    {
        Unsafe.SkipInit(out R1 x);
        x.Value = a;
        return x;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 operator +(R1 a, R1 b)
    {
        a.Value += b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 operator -(R1 a, R1 b)
    {
        a.Value -= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 operator -(R1 a)
    {
        a.Value = -a.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 operator *(R1 a, R1 b)
    {
        a.Value *= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 operator /(R1 a, R1 b)
    {
        a.Value /= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 Fma(R1 a, R1 b, R1 c)
    {
        a.Value = Math.FusedMultiplyAdd(a.Value, b.Value, c.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 Sqrt(R1 a)
    {
        a.Value = Math.Sqrt(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 Abs(R1 a)
    {
        a.Value = Math.Abs(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 Min(R1 a, R1 b)
    {
        a.Value = double.MinNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 Max(R1 a, R1 b)
    {
        a.Value = double.MaxNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(Kernel.Part)]
    public static R1 Exp(R1 a) => SoftFunctions.Exp(a);

    [MethodImpl(Kernel.Part)]
    public static R1 Log(R1 a) => SoftFunctions.Log(a);

    [MethodImpl(Kernel.Part)]
    public static R1 Tanh(R1 a) => SoftFunctions.Tanh(a);

    [MethodImpl(Kernel.Part)]
    public static void SinCos(R1 a, out R1 sine, out R1 cosine) => SoftFunctions.SinCos(a, out sine, out cosine);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 IfLess(R1 a, R1 b, R1 x, R1 y) => a.Value < b.Value ? x : y;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllLess(R1 a, R1 b) => a.Value < b.Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 Round(R1 a) => Math.Round(a.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R1 PowerOfTwo(R1 n) => BitConverter.Int64BitsToDouble(((long)n.Value + 1023L) << 52);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Split(R1 a, out R1 mantissa, out R1 exponent)
    {
        long bits = BitConverter.DoubleToInt64Bits(a.Value);
        exponent = (double)(((bits >> 52) & 0x7FFL) - 1022L);
        mantissa = BitConverter.Int64BitsToDouble((bits & 0x000F_FFFF_FFFF_FFFFL) | (1022L << 52));
    }
}
