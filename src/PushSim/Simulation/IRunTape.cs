namespace PushSim.Simulation;

/// <summary>What is recorded of a run, and the watch that ends it.</summary>
internal interface IRunTape : IStepObserver
{
    /// <summary>What may end the run.</summary>
    MatchWatch Watch { get; }

    /// <summary>Takes the sample at the start.</summary>
    /// <param name="y0">The start, each component in its own unit.</param>
    void Start(ReadOnlySpan<double> y0);

    /// <summary>Takes the samples of a step that <see cref="Watch"/> has seen.</summary>
    /// <param name="step">The step.</param>
    void TakeSamples(DenseOutput step);
}
