namespace PushSim.Numerics;

/// <summary>Is shown every accepted step.</summary>
public interface IStepObserver
{
    /// <summary>Sees a step.</summary>
    /// <param name="step">The step with its dense output.</param>
    /// <returns>False to stop the integration at the step's end.</returns>
    bool OnStep(in DenseStep step);
}

/// <summary>A system whose right-hand side changes at breakpoints.</summary>
public interface ISegmented
{
    /// <summary>Called at the start and again on each breakpoint, before the first evaluation on its right.</summary>
    /// <param name="t">Start of the segment [s].</param>
    void EnterSegment(double t);
}
