namespace PushSim.Numerics;

/// <summary>Gives runs to the lanes of a <see cref="LaneIntegration{T, TSystem, TFeed}"/>, follows their steps and takes their ends.</summary>
internal interface ILaneFeed<T>
    where T : struct, ILanes<T>, IReal<T>
{
    /// <summary>Puts the next run into a lane: its numbers into the system, its start into y.</summary>
    /// <param name="lane">The free lane [1].</param>
    /// <param name="y">Receives the start state, one double per component, each in its own unit.</param>
    /// <param name="run">Span, breakpoints and tolerances.</param>
    /// <returns>False if there is no run left; the lane then idles.</returns>
    bool TryBegin(int lane, Span<double> y, out LaneRun run);

    /// <summary>Makes a segment of a lane's run current, as <see cref="ISegmented.EnterSegment"/>.</summary>
    /// <param name="lane">The lane [1].</param>
    /// <param name="index">Number of breakpoints at or before the segment's start [1].</param>
    /// <returns>Longest step of the segment, positive [s].</returns>
    double EnterSegment(int lane, int index);

    /// <summary>Called before the starts of segments are handed out; the system was just evaluated there.</summary>
    void OnSegmentStarts()
    {
    }

    /// <summary>Called where a lane begins a segment, before any step of it; the system was last evaluated there, with the segment's own commands.</summary>
    /// <param name="lane">The lane [1].</param>
    /// <param name="t">When the segment begins [s].</param>
    void OnSegmentStart(int lane, double t)
    {
    }

    /// <summary>Called before the steps of a pass are handed out; the system was just evaluated at their ends.</summary>
    void OnStepEnds();

    /// <summary>Called after each accepted step; the system was last evaluated at its end, in every lane that accepted.</summary>
    /// <param name="lane">The lane [1].</param>
    /// <param name="step">The step.</param>
    /// <returns>Whether the lane's run goes on.</returns>
    StepDecision OnStep(int lane, in LaneStep step);

    /// <summary>Takes the end of a lane's run.</summary>
    /// <param name="lane">The lane, free from now on [1].</param>
    /// <param name="report">How it ended.</param>
    void End(int lane, in IntegrationOutcome report);
}
