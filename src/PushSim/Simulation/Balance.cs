using PushSim.Contact;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>How far a robot may tilt in each direction before it falls over by itself: where its centre of mass stands highest over what it then rolls on, corners of its body or
/// rims of its wheels. Tilted by an angle t towards a direction u of its plan, with d = (u sin t, -cos t),
/// <code>
///   height(t) = max( corners: p.d,  wheels: hub.d + R sqrt(d_x^2 + d_z^2) )
/// </code>
/// and the balance point is the first maximum of it.</summary>
internal sealed class Balance
{
    private const int Directions = 8;

    // Step of the search [rad].
    private const double Step = Math.PI / 720.0;

    private readonly double[] _angle = new double[Directions];
    private readonly double _least;

    /// <param name="robot">The robot.</param>
    public Balance(RobotSettings robot)
    {
        ContactBody body = SceneBuilder.Body(robot);
        (double X, double Y, double Z)[] corners = [.. body.Parts.SelectMany(p => p.Corners)];
        (double X, double Y, double Z, double R)[] wheels = [.. robot.Wheels.Select((_, i) => Wheel(robot, i))];
        for (int k = 0; k < Directions; k++)
        {
            (double sine, double cosine) = Math.SinCos(k * Math.Tau / Directions);
            _angle[k] = First(corners, wheels, cosine, sine);
        }

        _least = _angle.Min();
    }

    /// <summary>Whether a tilt is past the balance point.</summary>
    /// <param name="roll">State of roll [1].</param>
    /// <param name="pitch">State of pitch [1].</param>
    public bool IsPast(double roll, double pitch)
    {
        double tilt = Tilt.Whole(roll, pitch);
        if (tilt <= _least)
        {
            return false;
        }

        // nose down falls forward, left side up falls to the right
        double direction = Math.Atan2(-roll, pitch) / Math.Tau * Directions;
        double place = direction < 0.0 ? direction + Directions : direction;
        int before = Math.Min((int)place, Directions - 1);
        double share = place - before;
        double angle = ((1.0 - share) * _angle[before]) + (share * _angle[(before + 1) % Directions]);
        return tilt > angle;
    }

    /// <summary>Balance angle forward (0), to the left (2), backward (4) or to the right (6), and between [rad].</summary>
    public double Angle(int direction) => _angle[direction];

    private static (double X, double Y, double Z, double R) Wheel(RobotSettings robot, int index)
    {
        WheelParameters<R1> p = ModelBuilder.WheelGeometry<R1>(robot, index);
        return (p.X.Value, p.Y.Value, p.HubZ.Value, p.Radius.Value);
    }

    private static double First((double X, double Y, double Z)[] corners, (double X, double Y, double Z, double R)[] wheels, double ux, double uy)
    {
        double last = Height(0.0);
        double angle = 0.0;
        while (angle < Math.PI)
        {
            double next = Height(angle + Step);
            if (next < last)
            {
                return angle;
            }

            (last, angle) = (next, angle + Step);
        }

        return Math.PI;

        double Height(double t)
        {
            (double sine, double cosine) = Math.SinCos(t);
            double most = double.NegativeInfinity;
            foreach ((double x, double y, double z) in corners)
            {
                most = Math.Max(most, (((x * ux) + (y * uy)) * sine) - (z * cosine));
            }

            foreach ((double x, double y, double z, double r) in wheels)
            {
                most = Math.Max(most, (((x * ux) + (y * uy)) * sine) - (z * cosine) + (r * double.Hypot(ux * sine, cosine)));
            }

            return most;
        }
    }
}
