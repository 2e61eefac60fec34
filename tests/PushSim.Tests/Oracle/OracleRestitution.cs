namespace PushSim.Tests.Oracle;

/// <summary>Damping lambda of a force k d (1 + lambda d') that gives a share of 1 m/s back.</summary>
internal static class OracleRestitution
{
    /// <summary>lambda [s/m] with lambda - ln(1 + lambda) = -lambda e - ln(1 - lambda e), by halving.</summary>
    /// <param name="share">e [1].</param>
    public static double Damping(double share)
    {
        if (share >= 1.0)
        {
            return 0.0;
        }
        double low = 1e-9;
        double high = (1.0 - 1e-12) / Math.Max(share, 1e-9);
        for (int i = 0; i < 200; i++)
        {
            double middle = 0.5 * (low + high);
            double off = middle - Math.Log(1.0 + middle) + (middle * share) + Math.Log(1.0 - (middle * share));
            (low, high) = off > 0.0 ? (middle, high) : (low, middle);
        }
        return 0.5 * (low + high);
    }
}
