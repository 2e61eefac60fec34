using PushSim.Binding;

namespace PushSim.Simulation;

/// <summary>Takes samples at a fixed rate from the dense output, evaluates forces and currents there, and stops the run where <see cref="MatchWatch"/> says so.</summary>
internal sealed class Recorder : IRunTape
{
    /// <summary>How far behind a step's end a sample still belongs to it: rounding of its time [s].</summary>
    public const double Late = 1e-12;

    private readonly SceneSystem _scene;
    private readonly double[] _y;
    private readonly double[] _dy;
    private readonly StepFeatures<R1> _features;
    private readonly double[] _times;
    private readonly TouchSum? _touch;
    private readonly TraceTape[] _tapes;
    private readonly BindingRecord[] _bindings;
    private int _count;

    public Recorder(ScenarioSettings scenario, SceneSystem scene)
    {
        _scene = scene;
        _times = Times(scenario);
        _y = new double[scene.Count];
        _dy = new double[scene.Count];
        _touch = scene.Contacts.Count > 0 ? new TouchSum(scene) : null;
        _tapes = [.. scene.Robots.Select((r, k) => new TraceTape(r, _y, scene.FirstExplicit(k), _times.Length, k == 0 ? _touch : null))];
        Series time = Trace.TimeOf(_times);
        Traces = [.. _tapes.Select(t => new Trace(time, t))];
        _features = StepFeatures<R1>.Of(scene);
        _bindings = [.. scene.Robots.Select(r => new BindingRecord(r, _times))];
        Watch.Start(scene, scenario);
    }

    /// <summary>One per robot, the first robot first; whole once <see cref="Stop"/> was called.</summary>
    public IReadOnlyList<Trace> Traces { get; }

    /// <summary>What the verdict hangs on.</summary>
    public MatchWatch Watch { get; } = new();

    /// <summary>What bound each wheel of a robot; whole once <see cref="Stop"/> was called.</summary>
    public IReadOnlyList<BindingMoments> Bindings(int robot) => _bindings[robot].Wheels(Traces[robot], _count);

    /// <summary>Times of a scenario's samples [s].</summary>
    public static double[] Times(ScenarioSettings scenario)
    {
        double rate = scenario.Numerics.SampleRate;
        double[] times = new double[(int)Math.Floor((scenario.Manoeuvre.EndTime * rate) + 1e-9) + 1];
        for (int i = 0; i < times.Length; i++)
        {
            times[i] = i / rate;
        }

        return times;
    }

    public void Start(ReadOnlySpan<double> y0)
    {
        y0.CopyTo(_y);
        Sample(0.0);
    }

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
        double until = double.IsNaN(Watch.LineTime) ? step.T1 : Watch.LineTime;
        while (_count < _times.Length && _times[_count] <= until + Late)
        {
            step.Evaluate(Math.Min(_times[_count], until), _y);
            Sample(_times[_count]);
        }
    }

    /// <summary>Cuts the traces to the samples taken.</summary>
    public void Stop()
    {
        foreach (Series series in Traces.SelectMany(t => t.All).Append(Traces[0].Time))
        {
            series.Cut(_count);
        }
    }

    private void Sample(double t)
    {
        _scene.Evaluate(t, 0.0, _y, _dy);
        _touch?.Read();
        foreach (TraceTape tape in _tapes)
        {
            tape.Sample(_count);
        }

        _features.Read();
        for (int k = 0; k < _bindings.Length; k++)
        {
            _bindings[k].Sample(_count, _features.Robots[k]);
        }

        _count++;
    }
}
