namespace PushSim.Numerics;

/// <content>Begin and end of runs and of their segments.</content>
internal sealed partial class LaneIntegration<T, TSystem, TFeed>
{
    // The next run of a lane; runs that end at once are passed over.
    private void Begin(int lane)
    {
        ref LaneState s = ref _lanes[lane];
        while (_feed.TryBegin(lane, _start, out LaneRun run))
        {
            s = default;
            s.Run = run;
            s.Time = run.T0;
            Span<T> y = _work.Row(_work.Y);
            Span<T> absolute = _work.Row(_work.Absolute);
            double[] tolerances = run.Settings.AbsoluteTolerances;
            int inNorm = 0;
            for (int i = 0; i < y.Length; i++)
            {
                Lane.Set(ref y[i], lane, _start[i]);
                Lane.Set(ref absolute[i], lane, tolerances[i]);
                inNorm += double.IsFinite(tolerances[i]) ? 1 : 0;
            }

            s.NormCount = Math.Max(1, inNorm);
            Lane.Set(ref _norm, lane, s.NormCount);
            Lane.Set(ref _relative, lane, run.Settings.RelativeTolerance);
            s.IsRunning = true;
            _running++;
            if (EnterSegment(lane))
            {
                return;
            }

            Finish(lane, IntegrationStatus.Completed);
        }

        s.IsRunning = false;
        s.NeedsRestart = false;
        Lane.Set(ref _step, lane, 0.0);
        Lane.Set(ref _norm, lane, 1.0);
        Lane.Set(ref _previousError, lane, 1.0);
    }

    // False if nothing is left of the run.
    private bool EnterSegment(int lane)
    {
        ref LaneState s = ref _lanes[lane];
        while (s.Segment < s.Run.Breakpoints.Length && s.Run.Breakpoints[s.Segment] <= s.Time)
        {
            s.Segment++;
        }

        s.LongestStep = Math.Min(s.Run.Settings.MaximumStep, _feed.EnterSegment(lane, s.Segment));
        s.End = s.Segment < s.Run.Breakpoints.Length ? Math.Min(s.Run.Breakpoints[s.Segment], s.Run.T1) : s.Run.T1;
        s.NeedsRestart = true;
        return s.Time < s.End;
    }

    private void Finish(int lane, IntegrationStatus status)
    {
        ref LaneState s = ref _lanes[lane];
        s.IsRunning = false;
        s.NeedsRestart = false;
        _running--;
        _feed.End(lane, new IntegrationOutcome(status, s.Time, s.Steps, s.Rejected, s.Evaluations));
    }

    private void FinishAndBegin(int lane, IntegrationStatus status)
    {
        Finish(lane, status);
        Begin(lane);
    }

    // k_1 and a first step for lanes at the start of a segment; the others keep theirs.
    private void RestartLanes()
    {
        while (NeedsRestart(out T chosen))
        {
            LoadTimes();
            _system.Evaluate(_time, 0.0, _work.Row(_work.Y), _work.Implicit(_work.Y), _work.Row(_work.EndSlope));
            T bound = _system.StepBound();
            _feed.OnSegmentStarts();
            _work.Take(_work.Slopes, _work.EndSlope, chosen);
            T probe = _work.Probe(_work.Slopes);
            T d0 = T.Sqrt(OrderFree(_work.WeightedSquares(_work.Y, _relative)) / _norm);
            T d1 = T.Sqrt(OrderFree(_work.WeightedSquares(_work.Slopes, _relative)) / _norm);
            T first = 0.0;
            for (int lane = 0; lane < _lanes.Length; lane++)
            {
                ref LaneState s = ref _lanes[lane];
                if (s.NeedsRestart)
                {
                    _feed.OnSegmentStart(lane, s.Time);
                    s.Evaluations++;
                    s.IsFinite = Lane.Get(probe, lane) == 0.0;
                    s.Bound = Lane.Get(bound, lane);
                    Lane.Set(ref first, lane, FirstStep.Guess(Lane.Get(d0, lane), Lane.Get(d1, lane), Math.Min(s.End - s.Time, s.LongestStep)));
                }
            }

            _work.SetProbe(first);
            _system.Evaluate(_time + first, 0.0, _work.Row(_work.Stage), _work.Implicit(_work.Stage), _work.Row(_work.EndSlope));
            _work.SubtractFirstSlope();
            T d2 = T.Sqrt(OrderFree(_work.WeightedSquares(_work.EndSlope, _relative)) / _norm);
            for (int lane = 0; lane < _lanes.Length; lane++)
            {
                if (_lanes[lane].NeedsRestart)
                {
                    EndRestart(lane, Lane.Get(first, lane), Lane.Get(d1, lane), Lane.Get(d2, lane));
                }
            }
        }
    }

    private bool NeedsRestart(out T chosen)
    {
        chosen = 0.0;
        bool any = false;
        for (int lane = 0; lane < _lanes.Length; lane++)
        {
            if (_lanes[lane].NeedsRestart)
            {
                any = true;
                Lane.Set(ref chosen, lane, 1.0);
            }
        }

        return any;
    }

    private void LoadTimes()
    {
        for (int lane = 0; lane < _lanes.Length; lane++)
        {
            Lane.Set(ref _time, lane, _lanes[lane].Time);
        }
    }

    private void EndRestart(int lane, double h0, double d1, double d2)
    {
        ref LaneState s = ref _lanes[lane];
        s.NeedsRestart = false;
        s.AfterRejection = false;
        Lane.Set(ref _previousError, lane, 1.0);
        if (!s.IsFinite)
        {
            FinishAndBegin(lane, IntegrationStatus.NotFinite);
            return;
        }

        if (s.Run.Settings.InitialStep is double given)
        {
            s.Step = given;
            return;
        }

        s.Evaluations++;
        s.Step = Math.Min(s.Bound, FirstStep.Of(h0, d1, d2, _tableau.EmbeddedOrder, Math.Min(s.End - s.Time, s.LongestStep)));
    }
}
