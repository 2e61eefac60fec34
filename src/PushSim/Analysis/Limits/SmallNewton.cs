namespace PushSim.Analysis.Limits;

/// <summary>Damped Newton with a Jacobian by differences, and the carry of its solution to dual numbers: steps x - J^-1 f(x) with a fixed J converge to
/// the slope -J^-1 df/dp by a factor of J's error, about 1e-6, each.</summary>
internal static class SmallNewton
{
    private const int MostSteps = 60;
    private const int CarrySteps = 3;
    private const double Difference = 1e-7;

    /// <summary>Solves from a start; scales are typical sizes of the unknowns.</summary>
    /// <returns>J at the solution, factored; null if it was not found.</returns>
    public static double[,]? Solve(IResidual<R1> system, double[] x, double[] scale, double[] size, double tolerance = 1e-11)
    {
        int n = x.Length;
        R1[] at = new R1[n];
        R1[] f = new R1[n];
        double[] value = new double[n];
        if (!Evaluate(system, x, at, f, value))
        {
            return null;
        }

        double norm = Norm(value, size);
        for (int step = 0; step < MostSteps; step++)
        {
            double[,]? inverse = InverseJacobian(system, x, scale);
            if (inverse is null)
            {
                return null;
            }

            if (norm < tolerance)
            {
                return inverse;
            }

            double[] move = Times(inverse, value);
            double share = 1.0;
            double[] next = new double[n];
            double[] nextValue = new double[n];
            bool better = false;
            for (int half = 0; half < 30 && !better; half++, share *= 0.5)
            {
                for (int i = 0; i < n; i++)
                {
                    next[i] = x[i] - (share * move[i]);
                }

                better = Evaluate(system, next, at, f, nextValue) && Norm(nextValue, size) < norm * (1.0 - (1e-4 * share));
            }

            if (!better)
            {
                // rounding stops it close by
                return norm < 1e3 * tolerance ? inverse : null;
            }

            next.CopyTo(x, 0);
            nextValue.CopyTo(value, 0);
            norm = Norm(value, size);
        }

        return null;
    }

    /// <summary>Carries a solution to a number type with slopes.</summary>
    public static T[] Carry<T>(IResidual<T> system, double[] x, double[,] inverse)
        where T : struct, IReal<T>
    {
        int n = x.Length;
        T[] y = new T[n];
        for (int i = 0; i < n; i++)
        {
            y[i] = x[i];
        }

        T[] f = new T[n];
        for (int step = 0; step < CarrySteps; step++)
        {
            system.Evaluate(y, f);
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    y[i] = y[i] - (inverse[i, j] * f[j]);
                }
            }
        }

        return y;
    }

    private static bool Evaluate(IResidual<R1> system, double[] x, R1[] at, R1[] f, double[] value)
    {
        for (int i = 0; i < x.Length; i++)
        {
            at[i] = x[i];
        }

        bool ok = system.Evaluate(at, f);
        for (int i = 0; i < x.Length; i++)
        {
            value[i] = f[i].Value;
            ok &= double.IsFinite(value[i]);
        }

        return ok;
    }

    private static double Norm(double[] f, double[] size)
    {
        double norm = 0.0;
        for (int i = 0; i < f.Length; i++)
        {
            norm = Math.Max(norm, Math.Abs(f[i]) / size[i]);
        }

        return norm;
    }

    // by central differences
    private static double[,]? InverseJacobian(IResidual<R1> system, double[] x, double[] scale)
    {
        int n = x.Length;
        double[,] j = new double[n, 2 * n];
        R1[] at = new R1[n];
        R1[] f = new R1[n];
        double[] above = new double[n];
        double[] below = new double[n];
        for (int c = 0; c < n; c++)
        {
            double h = Difference * Math.Max(scale[c], Math.Abs(x[c]));
            double kept = x[c];
            x[c] = kept + h;
            bool ok = Evaluate(system, x, at, f, above);
            x[c] = kept - h;
            ok &= Evaluate(system, x, at, f, below);
            x[c] = kept;
            for (int r = 0; r < n; r++)
            {
                j[r, c] = ok ? (above[r] - below[r]) / (2.0 * h) : double.NaN;
                j[r, n + c] = r == c ? 1.0 : 0.0;
            }
        }

        return Invert(j, n);
    }

    // Gauss and Jordan with row pivots
    private static double[,]? Invert(double[,] j, int n)
    {
        for (int c = 0; c < n; c++)
        {
            int pivot = c;
            for (int r = c + 1; r < n; r++)
            {
                pivot = Math.Abs(j[r, c]) > Math.Abs(j[pivot, c]) ? r : pivot;
            }

            double p = j[pivot, c];
            if (p == 0.0 || !double.IsFinite(p))
            {
                return null;
            }

            for (int k = 0; k < 2 * n; k++)
            {
                (j[pivot, k], j[c, k]) = (j[c, k], j[pivot, k]);
                j[c, k] /= p;
            }

            for (int r = 0; r < n; r++)
            {
                double factor = j[r, c];
                for (int k = 0; r != c && k < 2 * n; k++)
                {
                    j[r, k] -= factor * j[c, k];
                }
            }
        }

        double[,] inverse = new double[n, n];
        for (int r = 0; r < n; r++)
        {
            for (int c = 0; c < n; c++)
            {
                inverse[r, c] = j[r, n + c];
            }
        }

        return inverse;
    }

    private static double[] Times(double[,] a, double[] b)
    {
        double[] x = new double[b.Length];
        for (int r = 0; r < b.Length; r++)
        {
            for (int c = 0; c < b.Length; c++)
            {
                x[r] += a[r, c] * b[c];
            }
        }

        return x;
    }
}
