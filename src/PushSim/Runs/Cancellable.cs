namespace PushSim.Runs;

/// <summary>An observer that stops the run when it is cancelled.</summary>
/// <param name="observer">Sees every step.</param>
/// <param name="cancel">Stops the run.</param>
internal sealed class Cancellable(IStepObserver observer, CancellationToken cancel) : IStepObserver
{
    public void OnSegment(double t) => observer.OnSegment(t);

    public StepDecision OnStep(DenseOutput step) => cancel.IsCancellationRequested ? StepDecision.Stop : observer.OnStep(step);
}
