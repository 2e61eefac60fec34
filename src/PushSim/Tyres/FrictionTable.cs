namespace PushSim.Tyres;

/// <summary>Monotone cubic through measured friction against slip speed (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980),
/// held constant beyond both ends. Branch-free, so that lanes can differ.</summary>
internal sealed class FrictionTable<T> : INumbers<T>
    where T : struct, IReal<T>
{
    // points [m/s], [1]; per interval 1/h [s/m] and both ends' slopes times h [1]
    internal readonly T[] Speed, Friction, Inverse, First, Second;

    public FrictionTable(IReadOnlyList<(double Speed, double Friction)> points)
    {
        double[] x = [.. points.Select(p => p.Speed)];
        double[] y = [.. points.Select(p => p.Friction)];
        double[] slope = MonotoneSlopes(x, y);
        Speed = [.. x.Select(v => (T)v)];
        Friction = [.. y.Select(v => (T)v)];
        Inverse = [.. x.SkipLast(1).Select((_, i) => (T)(1.0 / (x[i + 1] - x[i])))];
        First = [.. x.SkipLast(1).Select((_, i) => (T)((x[i + 1] - x[i]) * slope[i]))];
        Second = [.. x.SkipLast(1).Select((_, i) => (T)((x[i + 1] - x[i]) * slope[i + 1]))];
    }

    /// <summary>Friction at a slip speed [1].</summary>
    public T Evaluate(T speed)
    {
        T x = T.Max(Speed[0], T.Min(Speed[^1], speed));
        T result = Friction[0];
        for (int i = 0; i + 1 < Speed.Length; i++)
        {
            T s = (x - Speed[i]) * Inverse[i];
            T s2 = s * s;
            T h01 = s2 * (3.0 - (s + s));
            T value = (Friction[i] * (1.0 - h01)) + (Friction[i + 1] * h01)
                + (First[i] * (s * (1.0 - s) * (1.0 - s))) - (Second[i] * (s2 * (1.0 - s)));
            result = T.IfLess(x, Speed[i], result, value);
        }

        return result;
    }

    public void Show(NumberWalk<T> walk)
    {
        walk.Take(Speed);
        walk.Take(Friction);
        walk.Take(Inverse);
        walk.Take(First);
        walk.Take(Second);
    }

    private static double[] MonotoneSlopes(double[] x, double[] y)
    {
        int n = x.Length;
        double[] m = new double[n];
        for (int i = 1; i + 1 < n; i++)
        {
            double left = (y[i] - y[i - 1]) / (x[i] - x[i - 1]);
            double right = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);

            // the harmonic mean of the secants stays inside Fritsch and Carlson's region
            m[i] = left * right > 0.0 ? 2.0 * left * right / (left + right) : 0.0;
        }

        return m;
    }
}
