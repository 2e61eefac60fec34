namespace PushSim.Analysis.Turning;

/// <summary>What a simulation of a disturbed steady turn does.</summary>
/// <param name="Sign">1 the disturbance grows, -1 it dies out [1].</param>
/// <param name="Rate">Its growth rate by a straight line through its logarithm, while it is small [1/s].</param>
internal readonly record struct DisturbedTurn(int Sign, double Rate);

/// <summary>Simulates a steady turn with a small disturbance of all its states and watches whether that grows.</summary>
internal static class Disturbance
{
    /// <summary>Usual size of the disturbance, as a share of what is typical of each state [1].</summary>
    public const double Size = 1e-4;

    // Tight, so that what the integration errs stays far below the disturbance [1].
    private const double Tolerance = 1e-8;

    // A disturbance that has grown or shrunk by this factor is decided [1].
    private const double Decided = 1000.0;

    private const double SampleStep = 1e-3;

    private static readonly ulong s_sign = Philox.NumberOf("sign of the disturbance");

    /// <summary>Disturbs every moving state by its typical size times <see cref="Size"/> and a random sign and follows it.</summary>
    /// <param name="turn">The steady turn.</param>
    /// <param name="seed">Seed of the signs [1].</param>
    /// <param name="duration">Longest time it is followed [s].</param>
    public static DisturbedTurn Follow(SteadyTurn turn, int seed, double duration)
    {
        double[] y = [.. turn.State];
        TurnModel model = turn.Model;
        for (int i = 0; i < model.Moving.Length; i++)
        {
            y[model.Moving[i]] += Size * model.Typical[i] * (Philox.Uniform((ulong)seed, i, s_sign) < 0.5 ? -1.0 : 1.0);
        }

        var watch = new Watch(turn, y);
        model.Integrate(y, duration, Tolerance, watch);
        return watch.Outcome();
    }

    private sealed class Watch(SteadyTurn turn, double[] y0) : IStepObserver
    {
        private readonly double[] _y = new double[y0.Length];
        private readonly List<double> _distance = [];
        private readonly double _first = Distance(turn, y0);

        public StepDecision OnStep(DenseOutput step)
        {
            while (_distance.Count * SampleStep <= step.T1)
            {
                step.Evaluate(_distance.Count * SampleStep, _y);
                double now = Distance(turn, _y);
                _distance.Add(now);
                if (!(now < Decided * _first) || now < _first / Decided)
                {
                    return StepDecision.Stop;
                }
            }

            return StepDecision.Continue;
        }

        // the later half against the time before: transients of quick modes are over by then
        public DisturbedTurn Outcome()
        {
            int n = _distance.Count;
            if (n < 8)
            {
                return new DisturbedTurn(n > 0 && _distance[^1] > _first ? 1 : -1, double.NaN);
            }

            double early = Level(n / 2, 3 * n / 4);
            double late = Level(3 * n / 4, n);
            double rate = (late - early) / (0.25 * n * SampleStep);
            double last = _distance[^1];
            int sign = !(last < Decided * _first) ? 1 : last < _first / Decided ? -1 : Math.Sign(rate);
            return new DisturbedTurn(sign, rate);
        }

        private double Level(int from, int to)
        {
            double sum = 0.0;
            for (int i = from; i < to; i++)
            {
                sum += Math.Log(_distance[i] + double.Epsilon);
            }

            return sum / (to - from);
        }

        private static double Distance(SteadyTurn turn, double[] y)
        {
            double sum = 0.0;
            for (int i = 0; i < turn.Model.Moving.Length; i++)
            {
                int s = turn.Model.Moving[i];
                double d = (y[s] - turn.State[s]) / turn.Model.Typical[i];
                sum += d * d;
            }

            return Math.Sqrt(sum / turn.Model.Moving.Length);
        }
    }
}
