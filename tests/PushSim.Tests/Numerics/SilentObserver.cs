using PushSim.Numerics;

namespace PushSim.Tests.Numerics;

/// <summary>Does nothing.</summary>
internal struct SilentObserver : IStepObserver
{
    public readonly StepDecision OnStep(DenseOutput step) => StepDecision.Continue;
}
