namespace PushSim.Numerics;

/// <summary>Answer of an observer.</summary>
internal enum StepDecision
{
    /// <summary>Integrate on.</summary>
    Continue,

    /// <summary>End the run at the end of this step.</summary>
    Stop,
}
