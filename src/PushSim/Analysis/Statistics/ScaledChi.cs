using MathNet.Numerics;

namespace PushSim.Analysis.Statistics;

/// <summary>Sample deviation over true deviation: the root of chi squared over its degrees of freedom.</summary>
internal static class ScaledChi
{
    // It hardly ever lies farther from 1 than this many of its deviations, 1/sqrt(2 f) each [1].
    private const double Reach = 12.0;

    // Of Simpson's rule [1].
    private const int Steps = 1000;

    // Below this many degrees of freedom the density rises from 0 too steeply for even steps: they are even in the fourth root then [1].
    private const double FewFreedom = 2.0;
    private const double Root = 4.0;

    /// <summary>Mean of a function of it, by Simpson's rule over its density [the function's unit].</summary>
    /// <param name="freedom">Degrees of freedom, also broken [1].</param>
    /// <param name="of">The function of the ratio [1].</param>
    public static double Mean(double freedom, Func<double, double> of) => Mean(freedom, of, Steps);

    /// <summary>The same in steps ten times as wide, for a function that is a mean itself: good to 1e-4 of a smooth one.</summary>
    /// <param name="freedom">Degrees of freedom, also broken [1].</param>
    /// <param name="of">The function of the ratio [1].</param>
    public static double Coarse(double freedom, Func<double, double> of) => Mean(freedom, of, Steps / 10);

    private static double Mean(double freedom, Func<double, double> of, int steps)
    {
        double width = Reach / Math.Sqrt(2.0 * freedom);
        double low = Math.Max(0.0, 1.0 - width);
        double power = freedom < FewFreedom ? Root : 1.0;
        double step = (Math.Pow(1.0 + width, 1.0 / power) - low) / steps;
        double logScale = Math.Log(2.0) + (0.5 * freedom * Math.Log(0.5 * freedom)) - SpecialFunctions.GammaLn(0.5 * freedom);
        double sum = 0.0;
        for (int i = 0; i <= steps; i++)
        {
            double root = low + (i * step);
            double s = Math.Pow(root, power);
            double density = s > 0.0 ? Math.Exp(logScale + ((freedom - 1.0) * Math.Log(s)) - (0.5 * freedom * s * s)) : 0.0;
            double weight = i == 0 || i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
            sum += weight * density * power * Math.Pow(root, power - 1.0) * of(s);
        }

        return sum * step / 3.0;
    }
}
