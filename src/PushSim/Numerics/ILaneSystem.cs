namespace PushSim.Numerics;

/// <summary>
/// An <see cref="IAdditiveSystem"/> over a number type of several lanes: every lane is a run of its own with its own numbers.
/// </summary>
/// <typeparam name="T">Number type.</typeparam>
public interface ILaneSystem<T>
    where T : struct, ILanes<T>, IReal<T>
{
    /// <summary>Number of explicit components [1].</summary>
    int ExplicitCount { get; }

    /// <summary>Number of implicit components, behind the explicit ones [1].</summary>
    int ImplicitCount { get; }

    /// <summary>
    /// Rising ranges (first, end behind it) of the explicit components that are integrated [1]. What is left out must be a
    /// quadrature on which nothing hangs and whose absolute tolerance is infinite: leaving it out changes no other bit.
    /// </summary>
    IReadOnlyList<(int From, int To)> ExplicitRanges { get; }

    /// <summary>Evaluates all derivatives in every lane; as <see cref="IAdditiveSystem.Evaluate"/>, with g = 0 in some lanes and not in others.</summary>
    /// <param name="t">Time of each lane [s].</param>
    /// <param name="g">Step times diagonal coefficient of each lane, 0 for a plain evaluation [s].</param>
    /// <param name="y">State: explicit part, then implicit part; the latter is written, unchanged to the bit where g = 0.</param>
    /// <param name="dy">Derivatives, same order.</param>
    void Evaluate(T t, T g, Span<T> y, Span<T> dy);
}

/// <summary>Gives runs to the lanes of a <see cref="LaneIntegration{T, TSystem, TFeed}"/>, follows their steps and takes their ends.</summary>
/// <typeparam name="T">Number type.</typeparam>
public interface ILaneFeed<T>
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
    void End(int lane, in IntegrationReport report);
}

/// <summary>What a lane integrates.</summary>
/// <param name="T0">Start [s].</param>
/// <param name="T1">End, after the start [s].</param>
/// <param name="Breakpoints">Rising times at which the right-hand side jumps [s]; read while the run lasts.</param>
/// <param name="Settings">Tolerances and limits; absolute tolerances are copied.</param>
public readonly record struct LaneRun(double T0, double T1, double[] Breakpoints, IntegrationSettings Settings);

/// <summary>One accepted step of one lane: values and slopes at both ends.</summary>
public readonly struct LaneStep
{
    private readonly double[] _store;
    private readonly int _y0, _k0, _y1, _k1, _lanes;

    internal LaneStep(double[] store, int lane, int y0, int k0, int y1, int k1, int lanes, double t0, double t1)
    {
        _store = store;
        _lanes = lanes;
        (_y0, _k0, _y1, _k1) = (y0 + lane, k0 + lane, y1 + lane, k1 + lane);
        (T0, T1) = (t0, t1);
    }

    /// <summary>Start of the step [s].</summary>
    public double T0 { get; }

    /// <summary>End of the step [s].</summary>
    public double T1 { get; }

    /// <summary>A component at the start, in its own unit.</summary>
    /// <param name="component">Its index [1].</param>
    public double Y0(int component) => _store[_y0 + (component * _lanes)];

    /// <summary>A component at the end, in its own unit.</summary>
    /// <param name="component">Its index [1].</param>
    public double Y1(int component) => _store[_y1 + (component * _lanes)];

    /// <summary>Its derivative at the start, in its unit per second.</summary>
    /// <param name="component">Its index [1].</param>
    public double Slope0(int component) => _store[_k0 + (component * _lanes)];

    /// <summary>Its derivative at the end, in its unit per second.</summary>
    /// <param name="component">Its index [1].</param>
    public double Slope1(int component) => _store[_k1 + (component * _lanes)];
}
