using PushSim.Contact;
using PushSim.Numerics;

namespace PushSim.Tests.Contact;

/// <summary>Two free rigid bodies moved by their contact, and gravity if asked for: classical fourth-order Runge-Kutta on places, quaternions, momenta and bristles. Its
/// equations of a rigid body share nothing with the engine's.</summary>
internal sealed class FreeBodies
{
    // per body: place, quaternion from body to floor, velocity, turning about the body's axes; then bristles and lost energy
    private const int PerBody = 13;

    private readonly ContactPair<R1> _pair;
    private readonly double[] _mass;
    private readonly double[][] _inertia;
    private readonly bool[] _fixed;
    private double[] _y;

    /// <param name="pair">The contact.</param>
    /// <param name="masses">An infinite one stays where it is.</param>
    /// <param name="inertias">About x, y and z of each body [kg m^2].</param>
    public FreeBodies(ContactPair<R1> pair, (double A, double B) masses, (double[] A, double[] B) inertias)
    {
        _pair = pair;
        _mass = [masses.A, masses.B];
        _inertia = [inertias.A, inertias.B];
        _fixed = [.. _mass.Select(double.IsInfinity)];
        _y = new double[(2 * PerBody) + ContactPair<R1>.BristleCount + 1];
    }

    /// <summary>Downward gravity [m/s^2].</summary>
    public double Gravity { get; init; }

    /// <summary>Normal force of the last evaluation [N].</summary>
    public double Force { get; private set; }

    /// <summary>Energy lost in the contact [J].</summary>
    public double Lost => _y[^1];

    /// <summary>Puts a body somewhere with a heading and a pitch.</summary>
    public void Place(int body, double x, double y, double z, double heading = 0.0, double pitch = 0.0, double vx = 0.0, double vy = 0.0, double vz = 0.0)
    {
        (double sh, double ch) = Math.SinCos(0.5 * heading);
        (double sp, double cp) = Math.SinCos(0.5 * pitch);
        double[] state = [x, y, z, ch * cp, -sh * sp, ch * sp, sh * cp, vx, vy, vz, 0.0, 0.0, 0.0];
        state.CopyTo(_y, PerBody * body);
    }

    /// <summary>Turns a body by a heading first, then about the floor's y axis, nose down.</summary>
    public void PlaceTurned(int body, (double X, double Y, double Z) place, double pitch, double heading, double vx)
    {
        (double sh, double ch) = Math.SinCos(0.5 * heading);
        (double sp, double cp) = Math.SinCos(0.5 * pitch);
        double[] state = [place.X, place.Y, place.Z, ch * cp, sh * sp, ch * sp, sh * cp, vx, 0.0, 0.0, 0.0, 0.0, 0.0];
        state.CopyTo(_y, PerBody * body);
    }

    /// <summary>One of a body's states: 0 to 2 place, 7 to 9 velocity, 10 to 12 turning.</summary>
    public double State(int body, int index) => _y[(PerBody * body) + index];

    /// <summary>Angle of a body's x axis below level [rad].</summary>
    public double Pitch(int body) => Math.Asin(-Pose(_y, body).ZX.Value);

    public double KineticEnergy()
    {
        double sum = 0.0;
        for (int b = 0; b < 2; b++)
        {
            for (int k = 0; k < 3 && !_fixed[b]; k++)
            {
                sum += 0.5 * _mass[b] * State(b, 7 + k) * State(b, 7 + k);
                sum += 0.5 * _inertia[b][k] * State(b, 10 + k) * State(b, 10 + k);
            }
        }

        return sum;
    }

    /// <summary>Momentum, then angular momentum about the origin, floor axes.</summary>
    public double[] Momentum()
    {
        double[] sum = new double[6];
        for (int b = 0; b < 2; b++)
        {
            BodyPose<R1> p = Pose(_y, b);
            double[] v = [_mass[b] * State(b, 7), _mass[b] * State(b, 8), _mass[b] * State(b, 9)];
            double[] x = [State(b, 0), State(b, 1), State(b, 2)];
            p.ToFloor(_inertia[b][0] * State(b, 10), _inertia[b][1] * State(b, 11), _inertia[b][2] * State(b, 12), out R1 lx, out R1 ly, out R1 lz);
            double[] l = [lx.Value, ly.Value, lz.Value];
            for (int k = 0; k < 3; k++)
            {
                sum[k] += v[k];
                sum[3 + k] += l[k] + (x[(k + 1) % 3] * v[(k + 2) % 3]) - (x[(k + 2) % 3] * v[(k + 1) % 3]);
            }
        }

        return sum;
    }

