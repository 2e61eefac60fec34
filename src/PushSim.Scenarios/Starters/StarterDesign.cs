using PushSim.Scenarios.Shelf;

namespace PushSim.Scenarios.Starters;

/// <summary>A robot to begin with: what was asked, and what follows from it by similar robots' sizes and the parts shelf.</summary>
/// <param name="Mass">The whole robot [kg].</param>
/// <param name="Wheels">2, 4, 6 or 8; 2 have a ball in front [1].</param>
/// <param name="Motor">Motor of the shelf.</param>
/// <param name="Tyre">Tyre material of the shelf.</param>
public sealed record StarterDesign(double Mass, int Wheels, ShelfPart Motor, ShelfPart Tyre)
{
    /// <summary>Wheels where nobody says [1].</summary>
    public const int DefaultWheels = 4;

    /// <summary>Mass of the plain starter, which the others are scaled from [kg].</summary>
    public const double PlainMass = 1.2;

    /// <summary>No-load speed on the floor that a starter is geared for [m/s].</summary>
    public const double AimedSpeed = 2.0;
    private const double CellVoltage = 3.7;
    private const double RacingCurrent = 15.0;

    // Current over capacity that a pack is asked for at most [1/h].
    private const double MostPerCapacity = 30.0;

    // A controller is taken that carries this share of its motors' stall current [1].
    private const double CarriedShare = 0.7;

    /// <summary>Lengths over those of the plain starter: similar robots weigh as the cube of their length [1].</summary>
    public double Scale => Math.Cbrt(Mass / PlainMass);

    /// <summary>Wheel diameter [m].</summary>
    public double Diameter => DiameterOf(Mass, Wheels);

    /// <summary>Motors of a side; six and eight wheels share two by a belt [1].</summary>
    public int MotorsOfSide => Math.Min(2, Wheels / 2);

    /// <summary>Whether a belt joins the wheels of a side.</summary>
    public bool HasBelt => Wheels > 4;

    /// <summary>Whether its motors are brushless.</summary>
    public bool IsBrushless => Motor.Name.Contains("brushless", StringComparison.Ordinal);

    /// <summary>Cells in series for the motor's voltage [1].</summary>
    public int Cells => Shop?.Voltage is double volts ? Math.Max(1, (int)Math.Round(volts / CellVoltage)) : CellsOf(Motor);

    /// <summary>Gear ratio to give in the file; null if the motor's own gears stand [1].</summary>
    public double? Ratio => Shop is null && Motor.Find("gear_ratio") is null ? Math.Max(1.0, Math.Round(SpeedAtRatioOne(Motor, Diameter) / AimedSpeed)) : null;

    private double StallOfSide => MotorsOfSide * (Shop?.Stall(NoLoad) ?? CellVoltage * Cells / (Motor.Find("resistance")?.Value ?? 1.0));

    /// <summary>Controller that carries its motors.</summary>
    public ShelfPart Controller => IsBrushless
        ? PartShelf.Controllers.Parts.First(c => c.Name.Contains("brushless", StringComparison.Ordinal))
        : Brushed.FirstOrDefault(c => c.Find("current_limit")!.Value >= CarriedShare * StallOfSide) ?? Brushed[^1];

    /// <summary>Cell of its pack.</summary>
    public ShelfPart Cell => PartShelf.Cells.Parts[IsBrushless || 2.0 * StallOfSide > RacingCurrent ? 0 : 1];

    /// <summary>Capacity of the pack [A h]: by the mass, and enough for the current of all motors stalled or of the controllers.</summary>
    public double Capacity
    {
        get
        {
            double limit = Controller.Find("current_limit")!.Value!.Value * (IsBrushless ? MotorsOfSide : 1);
            double current = 2.0 * Math.Min(StallOfSide, limit);
            return Math.Max(0.1, 0.05 * Math.Ceiling(Math.Max(0.45 * Mass / PlainMass, current / MostPerCapacity) / 0.05));
        }
    }

    /// <summary>What its shop tells of the motor; null: the shelf's own.</summary>
    public ShopMotor? Shop { get; init; }

    /// <summary>Name of the robot.</summary>
    public string Name { get; init; } = "starter";

    /// <summary>No-load current of the shelf's motor [A].</summary>
    public double NoLoad => Motor.Find("no_load_current")?.Value ?? 0.0;

    /// <summary>Ratio at which the shelf's winding has the shop's speed [1].</summary>
    public double RatioOfShop => Shop is null ? 1.0 : Math.Max(1.0, ConstantOf(Motor) * Shop.VoltageOrUsual * 30.0 / Math.PI / Shop.Rpm);

    private static ShelfPart[] Brushed => [.. PartShelf.Controllers.Parts.Where(c => !c.Name.Contains("brushless", StringComparison.Ordinal)).OrderBy(c => c.Find("current_limit")!.Value)];

    /// <summary>Wheel diameter of a robot [m].</summary>
    public static double DiameterOf(double mass, int wheels) => Math.Cbrt(mass / PlainMass) * (wheels switch { 6 => 0.040, 8 => 0.032, _ => 0.050 });

    /// <summary>Speed on the floor without load and gears [m/s].</summary>
    public static double SpeedAtRatioOne(ShelfPart motor, double diameter)
    {
        return ConstantOf(motor) * CellVoltage * CellsOf(motor) * 0.5 * diameter;
    }

    // speed constant [rad/(s V)]
    internal static double ConstantOf(ShelfPart motor) => motor.Find("speed_constant")?.Value ?? (1.0 / motor.Find("torque_constant")!.Value!.Value);

    private static int CellsOf(ShelfPart motor) => Math.Max(1, (int)Math.Round((motor.Find("voltage")?.Value ?? 12.0) / CellVoltage));
}
