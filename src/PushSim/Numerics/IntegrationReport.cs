namespace PushSim.Numerics;

/// <summary>How an integration ended.</summary>
public enum IntegrationStatus
{
    /// <summary>Reached the end.</summary>
    Finished,

    /// <summary>The observer asked to stop.</summary>
    Stopped,

    /// <summary>The step fell below the least one: the right-hand side cannot be followed.</summary>
    StepTooSmall,

    /// <summary>The cap on evaluations was reached.</summary>
    TooManyEvaluations,
}

/// <summary>What an integration did.</summary>
/// <param name="Status">How it ended.</param>
/// <param name="Time">Time reached [s].</param>
/// <param name="Evaluations">Right-hand-side evaluations [1].</param>
/// <param name="Steps">Accepted steps [1].</param>
/// <param name="Rejected">Rejected steps [1].</param>
public readonly record struct IntegrationReport(IntegrationStatus Status, double Time, long Evaluations, long Steps, long Rejected);
