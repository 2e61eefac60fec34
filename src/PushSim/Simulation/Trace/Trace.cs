namespace PushSim.Simulation;

/// <summary>What one robot's run recorded, part by part. A series is one property of its part, where key, unit and what it reads stand beside each other; parts stand here in
/// the order of <see cref="All"/>.</summary>
public sealed class Trace
{
    internal Trace(Series time, TraceTape tape)
    {
        RobotSettings robot = tape.System.Scenario.Robot;
        Time = time;
        Body = new BodyTrace(new TracePart(tape));
        Tether = tape.System.Equations.Tether is null ? null : new TetherTrace(new TracePart(tape));
        Wheels = [.. robot.Wheels.Select((w, i) => new WheelTrace(new TracePart(tape, w.Name, i)))];
        if (tape.System.Equations.Battery is not null)
        {
            Battery = new BatteryTrace(new TracePart(tape));
            Controllers = [.. robot.Controllers.Select((c, i) => new ControllerTrace(new TracePart(tape, c.Name, i)))];
            Motors = [.. robot.Controllers.SelectMany(c => c.Motors).Select((m, i) =>
                new MotorTrace(new TracePart(tape, $"{robot.Drives[m.Drive].Name} {m.Motor + 1}", i), m.Drive, m.Motor))];
        }

        Contact = tape.Touch is null ? null : new ContactTrace(new TracePart(tape));
        All = [.. tape.All];
    }

    private Trace()
    {
        Time = TimeOf([]);
        Body = new BodyTrace(new TracePart(TraceTape.Blank));
        Wheels = [];
        All = [];
    }

    /// <summary>That of a run that could not start: no samples, no wheels.</summary>
    public static Trace Empty { get; } = new();

    /// <summary>Sample times [s].</summary>
    public Series Time { get; }

    /// <summary>The body.</summary>
    public BodyTrace Body { get; }

    /// <summary>The tether; null without one.</summary>
    public TetherTrace? Tether { get; }

    /// <summary>The wheels, in the robot's order.</summary>
    public IReadOnlyList<WheelTrace> Wheels { get; }

    /// <summary>The battery; null without one.</summary>
    public BatteryTrace? Battery { get; }

    /// <summary>The speed controllers, in the robot's order; none without a battery.</summary>
    public IReadOnlyList<ControllerTrace> Controllers { get; } = [];

    /// <summary>The motors, controller by controller; none without a battery.</summary>
    public IReadOnlyList<MotorTrace> Motors { get; } = [];

    /// <summary>What the first robot touches; null where there is nothing to touch, and for the opponent.</summary>
    public ContactTrace? Contact { get; }

    /// <summary>All series but the time, part by part, as CSV shows them.</summary>
    public IReadOnlyList<Series> All { get; }

    /// <summary>Index of the first sample at or after a time, the last where there is none [1].</summary>
    /// <param name="t">The time [s].</param>
    public int IndexAt(double t) => FirstAt(Time.Values, t);

    /// <summary>The same among other times.</summary>
    /// <param name="times">Rising times [s].</param>
    /// <param name="t">The time [s].</param>
    internal static int FirstAt(ReadOnlySpan<double> times, double t)
    {
        int i = times.BinarySearch(t - 1e-9);
        return Math.Clamp(i < 0 ? ~i : i, 0, times.Length - 1);
    }

    /// <summary>Sample times as a series [s].</summary>
    internal static Series TimeOf(double[] times) => new("time_s", "s", times);
}
