using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>Every operation of several lanes gives in each lane the bits of the scalar one of its precision.</summary>
public class LaneBitsTests
{
    private const int Rounds = 20_000;

    // Signed zeros, halves, overflow, underflow and what is not finite, beside numbers of every size.
    private static readonly double[] Special =
    [
        0.0, -0.0, 1.0, -1.0, 0.5, -0.5, 1.5, 2.5, -2.5, 1e-310, -1e-310, 1e308, -1e308, 1e-30, 700.0, -700.0, 750.0, -750.0,
        double.PositiveInfinity, double.NegativeInfinity, double.NaN,
    ];

    [Fact]
    public void Four_doubles() => Compare<R4, R1>();

    [Fact]
    public void Eight_doubles() => Compare<R8, R1>();

    [Fact]
    public void Eight_floats() => Compare<F8, F1>();

    [Fact]
    public void Sixteen_floats() => Compare<F16, F1>();

    [Fact]
    public void Elementary_functions_of_four_doubles() => CompareFunctions<R4, R1>();

    [Fact]
    public void Elementary_functions_of_eight_doubles() => CompareFunctions<R8, R1>();

    [Fact]
    public void Elementary_functions_of_eight_floats() => CompareFunctions<F8, F1>();

    [Fact]
    public void Elementary_functions_of_sixteen_floats() => CompareFunctions<F16, F1>();

    private static void Compare<T, TOne>()
        where T : struct, ILanes<T>, IReal<T>
        where TOne : struct, ILanes<TOne>, IReal<TOne>
    {
        var random = new Random(41);
        for (int n = 0; n < Rounds; n++)
        {
            double[] a = Draw<T>(random), b = Draw<T>(random), c = Draw<T>(random), d = Draw<T>(random);
            T x = Pack<T>(a), y = Pack<T>(b), z = Pack<T>(c), w = Pack<T>(d);
            Check<T, TOne>("+", x + y, i => (TOne)a[i] + b[i]);
            Check<T, TOne>("-", x - y, i => (TOne)a[i] - b[i]);
            Check<T, TOne>("negation", -x, i => -(TOne)a[i]);
            Check<T, TOne>("*", x * y, i => (TOne)a[i] * b[i]);
            Check<T, TOne>("/", x / y, i => (TOne)a[i] / b[i]);
            Check<T, TOne>("Fma", T.Fma(x, y, z), i => TOne.Fma(a[i], b[i], c[i]));
            Check<T, TOne>("Sqrt", T.Sqrt(x), i => TOne.Sqrt(a[i]));
            Check<T, TOne>("Abs", T.Abs(x), i => TOne.Abs(a[i]));
            Check<T, TOne>("Min", T.Min(x, y), i => TOne.Min(a[i], b[i]));
            Check<T, TOne>("Max", T.Max(x, y), i => TOne.Max(a[i], b[i]));
            Check<T, TOne>("Round", T.Round(x), i => TOne.Round(a[i]));
            Check<T, TOne>("IfLess", T.IfLess(x, y, z, w), i => TOne.IfLess(a[i], b[i], c[i], d[i]));
            bool all = true;
            for (int i = 0; i < T.Lanes; i++)
            {
                all &= TOne.AllLess(a[i], b[i]);
            }

            Assert.Equal(all, T.AllLess(x, y));
        }
    }

    private static void CompareFunctions<T, TOne>()
        where T : struct, ILanes<T>, IReal<T>
        where TOne : struct, ILanes<TOne>, IReal<TOne>
    {
        var random = new Random(43);
        for (int n = 0; n < Rounds; n++)
        {
            double[] a = Draw<T>(random);
            double[] angle = [.. a.Select(v => double.IsFinite(v) ? Math.IEEERemainder(v, 9e4) : v)];
            double[] positive = [.. a.Select(v => Math.Abs(v) is double p && IsNormal<T>(p) ? p : 1.0)];
            double[] whole = [.. a.Select(_ => Lane.IsSingle<T>() ? random.Next(-126, 128) : (double)random.Next(-1022, 1024))];
            T x = Pack<T>(a);
            Check<T, TOne>("Exp", T.Exp(x), i => TOne.Exp(a[i]));
            Check<T, TOne>("Tanh", T.Tanh(x), i => TOne.Tanh(a[i]));
            Check<T, TOne>("Log", T.Log(Pack<T>(positive)), i => TOne.Log(positive[i]));
            Check<T, TOne>("PowerOfTwo", T.PowerOfTwo(Pack<T>(whole)), i => TOne.PowerOfTwo(whole[i]));
            T.Split(Pack<T>(positive), out T m, out T e);
            Check<T, TOne>("Split, mantissa", m, i => Split<TOne>(positive[i]).Mantissa);
            Check<T, TOne>("Split, exponent", e, i => Split<TOne>(positive[i]).Exponent);
            T.SinCos(Pack<T>(angle), out T s, out T c);
            Check<T, TOne>("sine", s, i => SinCos<TOne>(angle[i]).Sine);
            Check<T, TOne>("cosine", c, i => SinCos<TOne>(angle[i]).Cosine);
        }
    }

    private static (TOne Mantissa, TOne Exponent) Split<TOne>(double a)
        where TOne : struct, ILanes<TOne>, IReal<TOne>
    {
        TOne.Split(a, out TOne m, out TOne e);
        return (m, e);
    }

    private static (TOne Sine, TOne Cosine) SinCos<TOne>(double a)
        where TOne : struct, ILanes<TOne>, IReal<TOne>
    {
        TOne.SinCos(a, out TOne s, out TOne c);
        return (s, c);
    }

    private static double[] Draw<T>(Random random)
        where T : struct, ILanes<T>, IReal<T>
    {
        double[] values = new double[T.Lanes];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = random.Next(4) switch
            {
                0 => Special[random.Next(Special.Length)],
                1 => BitConverter.Int64BitsToDouble(random.NextInt64()) * (random.Next(2) == 0 ? 1.0 : -1.0),
                2 => random.Next(-6, 7),
                _ => 40.0 * (random.NextDouble() - 0.5),
            };
        }

        // what a float holds, so that both sides are given the same
        return Lane.IsSingle<T>() ? [.. values.Select(v => (double)(float)v)] : values;
    }

    private static bool IsNormal<T>(double positive)
        where T : struct, ILanes<T>, IReal<T> => Lane.IsSingle<T>() ? float.IsNormal((float)positive) : double.IsNormal(positive);

    private static T Pack<T>(double[] values)
        where T : struct, ILanes<T>, IReal<T>
    {
        T x = default;
        for (int i = 0; i < values.Length; i++)
        {
            Lane.Set(ref x, i, values[i]);
        }

        return x;
    }

    // Which of several kinds of NaN comes out is not compared: no answer hangs on it.
    private static void Check<T, TOne>(string what, T lanes, Func<int, TOne> scalar)
        where T : struct, ILanes<T>, IReal<T>
        where TOne : struct, ILanes<TOne>, IReal<TOne>
    {
        for (int i = 0; i < T.Lanes; i++)
        {
            double expected = Lane.Get(scalar(i), 0);
            double got = Lane.Get(lanes, i);
            bool same = BitConverter.DoubleToInt64Bits(expected) == BitConverter.DoubleToInt64Bits(got) || (double.IsNaN(expected) && double.IsNaN(got));
            Assert.True(same, $"{what}, lane {i}: {got:R} instead of {expected:R}");
        }
    }
}
