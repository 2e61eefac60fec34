namespace PushSim.Contact;

/// <summary>Damping from restitution. Hunt and Crossley's factor 1 + lambda v of the closing speed v, whatever the stiffness and the shape of the spring, gives back
/// the share e of the closing speed where
/// <code>
///   lambda v - ln(1 + lambda v) = -lambda e v - ln(1 - lambda e v)
/// </code>
/// exactly (the equation of motion d v/d depth = -(1 + lambda v) F/(m v) separates; J. Appl. Mech. 42:440-445, 1975, gives the law). So e falls as v grows: it is stated
/// at one speed.</summary>
public static class Restitution
{
    /// <summary>Closing speed at which restitution is stated [m/s].</summary>
    public const double StatedSpeed = 1.0;

    private const int Halvings = 200;

    /// <summary>lambda that gives back a share at a closing speed [s/m].</summary>
    /// <param name="share">e, above 0, at most 1 [1].</param>
    /// <param name="speed">v [m/s].</param>
    public static double Damping(double share, double speed = StatedSpeed)
    {
        // x (1 + e) = ln((1 + x)/(1 - e x)), x = lambda v below 1/e; the right side starts below and ends above
        double low = 0.0;
        double high = 1.0 / share;
        for (int i = 0; i < Halvings && low < high; i++)
        {
            double x = 0.5 * (low + high);
            bool isLess = x * (1.0 + share) > Math.Log((1.0 + x) / (1.0 - (share * x)));
            (low, high) = isLess ? (x, high) : (low, x);
        }

        return share >= 1.0 ? 0.0 : 0.5 * (low + high) / speed;
    }

    /// <summary>Share that comes back at a closing speed [1].</summary>
    /// <param name="damping">lambda [s/m].</param>
    /// <param name="speed">v [m/s].</param>
    public static double Share(double damping, double speed)
    {
        double x = damping * speed;
        if (!(x > 0.0))
        {
            return 1.0;
        }

        double lost = x - Math.Log(1.0 + x);
        double low = 0.0;
        double high = Math.Min(1.0, 1.0 / x);
        for (int i = 0; i < Halvings; i++)
        {
            double e = 0.5 * (low + high);
            bool isLess = -(e * x) - Math.Log(1.0 - (e * x)) < lost;
            (low, high) = isLess ? (e, high) : (low, e);
        }

        return 0.5 * (low + high);
    }
}
