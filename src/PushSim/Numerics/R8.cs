using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace PushSim.Numerics;

/// <summary>Eight doubles as an <see cref="IReal{T}"/>: eight matches side by side, each with the bits of <see cref="R1"/>.</summary>
internal struct R8 : ILanes<R8>
{
    /// <summary>The lanes [unit of their use].</summary>
    public Vector512<double> Value;

    // A whole number of at most 51 bits added to this stands in the low bits of the sum.
    private const double WholeNumber = 6755399441055744.0;

    public static int Lanes => 8;

    public static double Resolution => R1.RoundingUnit;

    public static bool IsAccelerated => Vector512.IsHardwareAccelerated;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator R8(double a)
    {
        Unsafe.SkipInit(out R8 x);
        x.Value = Vector512.Create(a);
        return x;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 operator +(R8 a, R8 b)
    {
        a.Value += b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 operator -(R8 a, R8 b)
    {
        a.Value -= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 operator -(R8 a)
    {
        // the sign bit alone: 0 - a would make +0 of +0
        a.Value ^= Vector512.Create(-0.0);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 operator *(R8 a, R8 b)
    {
        a.Value *= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 operator /(R8 a, R8 b)
    {
        a.Value /= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 Fma(R8 a, R8 b, R8 c)
    {
        a.Value = Vector512.FusedMultiplyAdd(a.Value, b.Value, c.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 Sqrt(R8 a)
    {
        a.Value = Vector512.Sqrt(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 Abs(R8 a)
    {
        a.Value = Vector512.Abs(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 Min(R8 a, R8 b)
    {
        a.Value = Vector512.MinNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 Max(R8 a, R8 b)
    {
        a.Value = Vector512.MaxNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(Kernel.Part)]
    public static R8 Exp(R8 a) => SoftFunctions.Exp(a);

    [MethodImpl(Kernel.Part)]
    public static R8 Log(R8 a) => SoftFunctions.Log(a);

    [MethodImpl(Kernel.Part)]
    public static R8 Tanh(R8 a) => SoftFunctions.Tanh(a);

    [MethodImpl(Kernel.Part)]
    public static void SinCos(R8 a, out R8 sine, out R8 cosine) => SoftFunctions.SinCos(a, out sine, out cosine);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 IfLess(R8 a, R8 b, R8 x, R8 y)
    {
        a.Value = Vector512.ConditionalSelect(Vector512.LessThan(a.Value, b.Value), x.Value, y.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllLess(R8 a, R8 b) => Vector512.LessThanAll(a.Value, b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 Round(R8 a)
    {
        a.Value = Vector512.Round(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R8 PowerOfTwo(R8 n)
    {
        // the biased exponent lands in the low bits and moves up; what stood above is shifted out
        Vector512<long> biased = (n.Value + Vector512.Create(WholeNumber + 1023.0)).AsInt64();
        n.Value = (biased << 52).AsDouble();
        return n;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Split(R8 a, out R8 mantissa, out R8 exponent)
    {
        Vector512<long> bits = a.Value.AsInt64();
        Vector512<long> biased = (bits >>> 52) & Vector512.Create(0x7FFL);
        Unsafe.SkipInit(out mantissa);
        Unsafe.SkipInit(out exponent);
        exponent.Value = (biased + Vector512.Create(WholeNumber).AsInt64()).AsDouble() - Vector512.Create(WholeNumber + 1022.0);
        mantissa.Value = ((bits & Vector512.Create(0x000F_FFFF_FFFF_FFFFL)) | Vector512.Create(1022L << 52)).AsDouble();
    }
}
