using System.Runtime.CompilerServices;

namespace PushSim.Numerics;

/// <summary>Elementary functions over Fma, the same operations for a scalar and for lanes, so that every width and every
/// platform gives the same bits. Argument reduction and series are textbook ones (Cody and Waite, Software Manual for
/// the Elementary Functions, 1980); accuracy is measured in the tests to about 2 units in the last place,
/// tanh just above 0.125 to 16 (one unit in the last place of 1).</summary>
internal static class SoftFunctions
{
    private const double Log2E = 1.4426950408889634;
    private const double Ln2High = 0.693147180369123816490;
    private const double Ln2Low = 1.90821492927058770002e-10;
    private const double HalfPi1 = 1.57079632673412561417;
    private const double HalfPi2 = 6.07710050650619224932e-11;
    private const double TwoOverPi = 0.63661977236758134308;
    private const double Ln2HighSingle = 0.693147182464599609375;
    private const double Ln2LowSingle = -1.904654299957767878e-9;
    private const double HalfPi1Single = 1.57079637050628662109375;
    private const double HalfPi2Single = -4.3711390001862426e-8;
    private const double HalfRoot2 = 0.70710678118654752440;

    /// <summary>e^x, x kept within +-700 [1].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Exp<T>(T x)
        where T : struct, IReal<T>
    {
        if (Lane.IsSingle<T>())
        {
            return ExpSingle(x);
        }

        x = T.Max(-700.0, T.Min(700.0, x));
        T n = T.Round(x * Log2E);
        T r = T.Fma(n, -Ln2Low, T.Fma(n, -Ln2High, x));

        // sum r^k/k! to k = 13: the rest is below 5e-18 for |r| <= ln2/2
        T p = T.Fma(r, 1.0 / 6227020800.0, 1.0 / 479001600.0);
        p = T.Fma(p, r, 1.0 / 39916800.0);
        p = T.Fma(p, r, 1.0 / 3628800.0);
        p = T.Fma(p, r, 1.0 / 362880.0);
        p = T.Fma(p, r, 1.0 / 40320.0);
        p = T.Fma(p, r, 1.0 / 5040.0);
        p = T.Fma(p, r, 1.0 / 720.0);
        p = T.Fma(p, r, 1.0 / 120.0);
        p = T.Fma(p, r, 1.0 / 24.0);
        p = T.Fma(p, r, 1.0 / 6.0);
        p = T.Fma(p, r, 0.5);
        p = T.Fma(p, r, 1.0);
        p = T.Fma(p, r, 1.0);
        return p * T.PowerOfTwo(n);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T ExpSingle<T>(T x)
        where T : struct, IReal<T>
    {
        x = T.Max(-87.0, T.Min(87.0, x));
        T n = T.Round(x * Log2E);
        T r = T.Fma(n, -Ln2LowSingle, T.Fma(n, -Ln2HighSingle, x));

        // to k = 7: the rest is below 6e-9
        T p = T.Fma(r, 1.0 / 5040.0, 1.0 / 720.0);
        p = T.Fma(p, r, 1.0 / 120.0);
        p = T.Fma(p, r, 1.0 / 24.0);
        p = T.Fma(p, r, 1.0 / 6.0);
        p = T.Fma(p, r, 0.5);
        p = T.Fma(p, r, 1.0);
        p = T.Fma(p, r, 1.0);
        return p * T.PowerOfTwo(n);
    }

    /// <summary>Natural logarithm of a positive normal number [1].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Log<T>(T x)
        where T : struct, IReal<T>
    {
        T.Split(x, out T m, out T e);
        T low = T.IfLess(m, HalfRoot2, 1.0, 0.0);
        m = m + (m * low);
        e = e - low;
        T s = (m - 1.0) / (m + 1.0);
        T s2 = s * s;

        // ln m = 2 sum s^(2k+1)/(2k+1), |s| <= 0.1716
        T p = 2.0 / 11.0;
        if (!Lane.IsSingle<T>())
        {
            p = LongLog(s2);
        }

        p = T.Fma(p, s2, 2.0 / 9.0);
        p = T.Fma(p, s2, 2.0 / 7.0);
        p = T.Fma(p, s2, 2.0 / 5.0);
        p = T.Fma(p, s2, 2.0 / 3.0);
        p = T.Fma(p, s2 * s, s + s);
        return Lane.IsSingle<T>() ? T.Fma(e, Ln2HighSingle, T.Fma(e, Ln2LowSingle, p)) : T.Fma(e, Ln2High, T.Fma(e, Ln2Low, p));
    }

    // the terms that single precision does not need
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T LongLog<T>(T s2)
        where T : struct, IReal<T>
    {
        T p = 2.0 / 23.0;
        p = T.Fma(p, s2, 2.0 / 21.0);
        p = T.Fma(p, s2, 2.0 / 19.0);
        p = T.Fma(p, s2, 2.0 / 17.0);
        p = T.Fma(p, s2, 2.0 / 15.0);
        p = T.Fma(p, s2, 2.0 / 13.0);
        return T.Fma(p, s2, 2.0 / 11.0);
    }

    /// <summary>Hyperbolic tangent [1].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Tanh<T>(T x)
        where T : struct, IReal<T>
    {
        T a = T.Abs(x);
        if (T.AllLess(Lane.IsSingle<T>() ? 10.0 : 20.0, a))
        {
            // beyond 19.1, or 9.1 in single precision, the form below rounds to 1
            return T.IfLess(x, 0.0, -1.0, 1.0);
        }

        T large = 1.0 - (2.0 / (Exp(a + a) + 1.0));

        // near zero, where the form above cancels, the series to x^17
        T y = a * a;
        T p = 62.0 / 2835.0;
        if (!Lane.IsSingle<T>())
        {
            p = T.Fma(y, 6404582.0 / 10854718875.0, -929569.0 / 638512875.0);
            p = T.Fma(p, y, 21844.0 / 6081075.0);
            p = T.Fma(p, y, -1382.0 / 155925.0);
            p = T.Fma(p, y, 62.0 / 2835.0);
        }

        p = T.Fma(p, y, -17.0 / 315.0);
        p = T.Fma(p, y, 2.0 / 15.0);
        p = T.Fma(p, y, -1.0 / 3.0);
        T small = T.Fma(p * y, a, a);
        T t = T.IfLess(a, 0.125, small, large);
        return T.IfLess(x, 0.0, -t, t);
    }

    /// <summary>Sine and cosine of an angle below 1e5 rad, exactly odd and even [1].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void SinCos<T>(T x, out T sine, out T cosine)
        where T : struct, IReal<T>
    {
        T n = T.Round(x * TwoOverPi);
        T s, c;
        if (Lane.IsSingle<T>())
        {
            T r = T.Fma(n, -HalfPi2Single, T.Fma(n, -HalfPi1Single, x));
            T y = r * r;
            s = T.Fma(y, 1.0 / 362880.0, -1.0 / 5040.0);
            s = T.Fma(s, y, 1.0 / 120.0);
            s = T.Fma(s, y, -1.0 / 6.0);
            s = T.Fma(s * y, r, r);
            c = T.Fma(y, -1.0 / 3628800.0, 1.0 / 40320.0);
            c = T.Fma(c, y, -1.0 / 720.0);
            c = T.Fma(c, y, 1.0 / 24.0);
            c = T.Fma(c, y, -0.5);
            c = T.Fma(c, y, 1.0);
        }
        else
        {
            T r = T.Fma(n, -HalfPi2, T.Fma(n, -HalfPi1, x));
            T y = r * r;
            s = T.Fma(y, 1.0 / 355687428096000.0, -1.0 / 1307674368000.0);
            s = T.Fma(s, y, 1.0 / 6227020800.0);
            s = T.Fma(s, y, -1.0 / 39916800.0);
            s = T.Fma(s, y, 1.0 / 362880.0);
            s = T.Fma(s, y, -1.0 / 5040.0);
            s = T.Fma(s, y, 1.0 / 120.0);
            s = T.Fma(s, y, -1.0 / 6.0);
            s = T.Fma(s * y, r, r);
            c = T.Fma(y, 1.0 / 20922789888000.0, -1.0 / 87178291200.0);
            c = T.Fma(c, y, 1.0 / 479001600.0);
            c = T.Fma(c, y, -1.0 / 3628800.0);
            c = T.Fma(c, y, 1.0 / 40320.0);
            c = T.Fma(c, y, -1.0 / 720.0);
            c = T.Fma(c, y, 1.0 / 24.0);
            c = T.Fma(c, y, -0.5);
            c = T.Fma(c, y, 1.0);
        }

        // quadrant in 0..3: n - 4 floor(n/4), with floor(n/4) = round((n - 1.5)/4) for whole n
        T q = n - (4.0 * T.Round((n - 1.5) * 0.25));
        // 0 for q = 1 and 3, where sine and cosine trade places, else 1
        T even = T.Abs(T.Abs(q - 2.0) - 1.0);
        sine = T.IfLess(even, 0.5, T.IfLess(q, 1.5, c, -c), T.IfLess(q, 1.5, s, -s));
        cosine = T.IfLess(even, 0.5, T.IfLess(q, 1.5, -s, s), T.IfLess(q, 1.5, c, -c));
    }
}
