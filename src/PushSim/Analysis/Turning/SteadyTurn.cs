using MathNet.Numerics.LinearAlgebra;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Turning;

/// <summary>A turn in which nothing changes but place and heading, and how small disturbances of it move.</summary>
internal sealed class SteadyTurn
{
    // Newton stops where its step is this share of what is typical [1].
    private const double Accuracy = 1e-10;

    // A robot that turns slower than this stands [rad/s].
    private const double LeastYawRate = 1e-3;

    private const int MostSteps = 60;

    // Shortest share of a Newton step that is tried [1].
    private const double ShortestShare = 1.0 / 256.0;

    // Damping with which the twin that gives the first guess comes to a steady turn: share of sqrt(k_c m_t) [1], and s/m.
    private const double TwinBodyDamping = 1.5;
    private const double TwinVerticalDamping = 30.0;
    private const double TwinDuration = 1.5;

    private SteadyTurn(TurnModel model, double[] state)
    {
        (Model, State) = (model, state);
        Modes = TurnModes.Of(model, model.Jacobian(state));
        Rings = RingCriterion.Of(model, state);
    }

    public TurnModel Model { get; }

    /// <summary>The whole state in the engine's order; place and heading 0.</summary>
    public double[] State { get; }

    /// <summary>Modes of the linearised turn, the fastest growing first.</summary>
    public IReadOnlyList<TurnMode> Modes { get; }

    /// <summary>The ring criterion of each wheel that slides.</summary>
    public IReadOnlyList<RingCheck> Rings { get; }

    /// <summary>Growth rate of the fastest growing mode, negative where all die out [1/s].</summary>
    public double Growth => Modes[0].Growth;

    /// <summary>The fastest growing mode that is chatter; null if none is.</summary>
    public TurnMode? Chatter => Modes.FirstOrDefault(m => m.IsChatter);

    /// <summary>Yaw rate, positive counter-clockwise [rad/s].</summary>
    public double YawRate => State[StateLayout.YawRate];

    /// <summary>Least margin of the ring criterion over the wheels [1]; null if no wheel slides.</summary>
    public double? RingMargin => Rings.Count == 0 ? null : Rings.Min(r => r.Margin);

    /// <summary>The steady turn of a model, from a guess if there is one, else from a twin with damped tyres set off from rest; null if none is found.</summary>
    public static SteadyTurn? Find(TurnModel model, double[]? guess = null)
    {
        double[]? state = guess is null ? null : Newton(model, guess);
        state ??= Twin(model) is double[] twin ? Newton(model, twin) : null;
        return state is null || Math.Abs(state[StateLayout.YawRate]) < LeastYawRate ? null : new SteadyTurn(model, state);
    }

    // Damping moves no steady turn (nothing is deflected any further in one), so a well damped twin finds it by itself.
    private static double[]? Twin(TurnModel model)
    {
        TurnModel? twin = TurnModel.Create(
            TurnModel.With(model.Scenario, t => t with
            {
                BodyDamping = Math.Max(t.BodyDamping, TwinBodyDamping * Math.Sqrt(t.BodyStiffness * t.TreadMass)),
                VerticalDamping = Math.Max(t.VerticalDamping, TwinVerticalDamping),
            }),
            out _,
            model.Work);
        if (twin is null)
        {
            return null;
        }

        double[] y = twin.System.InitialState();
        var observer = default(Silent);
        twin.Integrate(y, TwinDuration, model.Scenario.Numerics.Tolerance, observer);
        return y.All(double.IsFinite) ? y : null;
    }

    // Newton with steps cut until the next step, by the same matrix, is shorter (Deuflhard's natural monotonicity test). Kinks of gear friction
    // and bristle switch are met from one side.
    private static double[]? Newton(TurnModel model, double[] guess)
    {
        double[] y = [.. guess];
        y[StateLayout.X] = y[StateLayout.Y] = y[StateLayout.Heading] = 0.0;
        for (int step = 0; step < MostSteps; step++)
        {
            MathNet.Numerics.LinearAlgebra.Factorization.LU<double> lu = model.Jacobian(y).LU();
            Vector<double> move = Step(model, lu, y);
            double length = move.InfinityNorm();
            if (!double.IsFinite(length))
            {
                return null;
            }

            if (length < Accuracy)
            {
                return y;
            }

            double share = 1.0;
            double[] next = Moved(model, y, move, share);
            while (share > ShortestShare && !(Step(model, lu, next).InfinityNorm() <= (1.0 - (0.25 * share)) * length))
            {
                share *= 0.5;
                next = Moved(model, y, move, share);
            }

            y = next;
        }

        return null;
    }

    private static Vector<double> Step(TurnModel model, MathNet.Numerics.LinearAlgebra.Factorization.LU<double> lu, double[] y)
    {
        double[] rates = model.Rates(y);
        return lu.Solve(Vector<double>.Build.Dense(rates.Length, i => -rates[i] / model.Typical[i]));
    }

    private static double[] Moved(TurnModel model, double[] y, Vector<double> move, double share)
    {
        double[] next = [.. y];
        for (int i = 0; i < model.Moving.Length; i++)
        {
            next[model.Moving[i]] += share * move[i] * model.Typical[i];
        }

        return next;
    }

    private struct Silent : IStepObserver
    {
        public readonly StepDecision OnStep(DenseOutput step) => StepDecision.Continue;
    }
}
