using PushSim.Numerics;

namespace PushSim.Tests.Numerics;

/// <summary>Does nothing.</summary>
internal sealed class SilentObserver : IStepObserver
{
    public StepDecision OnStep(DenseOutput step) => StepDecision.Continue;
}
