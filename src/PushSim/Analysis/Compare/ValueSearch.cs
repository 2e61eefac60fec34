using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace PushSim.Analysis.Compare;

/// <summary>The least of a function of a few numbers, by the simplex of Nelder and Mead (Computer Journal 7, 1965); it begins at zero.</summary>
public static class ValueSearch
{
    /// <summary>The best point found.</summary>
    /// <param name="misfit">The function; it may answer something large where it has no value.</param>
    /// <param name="count">How many numbers [1].</param>
    /// <param name="firstStep">Size of the first simplex [unit of the numbers].</param>
    /// <param name="lastStep">Size of the last one [unit of the numbers].</param>
    /// <param name="most">Steps at most [1].</param>
    public static double[] Least(Func<double[], double> misfit, int count, double firstStep, double lastStep, int most)
    {
        double[] best = new double[count];
        double least = double.PositiveInfinity;
        double Asked(Vector<double> x)
        {
            double[] point = [.. x];
            double value = misfit(point);
            (best, least) = value < least ? (point, value) : (best, least);
            return value;
        }

        try
        {
            _ = NelderMeadSimplex.Minimum(ObjectiveFunction.Value(Asked), Vector<double>.Build.Dense(count), Vector<double>.Build.Dense(count, firstStep), lastStep, most);
        }
        catch (MaximumIterationsException)
        {
            // the best so far counts
        }

        return best;
    }
}
