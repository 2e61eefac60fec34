using PushSim.Binding;
using PushSim.Numerics;

namespace PushSim.Simulation;

/// <summary>
/// Takes samples at a fixed rate from the dense output, evaluates forces and currents there, and stops the run where <see cref="MatchWatch"/>
/// says so.
/// </summary>
internal sealed class Recorder : IStepObserver
{
    private readonly SceneSystem _scene;
    private readonly double[] _y;
    private readonly double[] _dy;
    private readonly StepFeatures<R1> _features;
    private readonly ContactRecord? _contact;
    private readonly BindingRecord[] _bindings;

    public Recorder(ScenarioSettings scenario, SceneSystem scene)
    {
        _scene = scene;
        double rate = scenario.Numerics.SampleRate;
        Time = new double[(int)Math.Floor((scenario.Manoeuvre.EndTime * rate) + 1e-9) + 1];
        for (int i = 0; i < Time.Length; i++)
        {
            Time[i] = i / rate;
        }

        _y = new double[scene.Count];
        _dy = new double[scene.Count];
        Robots = [.. scene.Robots.Select((r, k) => new RobotRecord(r, _y, scene.FirstExplicit(k), Time.Length))];
        _contact = scene.Contacts.Count > 0 ? new ContactRecord(scene, Time.Length) : null;
        _features = StepFeatures<R1>.Of(scene);
        _bindings = [.. scene.Robots.Select(r => new BindingRecord(r, Time))];
        Watch.Start(scene, scenario);
    }

    /// <summary>One record per robot, the first robot first.</summary>
    public IReadOnlyList<RobotRecord> Robots { get; }

    /// <summary>Sample times [s]; the first <see cref="Count"/> are filled.</summary>
    public double[] Time { get; }

    public int Count { get; private set; }

    /// <summary>What the verdict hangs on.</summary>
    public MatchWatch Watch { get; } = new();

    /// <summary>What bound each wheel of a robot, cut to the samples taken.</summary>
    public IReadOnlyList<BindingMoments> Bindings(int robot) => _bindings[robot].Wheels(Count);

    /// <summary>Channels of the contacts, cut to the samples taken.</summary>
    public IReadOnlyList<Channel> ContactChannels() => _contact?.Channels(Count) ?? [];

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
        double until = double.IsNaN(Watch.LineTime) ? step.T1 : Watch.LineTime;
        while (Count < Time.Length && Time[Count] <= until + 1e-12)
        {
            step.Evaluate(Math.Min(Time[Count], until), _y);
            Sample(Time[Count]);
        }

        return decision;
    }

    private void Sample(double t)
    {
        _scene.Evaluate(t, 0.0, _y, _dy);
        _features.Read();
        for (int k = 0; k < Robots.Count; k++)
        {
            Robots[k].Sample(Count);
            _bindings[k].Sample(Count, _features.Robots[k]);
        }

        _contact?.Sample(Count);
        Count++;
    }
}
