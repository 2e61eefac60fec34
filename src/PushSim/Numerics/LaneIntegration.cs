using System.Runtime.CompilerServices;

namespace PushSim.Numerics;

/// <summary>Integrates many runs of one system side by side, one per lane, each with its own time, step, segment and end; a lane that
/// has finished takes the next run. Every run has the bits that <see cref="SingleRun{TSystem}"/> gives it alone, whatever
/// lane it is in and whatever runs beside it. Nothing is allocated after construction.
/// <code>
///   stage i:  Y_explicit = y_n + h sum_(j&lt;i) aE_ij k_j,   z* = y_n + h sum_(j&lt;i) aI_ij k_j,   k_i by the system with g = h gamma
///   new state y_n + h sum b_i k_i,   error h sum (b_i - bhat_i) k_i
/// </code>
/// k_1 is a plain evaluation at the step's start; the one at the step's end serves the dense output and is the next k_1. Source: see <see cref="AdditiveTableau"/>.</summary>
internal sealed partial class LaneIntegration<T, TSystem, TFeed>
    where T : struct, ILanes<T>, IReal<T>
    where TSystem : ILaneSystem<T>
    where TFeed : ILaneFeed<T>
{
    // errors within which the step controller's logarithms are taken [1]
    private static readonly double Least = Lane.IsSingle<T>() ? 1e-30 : 1e-300;
    private static readonly double Most = 1.0 / Least;

    private readonly TSystem _system;
    private readonly TFeed _feed;
    private readonly AdditiveTableau _tableau;
    private readonly LaneWorkspace<T> _work;
    private readonly LaneState[] _lanes = new LaneState[T.Lanes];
    private readonly double[] _start;
    private readonly double[] _nodes;
    private readonly double _proportional;
    private readonly double _integral;
    private readonly double _single;
    private int _running;
    private T _relative, _norm, _previousError, _time, _end, _step;

    /// <summary>Allocates all storage.</summary>
    /// <param name="system">The system.</param>
    /// <param name="feed">Where the runs come from.</param>
    /// <param name="tableau">The method.</param>
    public LaneIntegration(TSystem system, TFeed feed, AdditiveTableau tableau)
    {
        (_system, _feed, _tableau) = (system, feed, tableau);
        _work = new LaneWorkspace<T>(system.ExplicitCount, system.ImplicitCount, system.ExplicitRanges, system.PredictedRanges, tableau);
        _start = new double[system.ExplicitCount + system.ImplicitCount];
        _nodes = tableau.C.ToArray();
        (_proportional, _integral, _single) = StepController.Gains(tableau.EmbeddedOrder);
    }

    /// <summary>Runs until the feed is empty and every lane has finished.</summary>
    /// <param name="cancel">Leaves at the next step; unfinished runs are dropped.</param>
    public void Run(CancellationToken cancel = default)
    {
        _running = 0;
        for (int lane = 0; lane < _lanes.Length; lane++)
        {
            // an idle lane stands still with sane numbers
            Begin(lane);
        }

        while (_running > 0 && !cancel.IsCancellationRequested)
        {
            RestartLanes();
            if (ChooseSteps())
            {
                Step();
            }
        }
    }

    /// <summary>Writes the state that a lane has reached, each component in its own unit.</summary>
    /// <param name="lane">The lane [1].</param>
    /// <param name="y">Receives every component.</param>
    public void State(int lane, Span<double> y)
    {
        ReadOnlySpan<T> row = _work.Row(_work.Y);
        for (int i = 0; i < y.Length; i++)
        {
            y[i] = Lane.Get(row[i], lane);
        }
    }

    /// <summary>A view of the step that is handed out, of lanes of one.</summary>
    /// <param name="curves">See <see cref="IAdditiveSystem.CurveRanges"/>.</param>
    public DenseOutput Dense(IReadOnlyList<(int From, int To)> curves) =>
        new(_work.Store, _work.Y, _work.Slopes, _work.Trial, _work.EndSlope, _start.Length, _system.ExplicitCount, curves);

    // Where each lane's step ends; false if a lane has to restart first.
    private bool ChooseSteps()
    {
        bool ready = true;
        for (int lane = 0; lane < _lanes.Length; lane++)
        {
            ref LaneState s = ref _lanes[lane];
            if (s.IsRunning && s.Evaluations + _tableau.Stages > s.Run.Settings.MaximumEvaluations)
            {
                FinishAndBegin(lane, IntegrationStatus.EvaluationCap);
            }

            ready &= !s.NeedsRestart;
            s.StepEnd = s.IsRunning ? StepLimits.End(s.Run.Settings, s.Time, s.End, s.Step, s.LongestStep) : s.Time;
            Lane.Set(ref _time, lane, s.Time);
            Lane.Set(ref _end, lane, s.StepEnd);
            Lane.Set(ref _step, lane, s.StepEnd - s.Time);
        }

        return ready && _running > 0;
    }

    [MethodImpl(Kernel.Whole)]
    private void Step()
    {
        T h = _step;
        T g = h * _tableau.Gamma;
        for (int i = 1; i < _nodes.Length; i++)
        {
            _work.SetStage(i, h);
            T t = _end;
            if (_nodes[i] != 1.0)
            {
                t = _time + (_nodes[i] * h);
            }

            _system.Evaluate(t, g, _work.Row(_work.Stage), _work.Row(_work.Predicted)[.._work.ImplicitCount], _work.Slope(i));
        }

        _work.SetTrial(h);
        T error = T.Sqrt(OrderFree(_work.SquaredError(h, _relative)) / _norm);
        T probe = 0.0;
        T bound = double.PositiveInfinity;
        if (T.Lanes > 1 || Lane.Get(error, 0) <= 1.0)
        {
            _system.Evaluate(_end, 0.0, _work.Row(_work.Trial), _work.Implicit(_work.Trial), _work.Row(_work.EndSlope));
            probe = _work.Probe(_work.EndSlope);
            bound = _system.StepBound();
        }

        Factors(error, out T accepted, out T rejected);
        _feed.OnStepEnds();
        T taken = 0.0;
        for (int lane = 0; lane < _lanes.Length; lane++)
        {
            if (_lanes[lane].IsRunning)
            {
                bool ok = Judge(lane, Lane.Get(error, lane), Lane.Get(probe, lane) == 0.0, Lane.Get(accepted, lane), Lane.Get(rejected, lane), Lane.Get(bound, lane));
                Lane.Set(ref taken, lane, ok ? 1.0 : 0.0);
            }
        }

        // observers first: they look at both ends of the step
        _work.Take(_work.Y, _work.Trial, taken);
        _work.Take(_work.Slopes, _work.EndSlope, taken);
        for (int lane = 0; lane < _lanes.Length; lane++)
        {
            Settle(lane);
        }
    }

    // A sum rounded to 40 bits, 17 in single precision (Veltkamp's splitting), which hides in which order robots that swap places were summed; not finite beyond 1e300 or 1e36.
    private static T OrderFree(T sum)
    {
        T scaled = (Lane.IsSingle<T>() ? 129.0 : 8193.0) * sum;
        return scaled - (scaled - sum);
    }

    // Factors of the step controller before they are clamped; see StepController.
    [MethodImpl(Kernel.Part)]
    private void Factors(T error, out T accepted, out T rejected)
    {
        T log = T.Log(T.Max(Least, T.Min(Most, error)));
        T before = T.Log(T.Max(Least, T.Min(Most, _previousError)));
        accepted = StepController.Safety * T.Exp(-_proportional * log) * T.Exp(_integral * before);
        rejected = StepController.Safety * T.Exp(-_single * log);
    }

    private bool Judge(int lane, double error, bool endIsFinite, double accepted, double rejected, double bound)
    {
        ref LaneState s = ref _lanes[lane];
        double step = s.StepEnd - s.Time;
        s.Evaluations += _nodes.Length - 1;
        bool isSmall = error <= 1.0;
        s.Evaluations += isSmall ? 1 : 0;
        if (!(isSmall && endIsFinite))
        {
            s.Rejected++;
            bool isFinite = !isSmall && double.IsFinite(error);
            s.Step = step * (isFinite ? Math.Clamp(rejected, StepController.SmallestFactor, StepController.Safety) : StepController.SmallestFactor);
            s.AfterRejection = true;
            s.Ends = s.Step < StepLimits.Smallest(s.Run.Settings, s.Time) ? IntegrationStatus.StepTooSmall : null;
            return false;
        }

        s.Steps++;
        s.Step = Math.Min(bound, step * Math.Clamp(accepted, StepController.SmallestFactor, s.AfterRejection ? 1.0 : StepController.LargestFactor));
        s.AfterRejection = false;
        Lane.Set(ref _previousError, lane, Math.Max(error, StepController.SmallestError));
        var view = new LaneStep(_work.Store, Lane.IsSingle<T>(), lane, _work.Y, _work.Slopes, _work.Trial, _work.EndSlope, T.Lanes, s.Time, s.StepEnd);
        s.Ends = _feed.OnStep(lane, view) == StepDecision.Stop ? IntegrationStatus.Stopped : null;
        s.Time = s.StepEnd;
        return true;
    }

    // Ends of runs and of segments, once the steps are taken.
    private void Settle(int lane)
    {
        ref LaneState s = ref _lanes[lane];
        if (!s.IsRunning)
        {
            return;
        }

        if (s.Ends is IntegrationStatus status)
        {
            FinishAndBegin(lane, status);
        }
        else if (s.Time >= s.End)
        {
            if (s.End >= s.Run.T1 || !EnterSegment(lane))
            {
                FinishAndBegin(lane, IntegrationStatus.Completed);
            }
        }
    }

    private struct LaneState
    {
        public LaneRun Run;
        public double Time, StepEnd, End, Step, LongestStep, Bound;
        public long Evaluations;
        public int Segment, Steps, Rejected, NormCount;
        public bool IsRunning, NeedsRestart, AfterRejection, IsFinite;
        public IntegrationStatus? Ends;
    }
}
