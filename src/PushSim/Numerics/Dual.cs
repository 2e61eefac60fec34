namespace PushSim.Numerics;

/// <summary>A dual number v + d epsilon, epsilon^2 = 0: carries the derivative by one chosen input through the model exactly
/// (forward-mode differentiation). At a kink (absolute value, select) it takes the derivative of the side it is on.</summary>
/// <typeparam name="S">The number type of value and derivative.</typeparam>
internal struct Dual<S>(S value, S slope) : IReal<Dual<S>>
    where S : struct, IReal<S>
{
    /// <summary>Value [unit of its use].</summary>
    public S Value = value;

    /// <summary>Derivative by the chosen input [unit of the value / unit of the input].</summary>
    public S Slope = slope;

    public static double Resolution => S.Resolution;

    public static implicit operator Dual<S>(double a) => new(a, 0.0);

    public static Dual<S> operator +(Dual<S> a, Dual<S> b) => new(a.Value + b.Value, a.Slope + b.Slope);

    public static Dual<S> operator -(Dual<S> a, Dual<S> b) => new(a.Value - b.Value, a.Slope - b.Slope);

    public static Dual<S> operator -(Dual<S> a) => new(-a.Value, -a.Slope);

    public static Dual<S> operator *(Dual<S> a, Dual<S> b) =>
        new(a.Value * b.Value, S.Fma(a.Slope, b.Value, a.Value * b.Slope));

    public static Dual<S> operator /(Dual<S> a, Dual<S> b)
    {
        S q = a.Value / b.Value;
        return new(q, (a.Slope - (q * b.Slope)) / b.Value);
    }

    public static Dual<S> Fma(Dual<S> a, Dual<S> b, Dual<S> c) =>
        new(S.Fma(a.Value, b.Value, c.Value), S.Fma(a.Slope, b.Value, S.Fma(a.Value, b.Slope, c.Slope)));

    public static Dual<S> Sqrt(Dual<S> a)
    {
        S root = S.Sqrt(a.Value);
        return new(root, a.Slope / (root + root));
    }

    public static Dual<S> Abs(Dual<S> a) => new(S.Abs(a.Value), S.IfLess(a.Value, 0.0, -a.Slope, a.Slope));

    public static Dual<S> Min(Dual<S> a, Dual<S> b) => IfLess(a, b, a, b);

    public static Dual<S> Max(Dual<S> a, Dual<S> b) => IfLess(a, b, b, a);

    public static Dual<S> Exp(Dual<S> a)
    {
        S e = S.Exp(a.Value);
        return new(e, e * a.Slope);
    }

    public static Dual<S> Log(Dual<S> a) => new(S.Log(a.Value), a.Slope / a.Value);

    public static Dual<S> Tanh(Dual<S> a)
    {
        S t = S.Tanh(a.Value);
        return new(t, a.Slope * (1.0 - (t * t)));
    }

    public static void SinCos(Dual<S> a, out Dual<S> sine, out Dual<S> cosine)
    {
        S.SinCos(a.Value, out S s, out S c);
        sine = new(s, c * a.Slope);
        cosine = new(c, -(s * a.Slope));
    }

    public static Dual<S> IfLess(Dual<S> a, Dual<S> b, Dual<S> x, Dual<S> y) =>
        new(S.IfLess(a.Value, b.Value, x.Value, y.Value), S.IfLess(a.Value, b.Value, x.Slope, y.Slope));

    public static bool AllLess(Dual<S> a, Dual<S> b) => S.AllLess(a.Value, b.Value);

    public static Dual<S> Round(Dual<S> a) => new(S.Round(a.Value), 0.0);

    public static Dual<S> PowerOfTwo(Dual<S> n) => new(S.PowerOfTwo(n.Value), 0.0);

    public static void Split(Dual<S> a, out Dual<S> mantissa, out Dual<S> exponent)
    {
        S.Split(a.Value, out S m, out S e);
        mantissa = new(m, a.Slope * S.PowerOfTwo(-e));
        exponent = new(e, 0.0);
    }
}
