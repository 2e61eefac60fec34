using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Numerics;

namespace PushSim.Tests.Contact;

/// <summary>Two bodies level on a smooth floor, moved by their contact alone: classical fourth-order Runge-Kutta, bristles in its explicit stages.</summary>
internal sealed class FreeBodies
{
    // per body: x, y, cosine, sine of the heading turned since, floor velocities, yaw rate; then bristle and lost energy
    private const int PerBody = 6;

    private readonly ContactPair<R1> _pair;
    private readonly double[] _mass, _inertia;
    private readonly double[] _y;
    private readonly BodyPose<R1>[] _start = new BodyPose<R1>[2];

    public FreeBodies(ContactPair<R1> pair, double mass1, double mass2, double inertia1, double inertia2)
    {
        _pair = pair;
        _mass = [mass1, mass2];
        _inertia = [inertia1, inertia2];
        _y = new double[(2 * PerBody) + 1 + pair.BristleCount];
    }

    /// <summary>Contact force of the last evaluation and the greatest at a step [N].</summary>
    public double Force { get; private set; }

    public double Greatest { get; private set; }

    /// <summary>Energy lost in the contact [J].</summary>
    public double Lost => _y[2 * PerBody];

    public void Place(int body, double x, double y, double heading, double vx, double vy, double r) =>
        Place(body, Touching.Still(x, y, heading), vx, vy, r);

    public void Place(int body, in BodyPose<R1> pose, double vx = 0.0, double vy = 0.0, double r = 0.0)
    {
        _start[body] = pose;
        double[] state = [pose.X.Value, pose.Y.Value, 0.0, vx, vy, r];
        state.CopyTo(_y, PerBody * body);
    }

    /// <summary>Floor speed of a body along x or y [m/s], or its yaw rate [rad/s].</summary>
    public double Speed(int body, int axis) => _y[(PerBody * body) + 3 + axis];

    public double KineticEnergy()
    {
        double sum = 0.0;
        for (int b = 0; b < 2; b++)
        {
            sum += 0.5 * _mass[b] * ((Speed(b, 0) * Speed(b, 0)) + (Speed(b, 1) * Speed(b, 1)));
            sum += 0.5 * _inertia[b] * Speed(b, 2) * Speed(b, 2);
        }

        return sum;
    }

    public (double X, double Y, double Spin) Momentum()
    {
        double x = 0.0, y = 0.0, spin = 0.0;
        for (int b = 0; b < 2; b++)
        {
            double px = _mass[b] * Speed(b, 0);
            double py = _mass[b] * Speed(b, 1);
            x += px;
            y += py;
            spin += (_inertia[b] * Speed(b, 2)) + (_y[PerBody * b] * py) - (_y[(PerBody * b) + 1] * px);
        }

        return (x, y, spin);
    }

    public void RunThrough(double time, double step)
    {
        for (double t = 0.0; t < time; t += step)
        {
            Step(step);
        }
    }

    /// <summary>Runs from first touch until the force has gone, to the instant.</summary>
    public void RunUntilApart()
    {
        double step = 2e-6;
        Step(step);
        while (step > 1e-13)
        {
            double[] before = [.. _y];
            Step(step);
            Rates(_y);
            if (Force == 0.0)
            {
                before.CopyTo(_y, 0);
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

        Greatest = Math.Max(Greatest, Force);
    }

    private double[] Along(double[] k, double h) => [.. _y.Select((y, i) => y + (h * k[i]))];

    private double[] Rates(double[] y)
    {
        BodyPose<R1>[] pose = [Pose(y, 0), Pose(y, 1)];
        R1[] z = [.. y[((2 * PerBody) + 1)..].Select(x => (R1)x)];
        Touching.Outcome o = Touching.Evaluate(_pair, pose[0], pose[1], 0.0, z);
        Force = _pair.NormalForce.Value;
        var rates = new double[y.Length];
        double[][] on = [o.OnA, o.OnB];
        for (int b = 0; b < 2; b++)
        {
            int at = PerBody * b;
            double c = pose[b].Cosine.Value, s = pose[b].Sine.Value;
            y.AsSpan(at + 3, 3).CopyTo(rates.AsSpan(at));
            rates[at + 3] = ((c * on[b][0]) - (s * on[b][1])) / _mass[b];
            rates[at + 4] = ((s * on[b][0]) + (c * on[b][1])) / _mass[b];
            rates[at + 5] = on[b][5] / _inertia[b];
        }

        rates[2 * PerBody] = _pair.LostPower.Value;
        o.Rates.CopyTo(rates, (2 * PerBody) + 1);
        return rates;
    }

    private BodyPose<R1> Pose(double[] y, int body)
    {
        int at = PerBody * body;
        double c = Math.Cos(y[at + 2]), s = Math.Sin(y[at + 2]);
        BodyPose<R1> pose = _start[body];
        pose.X = y[at];
        pose.Y = y[at + 1];
        double cosine = (c * _start[body].Cosine.Value) - (s * _start[body].Sine.Value);
        double sine = (s * _start[body].Cosine.Value) + (c * _start[body].Sine.Value);
        pose.Cosine = cosine;
        pose.Sine = sine;
        pose.Motion = new BodyMotion<R1>
        {
            U = (cosine * y[at + 3]) + (sine * y[at + 4]),
            V = (cosine * y[at + 4]) - (sine * y[at + 3]),
            R = y[at + 5],
        };
        return pose;
    }
}
