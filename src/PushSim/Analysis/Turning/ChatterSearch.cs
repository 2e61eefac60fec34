using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Turning;

/// <summary>Looks for the damping at which chatter begins, by the modes of the steady turn, and the one at which it dies out, by runs with ever more damping.</summary>
internal static class ChatterSearch
{
    // Range in which the onset is looked for, around the damping that is there [1], and logarithm of the step in which every edge is [1].
    private const double Reach = 100.0;
    private const int GridPoints = 25;
    private static readonly double s_step = Math.Log(Reach) / (GridPoints - 1);

    // Accuracy of the onset [1].
    private const double Accuracy = 1e-3;

    // Steps in which the damping of a chattering tyre is raised [1], how far, and how long each is held [s].
    private const double Raise = 1.06;
    private const double MostRaise = 12.0;
    private const double Hold = 0.4;

    // A robot that does not chatter is set off from rest at this share of the onset, for so long that the cycle is full [1], [s].
    private const double BelowOnset = 0.6;
    private const double BuildUp = 1.2;

    /// <summary>Onset and stop around a scenario's damping.</summary>
    /// <param name="scenario">The turn.</param>
    /// <param name="guess">State of its steady turn; null to look for it.</param>
    /// <param name="chatters">Whether the robot chatters as it is: a cycle may keep itself going where small swings die out.</param>
    /// <param name="work">What its evaluations are booked to.</param>
    public static ChatterRange Find(ScenarioSettings scenario, double[]? guess, bool chatters, WorkBudget work)
    {
        double? onset = OnsetFactor(scenario, guess, work);
        double? from = chatters ? Math.Max(1.0, BelowOnset * (onset ?? 0.0)) : BelowOnset * onset;
        double? stop = from is double f ? StopFactor(scenario, f, work) : null;

        // near a gentle onset cycles are small, and seem dead a little below it
        return new ChatterRange(onset, stop is double s && onset is double o ? Math.Max(s, o) : stop);
    }

    /// <summary>The factor on the damping of the tyre bodies where the fastest growing mode neither grows nor dies, nearest to 1; null if there is none.</summary>
    public static double? OnsetFactor(ScenarioSettings scenario, double[]? guess, WorkBudget work)
    {
        // where it grows more damping is looked for, where it is quiet less
        static bool Grows(SteadyTurn turn) => turn.Growth > 0.0;
        return Holds(scenario, ChatterPart.BodyDamping, 1.0, guess, Grows, work) is bool here ? Edge(scenario, guess, ChatterPart.BodyDamping, Grows, here, here ? Reach : 1.0 / Reach, work) : null;
    }

    /// <summary>The factor on a number of the tyres, from 1 towards the last one, at which something of its steady turn changes; null if there is none.</summary>
    /// <param name="scenario">The turn.</param>
    /// <param name="guess">State of its steady turn; null to look for it.</param>
    /// <param name="part">The number.</param>
    /// <param name="of">What may change.</param>
    /// <param name="here">Whether it is so with the number as it is.</param>
    /// <param name="last">The last factor that is tried [1].</param>
    /// <param name="work">What its evaluations are booked to.</param>
    public static double? Edge(ScenarioSettings scenario, double[]? guess, ChatterPart part, Func<SteadyTurn, bool> of, bool here, double last, WorkBudget work)
    {
        int steps = (int)Math.Round(Math.Abs(Math.Log(last)) / s_step);
        double inside = 1.0;
        for (int i = 1; i <= steps; i++)
        {
            work.Cancel.ThrowIfCancellationRequested();
            double factor = Math.Exp(Math.Sign(Math.Log(last)) * i * s_step);
            if (Holds(scenario, part, factor, guess, of, work) is bool other && other != here)
            {
                return Bisect(inside, factor);
            }

            inside = factor;
        }

        return null;

        double Bisect(double same, double other)
        {
            while (Math.Abs(Math.Log(other / same)) > Accuracy)
            {
                double middle = Math.Sqrt(same * other);
                (same, other) = Holds(scenario, part, middle, guess, of, work) == here ? (middle, other) : (same, middle);
            }

            return Math.Sqrt(same * other);
        }
    }

    private static ScenarioSettings Scaled(ScenarioSettings scenario, double factor) => TyreNumber.Of(ChatterPart.BodyDamping).Scaled(scenario, factor);

    private static bool? Holds(ScenarioSettings scenario, ChatterPart part, double factor, double[]? guess, Func<SteadyTurn, bool> of, WorkBudget work) =>
        TurnModel.Create(TyreNumber.Of(part).Scaled(scenario, factor), out _, work) is TurnModel model && SteadyTurn.Find(model, guess) is SteadyTurn turn ? of(turn) : null;

    // Damping is raised under a full cycle until that dies.
    private static double? StopFactor(ScenarioSettings scenario, double from, WorkBudget work)
    {
        if (TurnModel.Create(Scaled(scenario, from), out _, work) is not TurnModel low)
        {
            return null;
        }

        double[] y = low.System.InitialState();
        if (Swing(low, y, BuildUp) < ChatterFinder.Threshold)
        {
            return null;
        }

        for (double raise = Raise; raise < MostRaise; raise *= Raise)
        {
            work.Cancel.ThrowIfCancellationRequested();
            if (TurnModel.Create(Scaled(scenario, raise * from), out _, work) is not TurnModel model || !y.All(double.IsFinite))
            {
                return null;
            }

            if (Swing(model, y, Hold) < ChatterFinder.Threshold)
            {
                return from * raise / Math.Sqrt(Raise);
            }
        }

        return null;
    }

    // Runs on from a state; greatest swing of a tyre body's force in the last half, as a share of the mean load.
    private static double Swing(TurnModel model, double[] y, double duration)
    {
        var meter = new Meter(model, 0.5 * duration);
        model.Integrate(y, duration, model.Scenario.Numerics.Tolerance, meter);
        return meter.Largest();
    }

    private sealed class Meter(TurnModel model, double from) : IStepObserver
    {
        private const double SampleStep = 5e-4;

        private readonly double[] _y = new double[model.System.Layout.Count];
        private readonly double[] _sum = new double[2 * model.System.Equations.Wheels.Length];
        private readonly double[] _squares = new double[2 * model.System.Equations.Wheels.Length];
        private int _count;

        public StepDecision OnStep(DenseOutput step)
        {
            for (double t = from + (_count * SampleStep); t <= step.T1; t = from + (_count * SampleStep))
            {
                step.Evaluate(t, _y);
                for (int i = 0; i < _sum.Length; i++)
                {
                    double force = model.System.Equations.Wheels[i / 2].BodyStiffness.Value * _y[model.System.Layout.Deflection(i / 2) + (i % 2)];
                    _sum[i] += force;
                    _squares[i] += force * force;
                }

                _count++;
            }

            return StepDecision.Continue;
        }

        public double Largest()
        {
            double load = model.System.Static.Loads.Average();
            double largest = 0.0;
            for (int i = 0; i < _sum.Length; i++)
            {
                double mean = _sum[i] / _count;
                largest = Math.Max(largest, Math.Sqrt(Math.Max(0.0, (_squares[i] / _count) - (mean * mean))) / load);
            }

            return largest;
        }
    }
}
