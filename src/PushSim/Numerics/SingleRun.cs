using System.Runtime.InteropServices;

namespace PushSim.Numerics;

/// <summary>Integrates an <see cref="IAdditiveSystem"/> over a time span with error control: a <see cref="LaneIntegration{T, TSystem, TFeed}"/> of one lane and one run. Step ends
/// lie to the bit on every breakpoint, where the method restarts; a failed run returns a status. Reusable: one instance serves many runs and
/// allocates nothing per step. A struct system that is <see cref="ISegmented"/> is boxed once per segment.</summary>
internal sealed class SingleRun<TSystem>
    where TSystem : IAdditiveSystem
{
    private readonly OneLane _lane;
    private readonly LaneIntegration<R1, OneLane, OneLane> _lanes;

    /// <summary>Allocates the storage for all runs.</summary>
    /// <param name="system">The system; a struct is copied.</param>
    /// <param name="tableau">The method.</param>
    public SingleRun(TSystem system, AdditiveTableau tableau)
    {
        _lane = new OneLane(system);
        _lanes = new LaneIntegration<R1, OneLane, OneLane>(_lane, _lane, tableau);
        _lane.Dense = _lanes.Dense(system.CurveRanges);
    }

    /// <summary>Integrates from t0 to t1.</summary>
    /// <param name="t0">Start [s].</param>
    /// <param name="t1">End, not before the start [s].</param>
    /// <param name="y">State at the start, replaced by the one at the time reached; each component in its own unit.</param>
    /// <param name="breakpoints">Times at which the right-hand side jumps, rising [s]; those outside the span are ignored.</param>
    /// <param name="settings">Tolerances and limits.</param>
    /// <param name="observer">Sees every accepted step.</param>
    /// <returns>Status, time reached and counts.</returns>
    public IntegrationOutcome Run(double t0, double t1, Span<double> y, double[] breakpoints, IntegrationSettings settings, IStepObserver observer)
    {
        if (!(t1 >= t0))
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"end {t1} s lies before start {t0} s"), nameof(t1));
        }

        int count = _lane.Count;
        if (y.Length != count || settings.AbsoluteTolerances.Length != count)
        {
            throw new ArgumentException($"state and absolute tolerances need {count} components", nameof(y));
        }

        _lane.Take(new LaneRun(t0, t1, breakpoints, settings), y, observer);
        _lanes.Run();
        _lanes.State(0, y);
        return _lane.Report;
    }

    // The system, its one run and its observer, as the lanes see them.
    private sealed class OneLane(TSystem system) : ILaneSystem<R1>, ILaneFeed<R1>
    {
        private readonly double[] _start = new double[system.ExplicitCount + system.ImplicitCount];
        private TSystem _system = system;
        private IStepObserver? _observer;
        private LaneRun? _next;

        public int Count => _start.Length;

        public DenseOutput Dense { get; set; } = null!;

        public IntegrationOutcome Report { get; private set; }

        public int ExplicitCount => _system.ExplicitCount;

        public int ImplicitCount => _system.ImplicitCount;

        public IReadOnlyList<(int From, int To)> ExplicitRanges { get; } = [(0, system.ExplicitCount)];

        public IReadOnlyList<(int From, int To)> PredictedRanges => _system.PredictedRanges;

        public void Take(LaneRun run, ReadOnlySpan<double> start, IStepObserver observer)
        {
            (_next, _observer) = (run, observer);
            start.CopyTo(_start);
        }

        public void Evaluate(R1 t, R1 g, Span<R1> y, ReadOnlySpan<R1> predicted, Span<R1> dy) => _system.Evaluate(
            t.Value, g.Value, MemoryMarshal.Cast<R1, double>(y), MemoryMarshal.Cast<R1, double>(predicted), MemoryMarshal.Cast<R1, double>(dy));

        public R1 StepBound() => _system.StepBound;

        public bool TryBegin(int lane, Span<double> y, out LaneRun run)
        {
            run = _next.GetValueOrDefault();
            bool has = _next.HasValue;
            _next = null;
            _start.CopyTo(y);
            return has;
        }

        public double EnterSegment(int lane, int index)
        {
            if (_system is not ISegmented)
            {
                return double.PositiveInfinity;
            }

            // Through a box and back: a struct's own copy would be changed and lost otherwise.
            object system = _system;
            ((ISegmented)system).EnterSegment(index);
            _system = (TSystem)system;
            return ((ISegmented)system).LongestStep;
        }

        public void OnSegmentStart(int lane, double t) => _observer!.OnSegment(t);

        public void OnStepEnds()
        {
        }

        public StepDecision OnStep(int lane, in LaneStep step)
        {
            Dense.SetInterval(step.T0, step.T1);
            return _observer!.OnStep(Dense);
        }

        public void End(int lane, in IntegrationOutcome report) => Report = report;
    }
}
