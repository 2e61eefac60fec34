namespace PushSim.Tests.Oracle;

/// <summary>
/// One implicit step of a bristle with the elasto-plastic switch, found by bisection.
///
///     z' = v - (alpha(|z|) A + K) z,    A = |v| / z_max,   |v| counting only along z when the switch is on
///     z_new = z_old + h v - h (alpha(|z_new|) A + K) z_new
///
/// z_new keeps the direction of the elastic trial z_old + h v (radial return), so only its length m is unknown:
///
///     m (1 + h K + h A alpha(m)) = |z_old + h v|
/// </summary>
internal static class OracleSwitch
{
    /// <summary>alpha: 0 below b z_max, linear up to 1 at z_max, 1 beyond.</summary>
    public static double Alpha(double m, double zMax, double b, bool plain)
    {
        if (plain || m >= zMax)
        {
            return 1.0;
        }
        return m <= b * zMax ? 0.0 : (m - (b * zMax)) / ((1.0 - b) * zMax);
    }

    /// <summary>Length of the bristle after the step, from the length of its elastic trial.</summary>
    public static double Length(double trial, double h, double decay, double renewal, double zMax, double b, bool plain)
    {
        double elastic = trial / (1.0 + (h * renewal));
        if (plain)
        {
            return trial / (1.0 + (h * (decay + renewal)));
        }
        if (elastic <= b * zMax)
        {
            return elastic;
        }
        double low = 0.0;
        double high = trial;
        for (int k = 0; k < 60 && high - low > 1e-14 * trial; k++)
        {
            double m = 0.5 * (low + high);
            if (m * (1.0 + (h * renewal) + (h * decay * Alpha(m, zMax, b, plain))) > trial)
            {
                high = m;
            }
            else
            {
                low = m;
            }
        }
        return 0.5 * (low + high);
    }
}
