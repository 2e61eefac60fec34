using PushSim.Powertrain;

namespace PushSim.Analysis.Limits;

/// <summary>The steady turn on the spot at full turn command: forces and yaw moment of the steadily slipping tyres sum to zero, and each drive's torque
/// balances its wheels. Loads are those at rest, since the forces sum to zero at the floor.
/// <code>
///   w = (u - r y - omega R, v + r x),   F = -N (mu(|w|) s + sigma2 |w|) w/|w|
/// </code></summary>
internal sealed class SpotTurn
{
    // Ratio of track to the track that rolling wheels would need, from which the solution is looked for [1].
    private static readonly double[] s_starts = [1.5, 2.2, 1.1, 3.5];

    // Keeps the slip off zero, where its direction has no derivative [m^2/s^2].
    private const double TinySquare = 1e-16;

    private readonly double[] _x;
    private readonly double[,] _inverse;

    private SpotTurn(double[] x, double[,] inverse) => (_x, _inverse) = (x, inverse);

    /// <summary>Yaw rate [rad/s].</summary>
    public double Rate => _x[2];

    /// <summary>Solves on a model; null where it does not turn or nothing steady was found.</summary>
    public static SpotTurn? Solve(LimitModel<R1> model)
    {
        Command(model);
        R1[] load = new R1[model.Wheels.Length];
        if (!model.Loads(0.0, 0.0, null, load))
        {
            return null;
        }

        int[] drives = [.. Enumerable.Range(0, model.Drives.Length)];
        double weight = load.Sum(n => n.Value);
        model.Torques(new R1[model.Drives.Length], new R1[model.Drives.Length]);
        foreach (double start in s_starts)
        {
            double[] x = Start(model, start);
            double[] scale = [0.1, 0.1, 1.0, .. drives.Select(d => 0.3 / model.Lever(d).Value)];
            double[] size = [weight, weight, 0.1 * weight, .. drives.Select(d => weight * model.Lever(d).Value)];
            double[,]? inverse = SmallNewton.Solve(new Residual<R1>(model), x, scale, size);
            if (inverse is not null && x[2] > 1e-4 && drives.All(d => !model.IsDriven[d] || x[3 + d] * model.Direction[d] > 0.0))
            {
                return new SpotTurn(x, inverse);
            }
        }

        return null;
    }

    /// <summary>The rate with the slope that a model carries [rad/s].</summary>
    public T RateOf<T>(LimitModel<T> model)
        where T : struct, IReal<T>
    {
        Command(model);
        return SmallNewton.Carry(new Residual<T>(model), _x, _inverse)[2];
    }

    /// <summary>Spin of each drive [rad/s].</summary>
    public double[] Spins => _x[3..];

    private static void Command<T>(LimitModel<T> model)
        where T : struct, IReal<T>
    {
        for (int k = 0; k < model.Controllers.Length; k++)
        {
            ControllerSettings c = model.Scenario.Robot.Controllers[k];
            double sign = c.Side == CommandSide.Left ? -1.0 : 1.0;
            model.Command(k, sign * model.Throttle);
            foreach ((int drive, int _) in c.Motors)
            {
                model.Direction[drive] = sign;
            }
        }
    }

    private static double[] Start(LimitModel<R1> model, double ratio)
    {
        double[] spin = new double[model.Drives.Length];
        double right = 0.0, left = 0.0, yRight = 0.0, yLeft = 0.0;
        int nRight = 0, nLeft = 0;
        for (int m = 0; m < model.Motors.Length; m++)
        {
            int d = model.MotorShapes[m].Drive;
            spin[d] = 0.75 * model.Throttle * model.Direction[d] * model.OpenCircuit.Value / model.Motors[m].Constant.Value;
            foreach (int i in model.WheelsOf[d])
            {
                double speed = spin[d] * model.Wheels[i].DriveRatio.Value * model.Wheels[i].Radius.Value;
                if (model.Direction[d] > 0.0)
                {
                    (right, yRight, nRight) = (right + speed, yRight + model.Wheels[i].Y.Value, nRight + 1);
                }
                else
                {
                    (left, yLeft, nLeft) = (left + speed, yLeft + model.Wheels[i].Y.Value, nLeft + 1);
                }
            }
        }

        double track = (yLeft / Math.Max(1, nLeft)) - (yRight / Math.Max(1, nRight));
        double rate = ((right / Math.Max(1, nRight)) - (left / Math.Max(1, nLeft))) / (ratio * track);
        for (int d = 0; d < spin.Length; d++)
        {
            if (!model.IsDriven[d] && model.WheelsOf[d].Length > 0)
            {
                spin[d] = -rate * model.Wheels[model.WheelsOf[d][0]].Y.Value / model.Lever(d).Value;
            }
        }

        return [0.0, 0.0, rate, .. spin];
    }

    private sealed class Residual<T>(LimitModel<T> model) : IResidual<T>
        where T : struct, IReal<T>
    {
        private readonly T[] _load = Loads(model);
        private readonly T[] _omega = new T[model.Drives.Length];
        private readonly T[] _torque = new T[model.Drives.Length];

        public bool Evaluate(ReadOnlySpan<T> x, Span<T> f)
        {
            for (int d = 0; d < _omega.Length; d++)
            {
                _omega[d] = x[3 + d];
            }

            model.Torques(_omega, _torque);
            for (int d = 0; d < _omega.Length; d++)
            {
                f[3 + d] = model.IsDriven[d] ? _torque[d] : -(model.Drives[d].Viscous * _omega[d]);
            }

            T fx = 0.0;
            T fy = 0.0;
            T yaw = 0.0;
            for (int i = 0; i < _load.Length; i++)
            {
                ref readonly Tyres.WheelParameters<T> p = ref model.Wheels[i];
                int drive = model.Kinds[i].Shape.Drive;
                T spin = drive >= 0 ? p.DriveRatio * _omega[drive] : 0.0;
                T surface = p.Radius * spin;
                T wx = x[0] - (x[2] * p.Y) - surface;
                T wy = x[1] + (x[2] * p.X);
                T slip = T.Sqrt((wx * wx) + (wy * wy) + TinySquare);
                T force = SteadyTyre.Force(p, model.Kinds[i], model.FloorOf[i], _load[i], slip, T.Abs(surface));
                T along = -(force * wx / slip);
                T across = -(force * wy / slip);
                fx = fx + along;
                fy = fy + across;
                yaw = yaw + (p.X * across) - (p.Y * along);
                if (drive >= 0)
                {
                    T rolling = p.RollingResistance * _load[i] * T.Tanh(spin * p.InverseRollingSpeed);
                    f[3 + drive] = f[3 + drive] - (p.DriveRatio * p.Radius * (along + rolling));
                }
            }

            (f[0], f[1], f[2]) = (fx, fy, yaw);
            return true;
        }

        private static T[] Loads(LimitModel<T> model)
        {
            T[] load = new T[model.Wheels.Length];
            model.Loads(0.0, 0.0, null, load);
            return load;
        }
    }
}
