using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Season;

/// <summary>
/// How friction fades from a fresh floor on: what is left of the fresh value after n is f + (1 - f) exp(-n / N), the engine's own law of fouling with dust (a first-order approach to the
/// fouled value).
/// </summary>
/// <param name="Fouled">What is left of the fresh value in the end, f [1].</param>
/// <param name="Scale">Count over which it fades, N: pulls [1] or metres [m].</param>
/// <param name="IsInMetres">Whether it is counted in metres.</param>
/// <param name="Longest">Longest count of the series, in the same unit [1].</param>
public sealed record Fading(Interval Fouled, Interval Scale, bool IsInMetres, double Longest)
{
    /// <summary>What is left of the fresh value after a count [1].</summary>
    /// <param name="count">Pulls or metres [1].</param>
    public double Left(double count) => Left(Fouled.Value, Scale.Value, count);

    /// <summary>The law.</summary>
    /// <param name="fouled">What is left in the end [1].</param>
    /// <param name="scale">Count over which it fades [1].</param>
    /// <param name="count">Pulls or metres [1].</param>
    public static double Left(double fouled, double scale, double count) => fouled + ((1.0 - fouled) * Math.Exp(-count / scale));
}
