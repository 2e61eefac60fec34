using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace PushSim.Numerics;

/// <summary>Sixteen floats as an <see cref="IReal{T}"/>: sixteen matches side by side, each with the bits of <see cref="F1"/>.</summary>
internal struct F16 : ILanes<F16>
{
    /// <summary>The lanes [unit of their use].</summary>
    public Vector512<float> Value;

    // A whole number of at most 22 bits added to this stands in the low bits of the sum.
    private const float WholeNumber = 12582912.0f;

    public static int Lanes => 16;

    public static double Resolution => F1.RoundingUnit;

    public static bool IsAccelerated => Vector512.IsHardwareAccelerated;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator F16(double a)
    {
        Unsafe.SkipInit(out F16 x);
        x.Value = Vector512.Create((float)a);
        return x;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 operator +(F16 a, F16 b)
    {
        a.Value += b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 operator -(F16 a, F16 b)
    {
        a.Value -= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 operator -(F16 a)
    {
        // the sign bit alone: 0 - a would make +0 of +0
        a.Value ^= Vector512.Create(-0.0f);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 operator *(F16 a, F16 b)
    {
        a.Value *= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 operator /(F16 a, F16 b)
    {
        a.Value /= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 Fma(F16 a, F16 b, F16 c)
    {
        a.Value = Vector512.FusedMultiplyAdd(a.Value, b.Value, c.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 Sqrt(F16 a)
    {
        a.Value = Vector512.Sqrt(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 Abs(F16 a)
    {
        a.Value = Vector512.Abs(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 Min(F16 a, F16 b)
    {
        a.Value = Vector512.MinNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 Max(F16 a, F16 b)
    {
        a.Value = Vector512.MaxNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(Kernel.Part)]
    public static F16 Exp(F16 a) => SoftFunctions.Exp(a);

    [MethodImpl(Kernel.Part)]
    public static F16 Log(F16 a) => SoftFunctions.Log(a);

    [MethodImpl(Kernel.Part)]
    public static F16 Tanh(F16 a) => SoftFunctions.Tanh(a);

    [MethodImpl(Kernel.Part)]
    public static void SinCos(F16 a, out F16 sine, out F16 cosine) => SoftFunctions.SinCos(a, out sine, out cosine);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 IfLess(F16 a, F16 b, F16 x, F16 y)
    {
        a.Value = Vector512.ConditionalSelect(Vector512.LessThan(a.Value, b.Value), x.Value, y.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllLess(F16 a, F16 b) => Vector512.LessThanAll(a.Value, b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 Round(F16 a)
    {
        a.Value = Vector512.Round(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F16 PowerOfTwo(F16 n)
    {
        // the biased exponent lands in the low bits and moves up; what stood above is shifted out
        Vector512<int> biased = (n.Value + Vector512.Create(WholeNumber + 127.0f)).AsInt32();
        n.Value = (biased << 23).AsSingle();
        return n;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Split(F16 a, out F16 mantissa, out F16 exponent)
    {
        Vector512<int> bits = a.Value.AsInt32();
        Vector512<int> biased = (bits >>> 23) & Vector512.Create(0xFF);
        Unsafe.SkipInit(out mantissa);
        Unsafe.SkipInit(out exponent);
        exponent.Value = (biased + Vector512.Create(WholeNumber).AsInt32()).AsSingle() - Vector512.Create(WholeNumber + 126.0f);
        mantissa.Value = ((bits & Vector512.Create(0x007F_FFFF)) | Vector512.Create(126 << 23)).AsSingle();
    }
}
