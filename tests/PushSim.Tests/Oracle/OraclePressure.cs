namespace PushSim.Tests.Oracle;

/// <summary>Pressure of an edge whose depth runs straight from a at s0 to b at s1, with caps at its ends.</summary>
internal static class OraclePressure
{
    private const double CapLength = 0.1;
    private const double Rim = 0.5e-3;

    /// <summary>n0 and ns [m^2].</summary>
    public static (double Area, double Moment) Of(double s0, double s1, double a, double b, double length)
    {
        double h = Math.Max(0.0, a);
        double g = Math.Max(0.0, b);
        double all = Math.Abs(a) + Math.Abs(b);
        if (all == 0.0)
        {
            return (0.0, 0.0);
        }
        double wet = (s1 - s0) * (h + g) / all;
        double from = a < 0.0 ? s1 - wet : s0;
        double to = b < 0.0 ? s0 + wet : s1;
        double cap = 0.25 * CapLength * Math.Min(1.0, (s1 - s0) * length / (2.0 * Rim));
        double l = wet * length;
        return ((h + g) * ((0.5 * l) + cap), (l / 6.0 * ((from * ((2.0 * h) + g)) + (to * ((2.0 * g) + h)))) + (cap * ((h * s0) + (g * s1))));
    }

    /// <summary>Edges that stand on a face leave the pressing to the others' caps [1].</summary>
    public static double Lying(double length, double difference) => Math.Clamp(((0.95 * length) - Math.Abs(difference)) / (0.2 * length), 0.0, 1.0);
}