    /// <summary>Runs on, and tells each step.</summary>
    public void Run(double time, double step, Action? each = null)
    {
        for (double t = 0.0; t < time; t += step)
        {
            Step(step);
            each?.Invoke();
        }
    }

    /// <summary>Runs from touch until the force has gone, to the instant.</summary>
    public void RunUntilApart(double step)
    {
        Step(step);
        while (step > 1e-13)
        {
            double[] before = [.. _y];
            Step(step);
            Rates(_y);
            if (Force == 0.0)
            {
                _y = before;
                step *= 0.5;
            }
        }
    }

    private void Step(double h)
    {
        double[] k1 = Rates(_y);
        double[] k2 = Rates(Along(k1, 0.5 * h));
        double[] k3 = Rates(Along(k2, 0.5 * h));
        double[] k4 = Rates(Along(k3, h));
        for (int i = 0; i < _y.Length; i++)
        {
            _y[i] += h / 6.0 * (k1[i] + (2.0 * (k2[i] + k3[i])) + k4[i]);
        }
    }

    private double[] Along(double[] k, double h) => [.. _y.Select((y, i) => y + (h * k[i]))];

    private double[] Rates(double[] y)
    {
        BodyPose<R1>[] pose = [Pose(y, 0), Pose(y, 1)];
        R1[] z = [.. y[(2 * PerBody)..^1].Select(x => (R1)x)];
        Touching.Outcome o = Touching.Evaluate(_pair, pose[0], pose[1], 0.0, z);
        Force = _pair.NormalForce.Value;
        var rates = new double[y.Length];
        for (int b = 0; b < 2; b++)
        {
            if (_fixed[b])
            {
                continue;
            }

            Span<double> r = rates.AsSpan(PerBody * b, PerBody);
            ReadOnlySpan<double> s = y.AsSpan(PerBody * b, PerBody);
            double sign = b == 0 ? 1.0 : -1.0;
            double[] moment = b == 0 ? o.OnA : o.OnB;
            pose[b].ToBody(moment[0], moment[1], moment[2], out R1 mx, out R1 my, out R1 mz);
            double[] m = [mx.Value, my.Value, mz.Value];
            (double p, double q, double w) = (s[10], s[11], s[12]);
            (r[3], r[4], r[5], r[6]) = (
                0.5 * (-(s[4] * p) - (s[5] * q) - (s[6] * w)),
                0.5 * ((s[3] * p) + (s[5] * w) - (s[6] * q)),
                0.5 * ((s[3] * q) + (s[6] * p) - (s[4] * w)),
                0.5 * ((s[3] * w) + (s[4] * q) - (s[5] * p)));
            for (int k = 0; k < 3; k++)
            {
                r[k] = s[7 + k];
                r[7 + k] = (sign * o.Force[k] / _mass[b]) - (k == 2 ? Gravity : 0.0);
                double gyro = (_inertia[b][(k + 2) % 3] - _inertia[b][(k + 1) % 3]) * s[10 + ((k + 1) % 3)] * s[10 + ((k + 2) % 3)];
                r[10 + k] = (m[k] - gyro) / _inertia[b][k];
            }
        }

        o.Rates.CopyTo(rates, 2 * PerBody);
        rates[^1] = _pair.LostPower.Value;
        return rates;
    }

    private static BodyPose<R1> Pose(double[] y, int body)
    {
        ReadOnlySpan<double> s = y.AsSpan(PerBody * body, PerBody);
        double n = 1.0 / Math.Sqrt((s[3] * s[3]) + (s[4] * s[4]) + (s[5] * s[5]) + (s[6] * s[6]));
        (double w, double a, double b, double c) = (n * s[3], n * s[4], n * s[5], n * s[6]);
        var pose = new BodyPose<R1>
        {
            X = s[0],
            Y = s[1],
            Z = s[2],
            XX = 1.0 - (2.0 * ((b * b) + (c * c))),
            XY = 2.0 * ((a * b) - (w * c)),
            XZ = 2.0 * ((a * c) + (w * b)),
            YX = 2.0 * ((a * b) + (w * c)),
            YY = 1.0 - (2.0 * ((a * a) + (c * c))),
            YZ = 2.0 * ((b * c) - (w * a)),
            ZX = 2.0 * ((a * c) - (w * b)),
            ZY = 2.0 * ((b * c) + (w * a)),
            ZZ = 1.0 - (2.0 * ((a * a) + (b * b))),
            VX = s[7],
            VY = s[8],
            VZ = s[9],
        };
        pose.ToFloor(s[10], s[11], s[12], out pose.WX, out pose.WY, out pose.WZ);
        return pose;
    }
}
