namespace PushSim.Tests.Oracle;

/// <summary>One bristle of three components: z' = v - (alpha |v|/z_max + r) z, T = -mu N (z + t z')/max(|z + t z'|, z_max).</summary>
/// <param name="friction">mu [1].</param>
/// <param name="most">z_max [m].</param>
internal sealed class OracleRub(double friction, double most)
{
    private const double Elastic = 0.8;
    private const double Damping = 2e-3;
    private const double InAir = 1e-3;
    private Vector _z;

    /// <summary>Apart, the bristle relaxes as that of a lifted tyre does.</summary>
    public void Rest(double h) => _z = (1.0 / (1.0 + (h / InAir))) * _z;

    /// <summary>Force on what slips.</summary>
    /// <param name="h">Step [s].</param>
    /// <param name="normal">N [N].</param>
    /// <param name="n">Its direction.</param>
    /// <param name="slip">Velocity of what slips against the other body [m/s].</param>
    /// <param name="forget">r [1/s].</param>
    public Vector Pull(double h, double normal, Vector n, Vector slip, double forget)
    {
        Vector v = slip - (n.Dot(slip) * n);
        Vector q = _z - (n.Dot(_z) * n) + (h * v);
        Vector along = (n.Dot(_z) / (1.0 + (h / InAir))) * n;
        double trial = q.Length;
        double speed = trial > 0.0 ? Math.Max(0.0, v.Dot(q) / trial) : 0.0;
        double m = OracleSwitch.Length(trial, h, speed / most, forget, most, Elastic, false);
        double decay = (OracleSwitch.Alpha(m, most, Elastic, false) * speed / most) + forget;
        Vector z = trial > 0.0 ? (m / trial) * q : default;
        _z = z + along;
        Vector pulled = z + (Damping * (v - (decay * z)));
        return (-friction * normal / Math.Max(pulled.Length, most)) * pulled;
    }
}
