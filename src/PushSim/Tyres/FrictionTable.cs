using PushSim.Numerics;

namespace PushSim.Tyres;

/// <summary>
/// Monotone cubic through measured friction against slip speed (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980),
/// held constant beyond both ends. Branch-free, so that lanes can differ.
/// </summary>
/// <typeparam name="T">Number type.</typeparam>
internal sealed class FrictionTable<T>
    where T : struct, IReal<T>
{
    private readonly double[] _speed;
    private readonly double[] _friction;
    private readonly double[] _slope;

    public FrictionTable(IReadOnlyList<(double Speed, double Friction)> points)
    {
        _speed = [.. points.Select(p => p.Speed)];
        _friction = [.. points.Select(p => p.Friction)];
        _slope = MonotoneSlopes(_speed, _friction);
    }

    /// <summary>Friction at a slip speed [1].</summary>
    public T Evaluate(T speed)
    {
        T x = T.Max(_speed[0], T.Min(_speed[^1], speed));
        T result = _friction[0];
        for (int i = 0; i + 1 < _speed.Length; i++)
        {
            double h = _speed[i + 1] - _speed[i];
            T s = (x - _speed[i]) * (1.0 / h);
            T s2 = s * s;
            T h01 = s2 * (3.0 - (s + s));
            T value = (_friction[i] * (1.0 - h01)) + (_friction[i + 1] * h01)
                + ((h * _slope[i]) * (s * (1.0 - s) * (1.0 - s))) - ((h * _slope[i + 1]) * (s2 * (1.0 - s)));
            result = T.IfLess(x, _speed[i], result, value);
        }

        return result;
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
