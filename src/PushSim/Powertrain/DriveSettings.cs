namespace PushSim.Powertrain;

/// <summary>One spin: motors and wheels tied by fixed ratios (gears, belt, chain). A free wheel is a drive without motors.</summary>
public sealed record DriveSettings
{
    /// <summary>Name, unique in the robot.</summary>
    public required string Name { get; init; }

    /// <summary>The wheels it turns: index into the robot's wheels and wheel speed / drive speed [1].</summary>
    public required IReadOnlyList<(int Wheel, double Ratio)> Wheels { get; init; }

    /// <summary>The motors that turn it: the motor and motor speed / drive speed, G [1].</summary>
    public IReadOnlyList<(MotorSettings Motor, double Ratio)> Motors { get; init; } = [];

    /// <summary>Gear efficiency at load, eta [1]; its loss acts as friction (1 - eta) |Kt G i|.</summary>
    public double GearEfficiency { get; init; } = 1.0;

    /// <summary>Holding torque at the drive in the zero-command mode locked, T_hold [N m].</summary>
    public double HoldTorque { get; init; }

    /// <summary>Dry friction of the drive itself besides its motors' tau0 G [N m].</summary>
    public double FrictionTorque { get; init; }

    /// <summary>Wind-up of the gear friction at which it slides, s_max [rad at the drive].</summary>
    public double FrictionWindUp { get; init; } = 0.01;

    /// <summary>Damping ratio zeta of the gear friction's wind-up [1].</summary>
    public double FrictionDamping { get; init; } = 0.5;

    /// <summary>Inertia of shafts and gears seen at the drive, besides wheels and rotors [kg m^2].</summary>
    public double ExtraInertia { get; init; }
}
