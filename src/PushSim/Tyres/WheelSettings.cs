namespace PushSim.Tyres;

/// <summary>One wheel (or skid, or ball) of a robot. Frame as in <see cref="Chassis.ChassisSettings"/>.</summary>
public sealed record WheelSettings
{
    /// <summary>Name, unique in the robot.</summary>
    public required string Name { get; init; }

    /// <summary>Axle, forward of the plan's origin [m].</summary>
    public required double X { get; init; }

    /// <summary>Contact, left of the plan's origin [m].</summary>
    public required double Y { get; init; }

    /// <summary>Height of its lowest point above the floor, robot level, the others just touching [m]: above 0 for a wheel, tail or caster that only touches when the robot tips, below 0 for a dropped one.</summary>
    public double Height { get; init; }

    /// <summary>Rolling radius [m].</summary>
    public required double Radius { get; init; }

    /// <summary>Width, as others touch it [m]; null: that of the tyre's cover, else 0.4 of the diameter or what the body beside it leaves.</summary>
    public double? Width { get; init; }

    /// <summary>Spin inertia of wheel and tyre about the axle [kg m^2].</summary>
    public required double SpinInertia { get; init; }

    /// <summary>The tyre on it.</summary>
    public required TyreSettings Tyre { get; init; }

    /// <summary>True for a skid or ball that never turns (no drive may hold it).</summary>
    public bool IsSkid { get; init; }

    /// <summary>How fouled with dust its tread is at the start, 0 clean to 1 fully [1]; counts only where dust is on.</summary>
    public double InitialFouling { get; init; }
}
