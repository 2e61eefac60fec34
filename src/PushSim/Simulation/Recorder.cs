using PushSim.Contact;
using PushSim.Numerics;

namespace PushSim.Simulation;

/// <summary>
/// Takes samples at a fixed rate from the dense output, evaluates forces and currents there, and stops the run where a robot tips or is pushed over its
/// line.
/// </summary>
internal sealed class Recorder : IStepObserver
{
    private readonly SceneSystem _scene;
    private readonly double[] _y;
    private readonly double[] _dy;
    private readonly EventFinder<LineFunction>? _line;
    private readonly ContactRecord? _contact;

    public Recorder(ScenarioSettings scenario, SceneSystem scene)
    {
        _scene = scene;
        Scenario = scenario;
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
        if (scenario.Opponent is not null)
        {
            _line = new EventFinder<LineFunction>(new LineFunction(scene, scenario.Shove.Line), EventDirection.Rising, scene.Count, components: LineFunction.Components(scene));
        }
    }

    public ScenarioSettings Scenario { get; }

    /// <summary>One record per robot, the first robot first.</summary>
    public IReadOnlyList<RobotRecord> Robots { get; }

    /// <summary>Sample times [s]; the first <see cref="Count"/> are filled.</summary>
    public double[] Time { get; }

    public int Count { get; private set; }

    /// <summary>When a robot was pushed over its line [s]; null if none was.</summary>
    public double? LineTime { get; private set; }

    /// <summary>Channels of the contacts, cut to the samples taken.</summary>
    public IReadOnlyList<Channel> ContactChannels() => _contact?.Channels(Count) ?? [];

    public void Start(ReadOnlySpan<double> y0)
    {
        y0.CopyTo(_y);
        Sample(0.0);
    }

    public StepDecision OnStep(DenseOutput step)
    {
        double until = step.T1;
        if (_line is not null && _line.TryFind(step, out double crossed))
        {
            LineTime = crossed;
            until = crossed;
        }

        while (Count < Time.Length && Time[Count] <= until + 1e-12)
        {
            step.Evaluate(Math.Min(Time[Count], until), _y);
            if (!Sample(Time[Count]))
            {
                return StepDecision.Stop;
            }
        }

        return LineTime is null ? StepDecision.Continue : StepDecision.Stop;
    }

    private bool Sample(double t)
    {
        _scene.Evaluate(t, 0.0, _y, _dy);
        bool stands = true;
        foreach (RobotRecord robot in Robots)
        {
            robot.Sample(t, Count);
            stands &= !robot.HasTipped;
        }

        _contact?.Sample(Count);
        Count++;
        return stands;
    }
}
