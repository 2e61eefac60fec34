namespace PushSim.Numerics;

/// <summary>First step of a segment from the sizes of y, y' and a difference quotient of y', in tolerances. Source: E. Hairer, S. P. Norsett,
/// G. Wanner, Solving Ordinary Differential Equations I, section II.4 (from memory).</summary>
internal static class FirstStep
{
    /// <summary>A step from the sizes alone, to take the difference quotient over [s].</summary>
    /// <param name="size">Norm of y [1].</param>
    /// <param name="slope">Norm of y' [1/s].</param>
    /// <param name="longest">Longest step that makes sense, the rest of the segment [s].</param>
    internal static double Guess(double size, double slope, double longest)
    {
        double h = size < 1e-5 || slope < 1e-5 ? 1e-6 : 0.01 * size / slope;
        return Math.Min(h, longest);
    }

    /// <summary>The first step, positive [s].</summary>
    /// <param name="guess">The guess [s].</param>
    /// <param name="slope">Norm of y' [1/s].</param>
    /// <param name="change">Norm of the change of y' over the guess [1/s].</param>
    /// <param name="embeddedOrder">Order of the embedded weights [1].</param>
    /// <param name="longest">Longest step that makes sense, the rest of the segment [s].</param>
    internal static double Of(double guess, double slope, double change, int embeddedOrder, double longest)
    {
        double steepest = Math.Max(slope, change / guess);
        double fine = steepest <= 1e-15
            ? Math.Max(1e-6, 1e-3 * guess)
            : StepController.Power(0.01 / steepest, 1.0 / (embeddedOrder + 1));
        double h = double.IsFinite(fine) ? Math.Min(100.0 * guess, fine) : guess;
        return Math.Min(h, longest);
    }
}
