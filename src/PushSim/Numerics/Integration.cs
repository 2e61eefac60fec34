namespace PushSim.Numerics;

/// <summary>Integrates an <see cref="IAdditiveSystem"/> over a time span with error control. Step ends lie to the bit on every
/// breakpoint, where the method restarts; a failed run returns a status. Reusable: one instance serves many runs and
/// allocates nothing per step. A struct system that is <see cref="ISegmented"/> is boxed once per segment.</summary>
internal sealed class Integration<TSystem>
    where TSystem : IAdditiveSystem
{
    private readonly AdditiveStepper<TSystem> _stepper;
    private StepController _controller;
    private double _longestStep = double.PositiveInfinity;
    private int _steps;
    private int _rejected;
    private int _normCount;

    /// <summary>Allocates the storage for all runs.</summary>
    /// <param name="system">The system; a struct is copied.</param>
    /// <param name="tableau">The method.</param>
    public Integration(TSystem system, AdditiveTableau tableau)
    {
        _stepper = new AdditiveStepper<TSystem>(system, tableau);
        _controller = new StepController(tableau.EmbeddedOrder);
    }

    /// <summary>Integrates from t0 to t1.</summary>
    /// <param name="t0">Start [s].</param>
    /// <param name="t1">End, not before the start [s].</param>
    /// <param name="y">State at the start, replaced by the one at the time reached; each component in its own unit.</param>
    /// <param name="breakpoints">Times at which the right-hand side jumps, rising [s]; those outside the span are ignored.</param>
    /// <param name="settings">Tolerances and limits.</param>
    /// <param name="observer">Sees every accepted step.</param>
    /// <returns>Status, time reached and counts.</returns>
    public IntegrationReport Run<TObserver>(
        double t0,
        double t1,
        Span<double> y,
        ReadOnlySpan<double> breakpoints,
        IntegrationSettings settings,
        ref TObserver observer)
        where TObserver : IStepObserver
    {
        Prepare(t0, t1, y, settings);
        int segment = 0;
        IntegrationStatus status;
        double end;
        do
        {
            while (segment < breakpoints.Length && breakpoints[segment] <= _stepper.Time)
            {
                segment++;
            }

            EnterSegment(segment);
            end = segment < breakpoints.Length ? Math.Min(breakpoints[segment], t1) : t1;
            status = RunSegment(end, settings, ref observer);
        }
        while (status == IntegrationStatus.Completed && end < t1);

        _stepper.State.CopyTo(y);
        return new IntegrationReport(status, _stepper.Time, _steps, _rejected, _stepper.Evaluations);
    }

    private void Prepare(double t0, double t1, ReadOnlySpan<double> y, IntegrationSettings settings)
    {
        if (!(t1 >= t0))
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"end {t1} s lies before start {t0} s"), nameof(t1));
        }

        int count = _stepper.State.Length;
        if (y.Length != count || settings.AbsoluteTolerances.Length != count)
        {
            throw new ArgumentException($"state and absolute tolerances need {count} components", nameof(y));
        }

        int inNorm = 0;
        foreach (double absolute in settings.AbsoluteTolerances)
        {
            inNorm += double.IsFinite(absolute) ? 1 : 0;
        }

        (_steps, _rejected, _normCount) = (0, 0, Math.Max(1, inNorm));
        _stepper.Start(t0, y);
    }

    private IntegrationStatus RunSegment<TObserver>(double end, IntegrationSettings settings, ref TObserver observer)
        where TObserver : IStepObserver
    {
        double[] absolute = settings.AbsoluteTolerances;
        double relative = settings.RelativeTolerance;
        if (_stepper.Time >= end)
        {
            return IntegrationStatus.Completed;
        }

        if (!_stepper.Restart())
        {
            return IntegrationStatus.NotFinite;
        }

        _controller.Reset();
        double longest = Math.Min(settings.MaximumStep, _longestStep);
        double h = settings.InitialStep
            ?? _stepper.EstimateStep(absolute, relative, _normCount, Math.Min(end - _stepper.Time, longest));
        while (_stepper.Time < end)
        {
            if (_stepper.Evaluations + _stepper.Tableau.Stages > settings.MaximumEvaluations)
            {
                return IntegrationStatus.EvaluationCap;
            }

            double tEnd = StepLimits.End(settings, _stepper.Time, end, h, longest);
            double step = tEnd - _stepper.Time;
            double error = _stepper.Try(tEnd, absolute, relative, _normCount);
            if (!(error <= 1.0 && _stepper.FinishTrial()))
            {
                _rejected++;
                h = step * _controller.AfterRejection(error <= 1.0 ? double.NaN : error);
                if (h < StepLimits.Smallest(settings, _stepper.Time))
                {
                    return IntegrationStatus.StepTooSmall;
                }

                continue;
            }

            _steps++;
            h = step * _controller.AfterAcceptance(error);
            StepDecision decision = observer.OnStep(_stepper.Dense);
            _stepper.Advance();
            if (decision == StepDecision.Stop)
            {
                return IntegrationStatus.Stopped;
            }
        }

        return IntegrationStatus.Completed;
    }

    private void EnterSegment(int index)
    {
        // Through a box and back: a struct's own copy would be changed and lost otherwise.
        if (_stepper.System is ISegmented)
        {
            object system = _stepper.System;
            ((ISegmented)system).EnterSegment(index);
            _longestStep = ((ISegmented)system).LongestStep;
            _stepper.System = (TSystem)system;
        }
    }
}
