namespace PushSim.Simulation;

/// <summary>What the robot is told to do.</summary>
public sealed record ManoeuvreSettings
{
    /// <summary>The kind.</summary>
    public required ManoeuvreKind Kind { get; init; }

    /// <summary>What is so of every manoeuvre of the kind.</summary>
    public ManoeuvreTraits Traits => ManoeuvreTraits.Of(Kind);

    /// <summary>Commands in rising time; before the first point both are zero.</summary>
    public required IReadOnlyList<CommandPoint> Commands { get; init; }

    /// <summary>When the run ends [s].</summary>
    public required double EndTime { get; init; }

    /// <summary>Forward speed at the start [m/s]; wheels roll along.</summary>
    public double InitialSpeed { get; init; }

    /// <summary>Heading at the start, positive counter-clockwise from floor x (of an opponent: from floor -x) [rad].</summary>
    public double InitialHeading { get; init; }

    /// <summary>Delay and heading hold.</summary>
    public DriverSettings Driver { get; init; } = new();

    /// <summary>When the first command comes, delay included [s]; null if none does.</summary>
    public double? FirstCommand
    {
        get
        {
            for (int i = 0; i < Commands.Count; i++)
            {
                if (Commands[i].Throttle != 0.0 || Commands[i].Turn != 0.0)
                {
                    return Driver.ReactionDelay + (!Commands[i].Ramp ? Commands[i].Time : i > 0 ? Commands[i - 1].Time : 0.0);
                }
            }

            return null;
        }
    }

    /// <summary>Greatest throttle of either sign that is commanded, 0..1, 0 if none is [1].</summary>
    public double GreatestThrottle => Math.Min(1.0, Commands.Select(c => Math.Abs(c.Throttle)).DefaultIfEmpty(0.0).Max());
}
