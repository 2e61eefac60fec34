namespace PushSim.Tests.Problems;

/// <summary>Seven masses m_i = i in the plane under gravity, G = 1.</summary>
public sealed class Pleiades : Problem
{
    public override string Name => "Pleiades";

    public override string Equation => "x_i'' = sum_j m_j (x_j - x_i)/r_ij^3, y likewise; state x, y, x', y'";

    public override string Source => "end positions as printed, identically, in several published solver test suites";

    public override double[] Start =>
    [
        3, 3, -1, -3, 2, -2, 2,
        3, -3, 2, 0, 0, -4, 4,
        0, 0, 0, 0, 0, 1.75, -1.5,
        0, 0, 0, -1.25, 1, 0, 0,
    ];

    public override double End => 3.0;

    public override double[] Reference =>
    [
        0.3706139143970502, 3.237284092057233, -3.222559032418324, 0.6597091455775310,
        0.3425581707156584, 1.562172101400631, -0.7003092922212495,
        -3.943437585517392, -3.271380973972550, 5.225081843456543, -2.590612434977470,
        1.198213693392275, -0.2429682344935824, 1.091449240428980,
        .. Enumerable.Repeat(double.NaN, 14),
    ];

    protected override void Rates(double t, double g, Span<double> y, Span<double> dy)
    {
        for (int i = 0; i < 7; i++)
        {
            (double ax, double ay) = (0.0, 0.0);
            for (int j = 0; j < 7; j++)
            {
                if (j == i)
                {
                    continue;
                }

                double dx = y[j] - y[i];
                double dyj = y[7 + j] - y[7 + i];
                double r = Math.Sqrt((dx * dx) + (dyj * dyj));
                ax += (j + 1) * dx / (r * r * r);
                ay += (j + 1) * dyj / (r * r * r);
            }

            (dy[i], dy[7 + i], dy[14 + i], dy[21 + i]) = (y[14 + i], y[21 + i], ax, ay);
        }
    }
}
