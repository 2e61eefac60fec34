using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace PushSim.Numerics;

/// <summary>Four doubles as an <see cref="IReal{T}"/>: four matches side by side, each with the bits of <see cref="R1"/>.</summary>
internal struct R4 : ILanes<R4>
{
    /// <summary>The lanes [unit of their use].</summary>
    public Vector256<double> Value;

    // A whole number of at most 51 bits added to this stands in the low bits of the sum.
    private const double WholeNumber = 6755399441055744.0;

    public static int Lanes => 4;

    public static double Resolution => R1.RoundingUnit;

    public static bool IsAccelerated => Vector256.IsHardwareAccelerated;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator R4(double a)
    {
        Unsafe.SkipInit(out R4 x);
        x.Value = Vector256.Create(a);
        return x;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 operator +(R4 a, R4 b)
    {
        a.Value += b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 operator -(R4 a, R4 b)
    {
        a.Value -= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 operator -(R4 a)
    {
        // the sign bit alone: 0 - a would make +0 of +0
        a.Value ^= Vector256.Create(-0.0);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 operator *(R4 a, R4 b)
    {
        a.Value *= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 operator /(R4 a, R4 b)
    {
        a.Value /= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 Fma(R4 a, R4 b, R4 c)
    {
        a.Value = Vector256.FusedMultiplyAdd(a.Value, b.Value, c.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 Sqrt(R4 a)
    {
        a.Value = Vector256.Sqrt(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 Abs(R4 a)
    {
        a.Value = Vector256.Abs(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 Min(R4 a, R4 b)
    {
        a.Value = Vector256.MinNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 Max(R4 a, R4 b)
    {
        a.Value = Vector256.MaxNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(Kernel.Part)]
    public static R4 Exp(R4 a) => SoftFunctions.Exp(a);

    [MethodImpl(Kernel.Part)]
    public static R4 Log(R4 a) => SoftFunctions.Log(a);

    [MethodImpl(Kernel.Part)]
    public static R4 Tanh(R4 a) => SoftFunctions.Tanh(a);

    [MethodImpl(Kernel.Part)]
    public static void SinCos(R4 a, out R4 sine, out R4 cosine) => SoftFunctions.SinCos(a, out sine, out cosine);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 IfLess(R4 a, R4 b, R4 x, R4 y)
    {
        a.Value = Vector256.ConditionalSelect(Vector256.LessThan(a.Value, b.Value), x.Value, y.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllLess(R4 a, R4 b) => Vector256.LessThanAll(a.Value, b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 Round(R4 a)
    {
        a.Value = Vector256.Round(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static R4 PowerOfTwo(R4 n)
    {
        // the biased exponent lands in the low bits and moves up; what stood above is shifted out
        Vector256<long> biased = (n.Value + Vector256.Create(WholeNumber + 1023.0)).AsInt64();
        n.Value = (biased << 52).AsDouble();
        return n;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Split(R4 a, out R4 mantissa, out R4 exponent)
    {
        Vector256<long> bits = a.Value.AsInt64();
        Vector256<long> biased = (bits >>> 52) & Vector256.Create(0x7FFL);
        Unsafe.SkipInit(out mantissa);
        Unsafe.SkipInit(out exponent);
        exponent.Value = (biased + Vector256.Create(WholeNumber).AsInt64()).AsDouble() - Vector256.Create(WholeNumber + 1022.0);
        mantissa.Value = ((bits & Vector256.Create(0x000F_FFFF_FFFF_FFFFL)) | Vector256.Create(1022L << 52)).AsDouble();
    }
}
