using PushSim.Contact;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>How far a robot may tilt in each direction before it falls over by itself: where its centre of mass stands highest over what it then rolls on, corners of its body or
/// rims of its wheels. Tilted by an angle t towards a direction u of its plan, with d = (u sin t, -cos t),
/// <code>
///   height(t) = max( corners: p.d,  wheels: hub.d + R sqrt(d_x^2 + d_z^2) )
/// </code>
/// and the balance point is the first maximum of it. Heights are looked for as far as the robot has tilted, in all directions at once: most robots never come near.</summary>
internal sealed class Balance
{
    private const int Directions = 8;

    // Step of the search [rad].
    private const double Step = Math.PI / 720.0;

    private static readonly (double Sine, double Cosine)[] s_directions = [.. Enumerable.Range(0, Directions).Select(k => Math.SinCos(k * Math.Tau / Directions))];

    // NaN where it is not found yet
    private readonly double[] _angle = new double[Directions];
    private readonly double[] _height = new double[Directions];
    private readonly (double X, double Y, double Z)[] _corners;
    private readonly (double X, double Y, double Z, double R)[] _wheels;

    // up to where the directions that are left have no maximum [rad]
    private double _searched;
    private int _open = Directions;
    private double _least = double.PositiveInfinity;

    /// <param name="robot">The robot.</param>
    public Balance(RobotSettings robot)
    {
        ContactBody body = SceneBuilder.Body(robot);
        _corners = [.. body.Parts.SelectMany(p => p.Corners)];
        _wheels = [.. robot.Wheels.Select((_, i) => Wheel(robot, i))];
        for (int k = 0; k < Directions; k++)
        {
            _angle[k] = double.NaN;
            _height[k] = Height(k, 0.0, 1.0);
        }
    }

    /// <summary>Whether a tilt is past the balance point.</summary>
    /// <param name="roll">State of roll [1].</param>
    /// <param name="pitch">State of pitch [1].</param>
    public bool IsPast(double roll, double pitch)
    {
        double tilt = Tilt.Whole(roll, pitch);
        while (_searched < tilt && tilt <= _least && _open > 0)
        {
            SearchOn();
        }

        if (tilt <= _least)
        {
            return false;
        }

        // nose down falls forward, left side up falls to the right
        double direction = Math.Atan2(-roll, pitch) / Math.Tau * Directions;
        double place = direction < 0.0 ? direction + Directions : direction;
        int before = Math.Min((int)place, Directions - 1);
        double share = place - before;
        double angle = ((1.0 - share) * Angle(before)) + (share * Angle((before + 1) % Directions));
        return tilt > angle;
    }

    /// <summary>Balance angle forward (0), to the left (2), backward (4) or to the right (6), and between [rad].</summary>
    public double Angle(int direction)
    {
        while (double.IsNaN(_angle[direction]))
        {
            SearchOn();
        }

        return _angle[direction];
    }

    // One step in all directions that have no maximum yet.
    private void SearchOn()
    {
        double next = _searched + Step;
        bool isOver = !(_searched < Math.PI);
        (double sine, double cosine) = Math.SinCos(next);
        for (int k = 0; k < Directions; k++)
        {
            if (!double.IsNaN(_angle[k]))
            {
                continue;
            }

            double height = isOver ? double.NegativeInfinity : Height(k, sine, cosine);
            if (height < _height[k])
            {
                _angle[k] = isOver ? Math.PI : _searched;
                _least = Math.Min(_least, _angle[k]);
                _open--;
            }

            _height[k] = height;
        }

        _searched = next;
    }

    private double Height(int direction, double sine, double cosine)
    {
        (double uy, double ux) = s_directions[direction];
        double most = double.NegativeInfinity;
        foreach ((double x, double y, double z) in _corners)
        {
            most = Math.Max(most, (((x * ux) + (y * uy)) * sine) - (z * cosine));
        }

        foreach ((double x, double y, double z, double r) in _wheels)
        {
            most = Math.Max(most, (((x * ux) + (y * uy)) * sine) - (z * cosine) + (r * double.Hypot(ux * sine, cosine)));
        }

        return most;
    }

    private static (double X, double Y, double Z, double R) Wheel(RobotSettings robot, int index)
    {
        WheelParameters<R1> p = WheelBuilder.Geometry<R1>(robot, index);
        return (p.X.Value, p.Y.Value, p.HubZ.Value, p.Radius.Value);
    }
}
