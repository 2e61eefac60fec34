namespace PushSim.Simulation;

/// <summary>What a robot's series are read from while it runs, row by row. All of them are allocated before the run.</summary>
/// <param name="system">The robot, whose equations were evaluated at each sample.</param>
/// <param name="state">State of the whole scene at the sample.</param>
/// <param name="first">Where the robot's explicit states begin in it.</param>
/// <param name="samples">Room for that many samples.</param>
/// <param name="touch">What the robot touches; null where there is nothing, or where another robot's trace has it.</param>
internal sealed class TraceTape(RobotSystem? system, double[] state, int first, int samples, TouchSum? touch)
{
    private readonly List<(Series Series, TracePart Part, Func<TracePart, double> Read)> _rows = [];

    /// <summary>Of no robot, and never sampled.</summary>
    public static TraceTape Blank => new(null, [], 0, 0, null);

    public RobotSystem System => system!;

    public TouchSum? Touch => touch;

    public IEnumerable<Series> All => _rows.Select(r => r.Series);

    public double State(int index) => state[first + index];

    public Series Add(string key, string unit, TracePart part, Func<TracePart, double> read)
    {
        var series = new Series(key, unit, new double[samples]);
        _rows.Add((series, part, read));
        return series;
    }

    public void Sample(int index)
    {
        foreach ((Series series, TracePart part, Func<TracePart, double> read) in _rows)
        {
            series.Set(index, read(part));
        }
    }
}
