using PushSim.Numerics;

namespace PushSim.Tests.Numerics;

/// <summary>Does nothing.</summary>
public struct SilentObserver : IStepObserver
{
    public readonly StepDecision OnStep(DenseOutput step) => StepDecision.Continue;
}
