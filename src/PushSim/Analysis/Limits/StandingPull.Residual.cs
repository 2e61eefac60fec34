namespace PushSim.Analysis.Limits;

/// <content>What must vanish in a steady pull.</content>
internal sealed partial class StandingPull
{
    // x = traction, spins of the drives that spin
    private sealed class Residual<T>(LimitModel<T> model, LimitHook? hook, int[] spinning) : IResidual<T>
        where T : struct, IReal<T>
    {
        private readonly T[] _load = new T[model.Wheels.Length];
        private readonly T[] _omega = new T[model.Drives.Length];
        private readonly T[] _torque = new T[model.Drives.Length];

        public bool Evaluate(ReadOnlySpan<T> x, Span<T> f)
        {
            Array.Fill(_omega, 0.0);
            for (int s = 0; s < spinning.Length; s++)
            {
                _omega[spinning[s]] = x[s + 1];
                if (!T.AllLess(0.0, x[s + 1]))
                {
                    return false;
                }
            }

            if (!model.Loads(x[0], x[0] + model.AlongGravity, hook, _load))
            {
                return false;
            }

            model.Torques(_omega, _torque);
            T sum = Drag<T>(model, _load) - x[0];
            for (int d = 0; d < _omega.Length; d++)
            {
                sum = model.IsDriven[d] && Array.IndexOf(spinning, d) < 0 ? sum + Stalled(d) : sum;
            }

            for (int s = 0; s < spinning.Length; s++)
            {
                int d = spinning[s];
                T balance = _torque[d];
                foreach (int i in model.WheelsOf[d])
                {
                    T force = Sliding(model, _load[i], i, _omega[d]);
                    T lever = model.Wheels[i].DriveRatio * model.Wheels[i].Radius;
                    T rolling = model.Wheels[i].RollingResistance * _load[i] * T.Tanh(model.Wheels[i].DriveRatio * _omega[d] * model.Wheels[i].InverseRollingSpeed);
                    balance = balance - (lever * (force + rolling));
                    sum = sum + force;
                }

                f[s + 1] = balance;
            }

            f[0] = sum;
            return true;
        }

        private T Stalled(int d)
        {
            T levers = 0.0;
            T loads = 0.0;
            foreach (int i in model.WheelsOf[d])
            {
                levers = levers + (_load[i] * model.Wheels[i].DriveRatio * model.Wheels[i].Radius);
                loads = loads + _load[i];
            }

            return T.AllLess(0.0, levers) ? T.Max(0.0, _torque[d]) * loads / levers : 0.0;
        }
    }
}
