namespace PushSim.Simulation;

/// <summary>Records where the robots of a scene are along their floors, at the times and with the bits of <see cref="Recorder"/>: between the steps nothing else is computed.</summary>
internal sealed class PlaceTape : IRunTape
{
    private readonly StepFeatures<R1> _features;
    private readonly double[] _times;
    private readonly double[][] _x;
    private readonly int[] _state;
    private int _count;

    /// <param name="scenario">Scenario whose robots are in canonical order.</param>
    /// <param name="scene">Its scene.</param>
    public PlaceTape(ScenarioSettings scenario, SceneSystem scene)
    {
        _times = Recorder.Times(scenario);
        _x = [.. scene.Robots.Select(_ => new double[_times.Length])];
        _state = [.. scene.Robots.Select((_, k) => scene.FirstExplicit(k) + StateLayout.X)];
        _features = StepFeatures<R1>.Of(scene);
        Watch.Start(scene, scenario);
    }

    /// <summary>Times of the samples taken [s].</summary>
    public ReadOnlySpan<double> Time => _times.AsSpan(0, _count);

    /// <inheritdoc/>
    public MatchWatch Watch { get; } = new();

    /// <summary>Place of a robot's centre of mass along its own floor at them [m].</summary>
    /// <param name="robot">0 for the first robot.</param>
    public ReadOnlySpan<double> X(int robot) => _x[robot].AsSpan(0, _count);

    /// <inheritdoc/>
    public void Start(ReadOnlySpan<double> y0)
    {
        for (int k = 0; k < _x.Length; k++)
        {
            _x[k][0] = y0[_state[k]];
        }

        _count = 1;
    }

    /// <inheritdoc/>
    public StepDecision OnStep(DenseOutput step)
    {
        _features.Read();
        StepDecision decision = Watch.OnStep(step.AsLaneStep(), _features, 0);
        TakeSamples(step);
        return decision;
    }

    /// <inheritdoc/>
    public void TakeSamples(DenseOutput step)
    {
        double until = double.IsNaN(Watch.LineTime) ? step.T1 : Watch.LineTime;
        for (; _count < _times.Length && _times[_count] <= until + Recorder.Late; _count++)
        {
            double t = Math.Min(_times[_count], until);
            for (int k = 0; k < _x.Length; k++)
            {
                _x[k][_count] = step.Evaluate(t, _state[k]);
            }
        }
    }
}
