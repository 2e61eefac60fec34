using PushSim.Simulation;

namespace PushSim.Tests.Oracle;

/// <summary>
/// The driver, stepped plainly: the angle to the opponent by the arc tangent, seen as twice the tangent of its half up to the arc
/// cosine of -0.9 and as the sine over a twentieth beyond; three lags of a third of the dead time; a hand of 0.03 s behind limit
/// and rate. Patience counts while less than 2 cm/s are gained and is forgotten within 0.1 s.
/// </summary>
internal sealed class OracleDriver(DriverSettings settings)
{
    private readonly double[] _lags = new double[3];
    private bool _looked;
    private double _stick;
    private double _waited;
    private double _eased;

    /// <summary>The turn command after a step [1].</summary>
    public double Turn(double h, bool drives, double psi, double awayX, double awayY)
    {
        if (settings.Steering == 0.0)
        {
            return 0.0;
        }

        double angle = Math.IEEERemainder(Math.Atan2(awayY, awayX) - psi, 2.0 * Math.PI);
        double seen = Math.Cos(angle) > -0.9 ? 2.0 * Math.Tan(0.5 * angle) : Math.Sin(angle) / 0.05;
        if (!_looked)
        {
            Array.Fill(_lags, seen);
            _looked = true;
        }

        double stick = _stick;
        double wanted = drives ? Math.Clamp(settings.Steering * _lags[2], -settings.SteeringLimit, settings.SteeringLimit) : 0.0;
        _stick += h * Math.Clamp((wanted - _stick) / 0.03, -settings.SteeringRate, settings.SteeringRate);
        for (int i = 2; i >= 0; i--)
        {
            _lags[i] += h * ((i > 0 ? _lags[i - 1] : seen) - _lags[i]) * 3.0 / settings.DeadTime;
        }

        return drives ? stick : 0.0;
    }

    /// <summary>The share of the throttle that is left [1].</summary>
    public double Throttle(double h, bool drives, double speed)
    {
        if (settings.EaseTo == 1.0)
        {
            return 1.0;
        }

        double left = 1.0 - _eased;
        if (_waited >= settings.EaseAfter)
        {
            _eased += h * Math.Clamp((1.0 - settings.EaseTo - _eased) / 0.03, 0.0, settings.EaseRate);
        }
        else if (drives)
        {
            _waited += h * (speed < 0.02 ? 1.0 : -_waited / 0.1);
        }

        return left;
    }
}
