using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace PushSim.Numerics;

/// <summary>Eight floats as an <see cref="IReal{T}"/>: eight matches side by side, each with the bits of <see cref="F1"/>.</summary>
internal struct F8 : ILanes<F8>
{
    /// <summary>The lanes [unit of their use].</summary>
    public Vector256<float> Value;

    // A whole number of at most 22 bits added to this stands in the low bits of the sum.
    private const float WholeNumber = 12582912.0f;

    public static int Lanes => 8;

    public static double Resolution => F1.RoundingUnit;

    public static bool IsAccelerated => Vector256.IsHardwareAccelerated;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator F8(double a)
    {
        Unsafe.SkipInit(out F8 x);
        x.Value = Vector256.Create((float)a);
        return x;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 operator +(F8 a, F8 b)
    {
        a.Value += b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 operator -(F8 a, F8 b)
    {
        a.Value -= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 operator -(F8 a)
    {
        // the sign bit alone: 0 - a would make +0 of +0
        a.Value ^= Vector256.Create(-0.0f);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 operator *(F8 a, F8 b)
    {
        a.Value *= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 operator /(F8 a, F8 b)
    {
        a.Value /= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 Fma(F8 a, F8 b, F8 c)
    {
        a.Value = Vector256.FusedMultiplyAdd(a.Value, b.Value, c.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 Sqrt(F8 a)
    {
        a.Value = Vector256.Sqrt(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 Abs(F8 a)
    {
        a.Value = Vector256.Abs(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 Min(F8 a, F8 b)
    {
        a.Value = Vector256.MinNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 Max(F8 a, F8 b)
    {
        a.Value = Vector256.MaxNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(Kernel.Part)]
    public static F8 Exp(F8 a) => SoftFunctions.Exp(a);

    [MethodImpl(Kernel.Part)]
    public static F8 Log(F8 a) => SoftFunctions.Log(a);

    [MethodImpl(Kernel.Part)]
    public static F8 Tanh(F8 a) => SoftFunctions.Tanh(a);

    [MethodImpl(Kernel.Part)]
    public static void SinCos(F8 a, out F8 sine, out F8 cosine) => SoftFunctions.SinCos(a, out sine, out cosine);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 IfLess(F8 a, F8 b, F8 x, F8 y)
    {
        a.Value = Vector256.ConditionalSelect(Vector256.LessThan(a.Value, b.Value), x.Value, y.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllLess(F8 a, F8 b) => Vector256.LessThanAll(a.Value, b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 Round(F8 a)
    {
        a.Value = Vector256.Round(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F8 PowerOfTwo(F8 n)
    {
        // the biased exponent lands in the low bits and moves up; what stood above is shifted out
        Vector256<int> biased = (n.Value + Vector256.Create(WholeNumber + 127.0f)).AsInt32();
        n.Value = (biased << 23).AsSingle();
        return n;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Split(F8 a, out F8 mantissa, out F8 exponent)
    {
        Vector256<int> bits = a.Value.AsInt32();
        Vector256<int> biased = (bits >>> 23) & Vector256.Create(0xFF);
        Unsafe.SkipInit(out mantissa);
        Unsafe.SkipInit(out exponent);
        exponent.Value = (biased + Vector256.Create(WholeNumber).AsInt32()).AsSingle() - Vector256.Create(WholeNumber + 126.0f);
        mantissa.Value = ((bits & Vector256.Create(0x007F_FFFF)) | Vector256.Create(126 << 23)).AsSingle();
    }
}
