namespace PushSim.Chassis;

/// <summary>The rigid body of a robot. Frame: x forward, y left, z up (ISO 8855); the origin of the plan is any point the
/// builder likes (usually the middle of the body), on the floor. All lengths in this frame.</summary>
public sealed record ChassisSettings
{
    /// <summary>Total mass of the robot with wheels and battery [kg].</summary>
    public required double Mass { get; init; }

    /// <summary>Centre of mass, forward of the plan's origin [m].</summary>
    public double CentreOfMassX { get; init; }

    /// <summary>Centre of mass, left of the plan's origin [m].</summary>
    public double CentreOfMassY { get; init; }

    /// <summary>Centre of mass above the floor with the tyres just touching [m].</summary>
    public required double CentreOfMassHeight { get; init; }

    /// <summary>Length of the body box along x [m].</summary>
    public required double Length { get; init; }

    /// <summary>Width of the body box along y [m].</summary>
    public required double Width { get; init; }

    /// <summary>Height of the body box along z [m].</summary>
    public required double Height { get; init; }

    /// <summary>Roll inertia about x through the centre of mass [kg m^2]; null: estimated from the body box.</summary>
    public double? RollInertia { get; init; }

    /// <summary>Pitch inertia about y through the centre of mass [kg m^2]; null: estimated from the body box.</summary>
    public double? PitchInertia { get; init; }

    /// <summary>Yaw inertia about z through the centre of mass [kg m^2]; null: estimated from the body box.</summary>
    public double? YawInertia { get; init; }

    /// <summary>Downforce of a magnet or suction, positive pressing on the floor [N].</summary>
    public double Downforce { get; init; }

    /// <summary>L, rise of its place off the floor that leaves a quarter of the downforce, D/(1 + rise/L)^2 [m]; infinite: the force does not fall.</summary>
    public double DownforceGap { get; init; } = double.PositiveInfinity;

    /// <summary>Place of the downforce, forward of the plan's origin [m].</summary>
    public double DownforceX { get; init; }

    /// <summary>Place of the downforce, left of the plan's origin [m].</summary>
    public double DownforceY { get; init; }
}
