namespace PushSim.Numerics;

/// <summary>How a run ended.</summary>
internal enum IntegrationStatus
{
    /// <summary>The end time was reached.</summary>
    Completed,

    /// <summary>The observer asked to stop.</summary>
    Stopped,

    /// <summary>A trial step failed and no shorter one is allowed.</summary>
    StepTooSmall,

    /// <summary>The next trial step would exceed the cap on evaluations.</summary>
    EvaluationCap,

    /// <summary>The derivatives at the start of a segment are infinite or NaN.</summary>
    NotFinite,
}

/// <summary>Account of one run of <see cref="SingleRun{TSystem}"/>.</summary>
/// <param name="Status">How the run ended.</param>
/// <param name="Time">Time reached; the state belongs to it [s].</param>
/// <param name="Steps">Accepted steps [1].</param>
/// <param name="Rejected">Rejected trial steps [1].</param>
/// <param name="Evaluations">Evaluations of the right-hand side, plain and implicit ones together [1].</param>
internal readonly record struct IntegrationOutcome(
    IntegrationStatus Status, double Time, int Steps, int Rejected, long Evaluations);
