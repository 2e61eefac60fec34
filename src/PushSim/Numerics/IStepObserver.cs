namespace PushSim.Numerics;

/// <summary>Sees every accepted step of a run, in order. A struct observer is called without boxing.</summary>
internal interface IStepObserver
{
    /// <summary>Called where a segment begins, before any step of it; the system was last evaluated there, with the segment's own commands.</summary>
    /// <param name="t">When it begins [s].</param>
    void OnSegment(double t)
    {
    }

    /// <summary>Called once per accepted step.</summary>
    /// <param name="step">The step; valid during the call only, its storage is reused by the next step.</param>
    /// <returns>Whether the run goes on; after <see cref="StepDecision.Stop"/> the report ends at this step's end.</returns>
    StepDecision OnStep(DenseOutput step);
}
