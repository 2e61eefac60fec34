using PushSim.Analysis.Chance;

namespace PushSim.Words.Tables;

/// <summary>A tolerance as a file writes it: "± 0.1", or "×/ 5" where values lie between a fifth and five times the middle.</summary>
public static class ToleranceText
{
    /// <summary>The tolerance behind a value.</summary>
    /// <param name="middle">The value, in any unit; not zero where the tolerance is a factor.</param>
    /// <param name="tolerance">Half-width in the same unit, above zero; of a factor f: (f - 1) times the value.</param>
    /// <param name="shape">How values lie within it.</param>
    /// <param name="digits">Significant digits, 1 to 15.</param>
    public static string Of(double middle, double tolerance, DrawShape shape, int digits) =>
        shape == DrawShape.Factor ? "×/ " + PlainNumber.Of(1.0 + (tolerance / Math.Abs(middle)), digits) : "± " + PlainNumber.Of(tolerance, digits);
}
