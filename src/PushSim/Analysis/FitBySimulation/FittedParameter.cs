using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>One parameter after the fit.</summary>
/// <param name="Parameter">Which.</param>
/// <param name="Value">Value with its 95 % interval [the parameter's unit]; the interval of one that is not told is only how far it may be off.</param>
/// <param name="IsTold">Whether this test tells it: within a factor of two either way, inside the range looked at.</param>
/// <param name="Why">Why it is not told.</param>
public sealed record FittedParameter(TestParameter Parameter, Interval Value, bool IsTold, UntoldCause Why)
{
    /// <summary>The parameter that it is told together with; null for none.</summary>
    public TestParameter? With { get; init; }
}
