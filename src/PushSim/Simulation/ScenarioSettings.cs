using PushSim.Contact;
using PushSim.Surroundings;

namespace PushSim.Simulation;

/// <summary>A second robot, facing the first: its own floor frame is the first one's turned by exactly half a turn, so that equal robots compute
/// with the same numbers.</summary>
/// <param name="Robot">The opponent.</param>
/// <param name="Manoeuvre">What it does, in its own frame; kind and end time are those of the scenario.</param>
public sealed record OpponentSettings(RobotSettings Robot, ManoeuvreSettings Manoeuvre);

/// <summary>How a shove starts and who wins it.</summary>
public sealed record ShoveSettings
{
    /// <summary>Least distance of the two outlines along floor x at the start; they stand half of it to either side of floor x = 0 [m].</summary>
    public double Gap { get; init; } = 0.1;

    /// <summary>Opponent's centre line to the left of the first robot's, seen by the first robot, half to either side of floor y = 0 [m].</summary>
    public double Offset { get; init; }

    /// <summary>A robot whose centre is pushed back this far behind its own start has lost [m].</summary>
    public double Line { get; init; } = 0.5;

    /// <summary>Ground gained at the contact above which a shove that ends by time is won [m].</summary>
    public double DecidingGround { get; init; } = 0.02;

    /// <summary>Whether a match goes on behind the line, to see what it would have come to without one.</summary>
    internal bool PlaysOn { get; init; }
}

/// <summary>Tyres over many runs of the same manoeuvre: what a match is, how often they are cleaned, which loss of grip is too much.</summary>
public sealed record TyreLifeSettings
{
    /// <summary>Time that this manoeuvre goes on in one match [s].</summary>
    public double MatchTime { get; init; } = 60.0;

    /// <summary>Runs that are looked at, each starting with the dust of the last [1].</summary>
    public int Runs { get; init; } = 10;

    /// <summary>Runs from one cleaning of the tyres to the next; 0: never cleaned [1].</summary>
    public int CleanEvery { get; init; }

    /// <summary>Share of the dust that a cleaning takes off [1].</summary>
    public double CleaningShare { get; init; } = 1.0;

    /// <summary>Loss of grip, as a share of the clean tyre's, whose run is looked for [1].</summary>
    public double GripLoss { get; init; } = 0.2;
}

/// <summary>How the equations are integrated.</summary>
public sealed record NumericsSettings
{
    /// <summary>For one of many drawn matches: half the work of the default or less. Of 1200 matches of four scenarios the ground gained differs by 0.6 mm in the median from the
    /// default's, and 2 have another winner.</summary>
    public static NumericsSettings OfDraws { get; } = new() { Method = "ARK3(2)", Tolerance = 3e-3 };

    /// <summary>These as one of many drawn matches takes them: many need not be as accurate as one run, unless method or tolerance is asked for.</summary>
    public NumericsSettings ForDraws() => IsAskedFor ? this : this with { Method = OfDraws.Method, Tolerance = OfDraws.Tolerance, Precision = DrawPrecision };

    /// <summary>Number type of the equations.</summary>
    public Precision Precision { get; init; }

    /// <summary>The same of drawn matches, unless method or tolerance is asked for: then doubles. Table of what it changes: src/docs/accuracy.md.</summary>
    public Precision DrawPrecision { get; init; } = Precision.Single;

    /// <summary>Whether method or tolerance is asked for, so that drawn matches keep to it too.</summary>
    public bool IsAskedFor { get; init; }

    /// <summary>Method name, one of the table's.</summary>
    public string Method { get; init; } = "ARK4(3)";

    /// <summary>Relative tolerance; the absolute ones per quantity scale with it [1].</summary>
    public double Tolerance { get; init; } = 1e-4;

    /// <summary>Cap on right-hand-side evaluations per simulated second [1/s].</summary>
    public double MaxEvaluationsPerSecond { get; init; } = 2e6;

    /// <summary>History samples per second [1/s].</summary>
    public double SampleRate { get; init; } = 1000.0;
}

/// <summary>A whole scenario, checked and in SI.</summary>
public sealed record ScenarioSettings
{
    /// <summary>Name, used for the output folder.</summary>
    public required string Name { get; init; }

    /// <summary>The question it answers, one sentence.</summary>
    public string Question { get; init; } = "";

    /// <summary>Keys of <see cref="AskedKeys"/> that its verdict must tell; empty: those usual for its manoeuvre.</summary>
    public IReadOnlyList<string> Ask { get; init; } = [];

    /// <summary>The robot.</summary>
    public required RobotSettings Robot { get; init; }

    /// <summary>The floor.</summary>
    public FloorSettings Floor { get; init; } = new();

    /// <summary>The tether, if any.</summary>
    public TetherSettings? Tether { get; init; }

    /// <summary>What the robot is told to do.</summary>
    public required ManoeuvreSettings Manoeuvre { get; init; }

    /// <summary>Drives of the first robot that are turned from outside at given speeds; empty for none.</summary>
    public IReadOnlyList<GivenSpeed> GivenSpeeds { get; init; } = [];

    /// <summary>The second robot of a shove, if any.</summary>
    public OpponentSettings? Opponent { get; init; }

    /// <summary>Start and rule of a shove.</summary>
    public ShoveSettings Shove { get; init; } = new();

    /// <summary>Walls, in floor axes.</summary>
    public IReadOnlyList<WallSettings> Walls { get; init; } = [];

    /// <summary>What contacts are made of.</summary>
    public ContactSettings Contact { get; init; } = new();

    /// <summary>What is asked about the tyres over many runs; null: nothing.</summary>
    public TyreLifeSettings? TyreLife { get; init; }

    /// <summary>A log of a real pull to lay over the simulated one, if any.</summary>
    public MeasuredPull? Measured { get; init; }

    /// <summary>How it is integrated.</summary>
    public NumericsSettings Numerics { get; init; } = new();
}
