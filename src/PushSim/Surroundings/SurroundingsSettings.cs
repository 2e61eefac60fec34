namespace PushSim.Surroundings;

/// <summary>A rectangle of floor with its own friction, in the floor's frame.</summary>
/// <param name="MinX">Lower x edge [m].</param>
/// <param name="MaxX">Upper x edge [m].</param>
/// <param name="MinY">Lower y edge [m].</param>
/// <param name="MaxY">Upper y edge [m].</param>
/// <param name="FrictionScale">Multiple of every tyre's friction on it [1].</param>
public sealed record FloorPatch(double MinX, double MaxX, double MinY, double MaxY, double FrictionScale);

/// <summary>The floor. Its frame's x and y lie in the board; the robot starts at the origin, heading along x unless told otherwise.</summary>
public sealed record FloorSettings
{
    /// <summary>Multiple of every tyre's friction [1].</summary>
    public double FrictionScale { get; init; } = 1.0;

    /// <summary>Fouling speed: multiple of dust pick-up, 0 clean, 1 the tyre's own fouling distance [1].</summary>
    public double Dust { get; init; }

    /// <summary>Abrasiveness against the standard sheet of the wear test; 14 dry roads have 0.005 to 0.03 on car tyres [1].</summary>
    public double Abrasiveness { get; init; } = 0.005;

    /// <summary>Slope along x, positive when the board rises towards +x [rad].</summary>
    public double SlopeX { get; init; }

    /// <summary>Slope along y, positive when the board rises towards +y [rad].</summary>
    public double SlopeY { get; init; }

    /// <summary>Patches with their own friction; a later one covers an earlier one.</summary>
    public IReadOnlyList<FloorPatch> Patches { get; init; } = [];

    /// <summary>Gravity [m/s^2].</summary>
    public double Gravity { get; init; } = 9.80665;

    /// <summary>Air temperature [degree Celsius].</summary>
    public double AirTemperature { get; init; } = 20.0;
}

/// <summary>A tether from the robot through a load cell to an anchor.</summary>
public sealed record TetherSettings
{
    /// <summary>Hook on the robot, forward of the plan's origin [m].</summary>
    public required double HookX { get; init; }

    /// <summary>Hook on the robot, left of the plan's origin [m].</summary>
    public double HookY { get; init; }

    /// <summary>Hook height above the floor [m].</summary>
    public required double HookHeight { get; init; }

    /// <summary>Anchor at the start, floor frame x [m].</summary>
    public required double AnchorX { get; init; }

    /// <summary>Anchor at the start, floor frame y [m].</summary>
    public double AnchorY { get; init; }

    /// <summary>Anchor height above the floor [m].</summary>
    public required double AnchorHeight { get; init; }

    /// <summary>Slack at the start: free length less the starting distance from hook to anchor [m].</summary>
    public double Slack { get; init; } = 0.01;

    /// <summary>Stiffness of cord and cell together, k [N/m].</summary>
    public required double Stiffness { get; init; }

    /// <summary>Damping d of k e (1 + d e') [s/m].</summary>
    public double Damping { get; init; } = 0.5;

    /// <summary>Anchor speed along floor x against time: (s, m/s), linear between the points, held at both ends; empty: fixed anchor.</summary>
    public IReadOnlyList<(double Time, double Speed)> AnchorSpeed { get; init; } = [];

    /// <summary>The load cell's read-out; null: the true force is recorded only.</summary>
    public LoadCellSettings? Cell { get; init; }
}

/// <summary>What a real load cell shows of a force.</summary>
public sealed record LoadCellSettings
{
    /// <summary>Readings per second [1/s].</summary>
    public double Rate { get; init; } = 80.0;

    /// <summary>Time constant of its first-order filter [s]; 0 is none.</summary>
    public double FilterTime { get; init; }

    /// <summary>Resolution: readings are rounded to it [N]; 0 is none.</summary>
    public double Resolution { get; init; }

    /// <summary>Standard deviation of its noise [N].</summary>
    public double Noise { get; init; }

    /// <summary>Constant reading of the slack chain, added to every reading [N].</summary>
    public double Tare { get; init; }

    /// <summary>Seed of the noise.</summary>
    public ulong Seed { get; init; } = 1;
}
