using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>Every operation of four and eight lanes gives in each lane the bits of the scalar one.</summary>
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
    public void Four_lanes() => Compare<R4>();

    [Fact]
    public void Eight_lanes() => Compare<R8>();

    [Fact]
    public void Elementary_functions_of_four_lanes() => CompareFunctions<R4>();

    [Fact]
    public void Elementary_functions_of_eight_lanes() => CompareFunctions<R8>();

    private static void Compare<T>()
        where T : struct, ILanes<T>, IReal<T>
    {
        var random = new Random(41);
        for (int n = 0; n < Rounds; n++)
        {
            double[] a = Draw<T>(random), b = Draw<T>(random), c = Draw<T>(random), d = Draw<T>(random);
            T x = Pack<T>(a), y = Pack<T>(b), z = Pack<T>(c), w = Pack<T>(d);
            Check("+", x + y, i => (R1)a[i] + b[i]);
            Check("-", x - y, i => (R1)a[i] - b[i]);
            Check("negation", -x, i => -(R1)a[i]);
            Check("*", x * y, i => (R1)a[i] * b[i]);
            Check("/", x / y, i => (R1)a[i] / b[i]);
            Check("Fma", T.Fma(x, y, z), i => R1.Fma(a[i], b[i], c[i]));
            Check("Sqrt", T.Sqrt(x), i => R1.Sqrt(a[i]));
            Check("Abs", T.Abs(x), i => R1.Abs(a[i]));
            Check("Min", T.Min(x, y), i => R1.Min(a[i], b[i]));
            Check("Max", T.Max(x, y), i => R1.Max(a[i], b[i]));
            Check("Round", T.Round(x), i => R1.Round(a[i]));
            Check("IfLess", T.IfLess(x, y, z, w), i => R1.IfLess(a[i], b[i], c[i], d[i]));
            bool all = true;
            for (int i = 0; i < T.Lanes; i++)
            {
                all &= R1.AllLess(a[i], b[i]);
            }

            Assert.Equal(all, T.AllLess(x, y));
        }
    }

    private static void CompareFunctions<T>()
        where T : struct, ILanes<T>, IReal<T>
    {
        var random = new Random(43);
        for (int n = 0; n < Rounds; n++)
        {
            double[] a = Draw<T>(random);
            double[] angle = [.. a.Select(v => double.IsFinite(v) ? Math.IEEERemainder(v, 9e4) : v)];
            double[] positive = [.. a.Select(v => Math.Abs(v) is double p && double.IsNormal(p) ? p : 1.0)];
            double[] whole = [.. a.Select(_ => (double)random.Next(-1022, 1024))];
            T x = Pack<T>(a);
            Check("Exp", T.Exp(x), i => R1.Exp(a[i]));
            Check("Tanh", T.Tanh(x), i => R1.Tanh(a[i]));
            Check("Log", T.Log(Pack<T>(positive)), i => R1.Log(positive[i]));
            Check("PowerOfTwo", T.PowerOfTwo(Pack<T>(whole)), i => R1.PowerOfTwo(whole[i]));
            T.Split(Pack<T>(positive), out T m, out T e);
            Check("Split, mantissa", m, i => Split(positive[i]).Mantissa);
            Check("Split, exponent", e, i => Split(positive[i]).Exponent);
            T.SinCos(Pack<T>(angle), out T s, out T c);
            Check("sine", s, i => SinCos(angle[i]).Sine);
            Check("cosine", c, i => SinCos(angle[i]).Cosine);
        }
    }

    private static (R1 Mantissa, R1 Exponent) Split(double a)
    {
        R1.Split(a, out R1 m, out R1 e);
        return (m, e);
    }

    private static (R1 Sine, R1 Cosine) SinCos(double a)
    {
        R1.SinCos(a, out R1 s, out R1 c);
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

        return values;
    }

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
    private static void Check<T>(string what, T lanes, Func<int, R1> scalar)
        where T : struct, ILanes<T>, IReal<T>
    {
        for (int i = 0; i < T.Lanes; i++)
        {
            double expected = scalar(i).Value;
            double got = Lane.Get(lanes, i);
            bool same = BitConverter.DoubleToInt64Bits(expected) == BitConverter.DoubleToInt64Bits(got) || (double.IsNaN(expected) && double.IsNaN(got));
            Assert.True(same, $"{what}, lane {i}: {got:R} instead of {expected:R}");
        }
    }
}
