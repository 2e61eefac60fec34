using System.Runtime.CompilerServices;

namespace PushSim.Numerics;

/// <summary>One float as an <see cref="IReal{T}"/>: the scalar form of the model in single precision.</summary>
internal struct F1 : ILanes<F1>
{
    /// <summary>The number [unit of its use].</summary>
    public float Value;

    /// <summary>Half a unit in the last place of 1 [1].</summary>
    public const double RoundingUnit = 1.0 / (1 << 24);

    public static int Lanes => 1;

    public static double Resolution => RoundingUnit;

    public static bool IsAccelerated => true;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator F1(double a)
    {
        Unsafe.SkipInit(out F1 x);
        x.Value = (float)a;
        return x;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 operator +(F1 a, F1 b)
    {
        a.Value += b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 operator -(F1 a, F1 b)
    {
        a.Value -= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 operator -(F1 a)
    {
        a.Value = -a.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 operator *(F1 a, F1 b)
    {
        a.Value *= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 operator /(F1 a, F1 b)
    {
        a.Value /= b.Value;
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 Fma(F1 a, F1 b, F1 c)
    {
        a.Value = MathF.FusedMultiplyAdd(a.Value, b.Value, c.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 Sqrt(F1 a)
    {
        a.Value = MathF.Sqrt(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 Abs(F1 a)
    {
        a.Value = MathF.Abs(a.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 Min(F1 a, F1 b)
    {
        a.Value = float.MinNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 Max(F1 a, F1 b)
    {
        a.Value = float.MaxNative(a.Value, b.Value);
        return a;
    }

    [MethodImpl(Kernel.Part)]
    public static F1 Exp(F1 a) => SoftFunctions.Exp(a);

    [MethodImpl(Kernel.Part)]
    public static F1 Log(F1 a) => SoftFunctions.Log(a);

    [MethodImpl(Kernel.Part)]
    public static F1 Tanh(F1 a) => SoftFunctions.Tanh(a);

    [MethodImpl(Kernel.Part)]
    public static void SinCos(F1 a, out F1 sine, out F1 cosine) => SoftFunctions.SinCos(a, out sine, out cosine);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 IfLess(F1 a, F1 b, F1 x, F1 y) => a.Value < b.Value ? x : y;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllLess(F1 a, F1 b) => a.Value < b.Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 Round(F1 a) => MathF.Round(a.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static F1 PowerOfTwo(F1 n) => BitConverter.Int32BitsToSingle(((int)n.Value + 127) << 23);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Split(F1 a, out F1 mantissa, out F1 exponent)
    {
        int bits = BitConverter.SingleToInt32Bits(a.Value);
        exponent = ((bits >> 23) & 0xFF) - 126;
        mantissa = BitConverter.Int32BitsToSingle((bits & 0x007F_FFFF) | (126 << 23));
    }
}
