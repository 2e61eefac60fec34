using PushSim.Numerics;

namespace PushSim.Tests.Numerics;

/// <summary>Keeps ends and first-component slopes of every step; may stop after some.</summary>
internal sealed class StepRecorder : IStepObserver
{
    public int StopAfter { get; init; } = int.MaxValue;

    public List<double> Starts { get; } = [];

    public List<double> Ends { get; } = [];

    public List<double> StartSlopes { get; } = [];

    public List<double> EndSlopes { get; } = [];

    public StepDecision OnStep(DenseOutput step)
    {
        Starts.Add(step.T0);
        Ends.Add(step.T1);
        StartSlopes.Add(step.Slope0[0]);
        EndSlopes.Add(step.Slope1[0]);
        return Ends.Count >= StopAfter ? StepDecision.Stop : StepDecision.Continue;
    }
}
