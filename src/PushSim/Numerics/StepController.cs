namespace PushSim.Numerics;

/// <summary>Proportional-integral control of the step: after an accepted step h_new = h S e_n^-(0.7/k) e_(n-1)^(0.4/k), with
/// k = embedded order + 1; after a rejection h_new = h S e_n^(-1/k), and the step does not grow just behind a rejection.
/// Source: K. Gustafsson, ACM Transactions on Mathematical Software 17 (1991) 533-554; gains as in Hairer, Norsett,
/// Wanner, Solving Ordinary Differential Equations I, section II.4 (from memory).</summary>
internal static class StepController
{
    /// <summary>S: share of the predicted step taken [1]; usual 0.8 to 0.95, nearer 1 gives more rejections.</summary>
    internal const double Safety = 0.9;

    /// <summary>Strongest cut of the step in one go [1]; also the answer to a trial that is not finite.</summary>
    internal const double SmallestFactor = 0.2;

    /// <summary>Strongest growth of the step in one go [1]; above 10 the estimate is no longer trusted.</summary>
    internal const double LargestFactor = 5.0;

    /// <summary>Floor of the error remembered [1]; without it one very small error stalls the growth of the next step.</summary>
    internal const double SmallestError = 1e-4;

    /// <summary>The exponents 0.7/k and 0.4/k after an acceptance, 1/k after a rejection [1].</summary>
    /// <param name="embeddedOrder">Order of the embedded weights [1].</param>
    internal static (double Proportional, double Integral, double Single) Gains(int embeddedOrder)
    {
        double k = embeddedOrder + 1;
        return (0.7 / k, 0.4 / k, 1.0 / k);
    }

    /// <summary>x to the exponent [1]. The platform's own power function differs between systems in the last bit; this one gives the same steps everywhere.</summary>
    internal static double Power(double x, double exponent)
    {
        R1 logarithm = SoftFunctions.Log<R1>(Math.Clamp(x, 1e-300, 1e300));
        return SoftFunctions.Exp<R1>(exponent * logarithm.Value).Value;
    }
}
