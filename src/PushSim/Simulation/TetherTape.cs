namespace PushSim.Simulation;

/// <summary>Records the force of the first robot's tether alone, at the times and with the bits of <see cref="Recorder"/>: between the steps nothing else is computed.</summary>
internal sealed class TetherTape : IRunTape
{
    private readonly SceneSystem _scene;
    private readonly StepFeatures<R1> _features;
    private readonly double[] _y;
    private int _count;

    /// <param name="scenario">Scenario with a tether, robots in canonical order.</param>
    /// <param name="scene">Its scene.</param>
    public TetherTape(ScenarioSettings scenario, SceneSystem scene)
    {
        _scene = scene;
        Time = Recorder.Times(scenario);
        Force = new double[Time.Length];
        _y = new double[scene.Count];
        _features = StepFeatures<R1>.Of(scene);
        Watch.Start(scene, scenario);
    }

    /// <summary>Times of the samples [s].</summary>
    public double[] Time { get; }

    /// <summary>Tension at them; 0 while slack [N].</summary>
    public double[] Force { get; }

    /// <summary>What may end the run.</summary>
    public MatchWatch Watch { get; } = new();

    /// <summary>Takes the sample at the start.</summary>
    public void Start(ReadOnlySpan<double> y0)
    {
        y0.CopyTo(_y);
        Sample();
    }

    /// <inheritdoc/>
    public StepDecision OnStep(DenseOutput step)
    {
        // before any sample: the equations still stand at the step's end
        _features.Read();
        StepDecision decision = Watch.OnStep(step.AsLaneStep(), _features, 0);
        TakeSamples(step);
        return decision;
    }

    /// <summary>Takes the samples of a step that <see cref="Watch"/> has seen.</summary>
    public void TakeSamples(DenseOutput step)
    {
        while (_count < Time.Length && Time[_count] <= step.T1 + Recorder.Late)
        {
            step.Evaluate(Math.Min(Time[_count], step.T1), _y);
            Sample();
        }
    }

    private void Sample()
    {
        Force[_count] = _scene.Equations.Robots[0].Tension(Time[_count], System.Runtime.InteropServices.MemoryMarshal.Cast<double, R1>(_y.AsSpan())).Value;
        _count++;
    }
}
