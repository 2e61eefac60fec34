namespace PushSim.Numerics;

/// <summary>A real number, a vector of them (lanes) or a dual number: what the model's equations are written over, once. No
/// branches on values: a choice is <see cref="IfLess"/>, so that lanes can differ.</summary>
/// <typeparam name="T">The implementing type.</typeparam>
internal interface IReal<T>
    where T : struct, IReal<T>
{
    /// <summary>Half a unit in the last place of 1: to what share a number is rounded [1].</summary>
    static abstract double Resolution { get; }

    /// <summary>a + b [unit of a].</summary>
    static abstract T operator +(T a, T b);

    /// <summary>a - b [unit of a].</summary>
    static abstract T operator -(T a, T b);

    /// <summary>-a [unit of a].</summary>
    static abstract T operator -(T a);

    /// <summary>a b [product of the units].</summary>
    static abstract T operator *(T a, T b);

    /// <summary>a / b [quotient of the units].</summary>
    static abstract T operator /(T a, T b);

    /// <summary>A constant, the same in all lanes, with no derivative [any unit].</summary>
    static abstract implicit operator T(double a);

    /// <summary>a b + c, rounded once [unit of c].</summary>
    static abstract T Fma(T a, T b, T c);

    /// <summary>Square root [root of the unit].</summary>
    static abstract T Sqrt(T a);

    /// <summary>Absolute value [unit of a].</summary>
    static abstract T Abs(T a);

    /// <summary>The lesser [unit of a].</summary>
    static abstract T Min(T a, T b);

    /// <summary>The greater [unit of a].</summary>
    static abstract T Max(T a, T b);

    /// <summary>e^a, argument kept within +-700 (+-87 in single precision) [1].</summary>
    static abstract T Exp(T a);

    /// <summary>Natural logarithm of a positive normal number [1].</summary>
    static abstract T Log(T a);

    /// <summary>Hyperbolic tangent [1].</summary>
    static abstract T Tanh(T a);

    /// <summary>Sine and cosine of an angle below 1e5 rad [1].</summary>
    static abstract void SinCos(T a, out T sine, out T cosine);

    /// <summary>x where a is less than b, else y [unit of x].</summary>
    static abstract T IfLess(T a, T b, T x, T y);

    /// <summary>Whether a is less than b in every lane: only to skip work that would change nothing.</summary>
    static abstract bool AllLess(T a, T b);

    /// <summary>Nearest integer, halves to even, as a number without derivative [1].</summary>
    static abstract T Round(T a);

    /// <summary>2^n for an integer-valued n in -1022..1023 (-126..127 in single precision) [1].</summary>
    static abstract T PowerOfTwo(T n);

    /// <summary>Splits a positive normal number into m 2^e with m in [0.5, 1) and integer-valued e [1].</summary>
    static abstract void Split(T a, out T mantissa, out T exponent);
}
