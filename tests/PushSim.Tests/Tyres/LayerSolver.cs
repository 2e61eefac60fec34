using MathNet.Numerics.LinearAlgebra;

namespace PushSim.Tests.Tyres;

/// <summary>
/// Plane strain contact on an elastic layer bonded to a rigid base, solved numerically: the source of the engine's table. Lengths in layer
/// thicknesses, pressure in E*/2, parabola's radius 1 (the solution scales with it).
/// <code>
/// (1/pi) int p(s) K(x - s) ds = u(x),    K(t) = int_0^inf L(w)/w cos(w t) dw = -ln|t| + M(t)
/// normal      L = (2 k sinh 2w - 4w)/(2 k cosh 2w + 1 + k^2 + 4 w^2)      k = 3 - 4 nu
/// tangential  L = (2 k sinh 2w + 4w)/(the same)
/// p = sum b_m T_2m(s/a)/sqrt(1 - (s/a)^2)
/// </code>
/// Kernel of the bonded layer: Johnson, Contact Mechanics, ch. 5, and Alexandrov's work on layers (from memory); the limits of w are tested.
/// Normal and tangential problem are taken apart, as the pressure has no friction and the shear no lift.
/// </summary>
internal sealed class LayerSolver
{
    private const int Terms = 14;
    private const int Points = 36;
    private const int Panels = 60;
    private const double LastWave = 42.0;

    private static readonly double[] GaussPoint = [0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363];
    private static readonly double[] GaussWeight = [0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

    private readonly List<(double Wave, double Weight)> _kernel = [];
    private readonly double _half;
    private readonly Matrix<double> _matrix;

    public LayerSolver(double poisson, double halfLength, bool tangential)
    {
        _half = halfLength;
        double k = 3.0 - (4.0 * poisson);
        for (int i = 0; i < Panels; i++)
        {
            double h = LastWave / Panels;
            for (int j = 0; j < 8; j++)
            {
                double g = j < 4 ? -GaussPoint[j] : GaussPoint[j - 4];
                double w = h * (i + 0.5 + (0.5 * g));
                _kernel.Add((w, 0.5 * h * GaussWeight[j % 4] * (Compliance(w, k, tangential) - 1.0 + Math.Exp(-w)) / w));
            }
        }

        Matrix<double> smooth = Matrix<double>.Build.Dense(Terms, Points, (i, j) => Smooth(_half * (Node(i) - Math.Cos(Angle(j)))));
        _matrix = Matrix<double>.Build.Dense(Terms, Terms, (i, m) => Entry(i, m, smooth));
    }

    /// <summary>Share of the half-space's compliance at wave number w, L.</summary>
    public static double Compliance(double w, double k, bool tangential)
    {
        double sinh = Math.Sinh(2.0 * w);
        double cosh = Math.Cosh(2.0 * w);
        return ((2.0 * k * sinh) + (tangential ? 4.0 * w : -4.0 * w)) / ((2.0 * k * cosh) + 1.0 + (k * k) + (4.0 * w * w));
    }

    /// <summary>Force per unit shift of a rigid strip of this half length, in E*/2 per width: dN/d(delta) of any smooth indenter with this contact.</summary>
    public double StripStiffness() => Math.PI * _half * Solve(_ => 1.0)[0];

    /// <summary>Load and approach of a parabola of radius 1 with this contact.</summary>
    public (double Load, double Squash) Parabola()
    {
        Vector<double> one = Solve(_ => 1.0);
        Vector<double> bend = Solve(x => 0.5 * x * x);

        // no pressure at the ends: the coefficients sum to zero there
        double squash = bend.Sum() / one.Sum();
        return (Math.PI * _half * ((squash * one[0]) - bend[0]), squash);
    }

    private Vector<double> Solve(Func<double, double> shift) =>
        _matrix.Solve(Vector<double>.Build.Dense(Terms, i => shift(_half * Node(i))));

    private static double Node(int i) => Math.Cos(Math.PI * (i + 0.5) / (2 * Terms));

    private static double Angle(int j) => Math.PI * (j + 0.5) / Points;

    private double Entry(int i, int m, Matrix<double> smooth)
    {
        double x = Node(i);
        double log = m == 0 ? Math.Log(2.0 / _half) : Math.Cos(2 * m * Math.Acos(x)) / (2 * m);
        double sum = 0.0;
        for (int j = 0; j < Points; j++)
        {
            sum += Math.Cos(2 * m * Angle(j)) * smooth[i, j] / Points;
        }

        return _half * (log + sum);
    }

    // M(t) = K(t) + ln|t|, with int (1 - exp(-w))/w cos(w t) dw = ln(1 + 1/t^2)/2
    private double Smooth(double t)
    {
        double sum = 0.5 * Math.Log(1.0 + (t * t));
        foreach ((double wave, double weight) in _kernel)
        {
            sum += weight * Math.Cos(wave * t);
        }

        return sum;
    }
}
