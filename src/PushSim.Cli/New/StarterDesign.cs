using System.Text.RegularExpressions;
using PushSim.Scenarios.Shelf;

namespace PushSim.Cli.New;

/// <summary>A robot to begin with: what was asked, and what follows from it by similar robots' sizes and the parts shelf.</summary>
/// <param name="Mass">The whole robot [kg].</param>
/// <param name="Wheels">2, 4, 6 or 8; 2 have a ball in front [1].</param>
/// <param name="Motor">Motor of the shelf.</param>
/// <param name="Tyre">Tyre material of the shelf.</param>
internal sealed record StarterDesign(double Mass, int Wheels, ShelfPart Motor, ShelfPart Tyre)
{
    public const int DefaultWheels = 4;
    public const string DefaultTyre = "moulded natural rubber 60A";

    /// <summary>Mass of the plain starter, which the others are scaled from [kg].</summary>
    public const double PlainMass = 1.2;

    // No-load speed on the floor that a starter is geared for [m/s].
    private const double AimedSpeed = 2.0;
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

    public bool HasBelt => Wheels > 4;

    public bool IsBrushless => Motor.Name.Contains("brushless", StringComparison.Ordinal);

    /// <summary>Cells in series for the motor's voltage [1].</summary>
    public int Cells => CellsOf(Motor);

    /// <summary>Gear ratio to give in the file; null if the motor's own gears stand [1].</summary>
    public double? Ratio => Motor.Find("gear_ratio") is null ? Math.Max(1.0, Math.Round(SpeedAtRatioOne(Motor, Diameter) / AimedSpeed)) : null;

    private double StallOfSide => MotorsOfSide * CellVoltage * Cells / (Motor.Find("resistance")?.Value ?? 1.0);

    public ShelfPart Controller => IsBrushless
        ? PartShelf.Controllers.Parts.First(c => c.Name.Contains("brushless", StringComparison.Ordinal))
        : Brushed.FirstOrDefault(c => c.Find("current_limit")!.Value >= CarriedShare * StallOfSide) ?? Brushed[^1];

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

    private static ShelfPart[] Brushed => [.. PartShelf.Controllers.Parts.Where(c => !c.Name.Contains("brushless", StringComparison.Ordinal)).OrderBy(c => c.Find("current_limit")!.Value)];

    /// <summary>The motor that words mean: a name, or the words of one class, whose gears for a brisk robot are then taken.</summary>
    /// <param name="words">Name or words of it; null takes the class usual for the mass.</param>
    /// <param name="mass">The whole robot [kg].</param>
    /// <param name="wheels">2, 4, 6 or 8 [1].</param>
    /// <param name="wrong">Why there is none; empty if there is one.</param>
    public static ShelfPart? MotorOf(string? words, double mass, int wheels, out string wrong)
    {
        IReadOnlyList<ShelfPart> found = Find(PartShelf.Motors, words ?? UsualMotor(mass));
        string[] classes = [.. found.Select(Class).Distinct(StringComparer.Ordinal)];
        wrong = classes.Length == 1 ? "" : Choice("motor", words ?? UsualMotor(mass), PartShelf.Motors, classes);
        return classes.Length == 1 ? found.MinBy(m => Math.Abs(Math.Log(SpeedAtRatioOne(m, DiameterOf(mass, wheels)) / (m.Find("gear_ratio")?.Value ?? 1.0) / AimedSpeed))) : null;
    }

    /// <summary>The tyre material that words mean.</summary>
    public static ShelfPart? TyreOf(string? words, out string wrong)
    {
        IReadOnlyList<ShelfPart> found = Find(PartShelf.Tyres, words ?? DefaultTyre);
        wrong = found.Count == 1 ? "" : Choice("tyre material", words ?? DefaultTyre, PartShelf.Tyres, [.. found.Select(p => p.Name)]);
        return found.Count == 1 ? found[0] : null;
    }

    // a name or alias, else one that holds the words in a row, else one that holds each of them; "25mm" and "25 mm" are the same
    private static IReadOnlyList<ShelfPart> Find(PartShelf shelf, string words)
    {
        if (shelf.Find(words) is ShelfPart part)
        {
            return [part];
        }

        ShelfPart[] whole = [.. shelf.Parts.Where(p => p.Names.Any(n => Holds(Packed(n), Packed(words))))];
        string[] each = Regex.Replace(words, @"(?<=\d) +(?=(mm|V)\b)", "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return whole.Length > 0 ? whole : [.. shelf.Parts.Where(p => p.Names.Any(n => each.All(w => Holds(Packed(n), w))))];
    }

    // whether the name holds the words; a number in them is a whole one: "5 mm" is not in "25 mm"
    private static bool Holds(string name, string words)
    {
        for (int i = name.IndexOf(words, StringComparison.OrdinalIgnoreCase); i >= 0; i = name.IndexOf(words, i + 1, StringComparison.OrdinalIgnoreCase))
        {
            int end = i + words.Length;
            bool cutsInFront = i > 0 && char.IsDigit(name[i - 1]) && char.IsDigit(name[i]);
            bool cutsBehind = end > 0 && end < name.Length && char.IsDigit(name[end - 1]) && char.IsDigit(name[end]);
            if (!cutsInFront && !cutsBehind)
            {
                return true;
            }
        }

        return false;
    }

    private static string Packed(string text) => text.Replace(" ", "", StringComparison.Ordinal);

    private static string Choice(string one, string words, PartShelf shelf, IReadOnlyCollection<string> found) => found.Count == 0
        ? $"there is no {one} \"{words}\" on the shelf; it has: {string.Join("; ", shelf.Parts.Select(p => shelf == PartShelf.Motors ? Class(p) : p.Name).Distinct())}"
        : $"\"{words}\" may be {string.Join("; ", found)}: say more of one name";

    // the name without its gears
    private static string Class(ShelfPart motor) => motor.Name.EndsWith(":1", StringComparison.Ordinal) ? motor.Name[..motor.Name.LastIndexOf(", ", StringComparison.Ordinal)] : motor.Name;

    private static string UsualMotor(double mass) => mass switch
    {
        < 0.3 => "12 mm brushed gearmotor, 6 V",
        < 0.8 => "16 mm brushed gearmotor, 12 V",
        < 2.0 => "25 mm brushed gearmotor, 12 V",
        > 6.0 => "28 mm brushless motor with sensors",
        _ => "37 mm brushed gearmotor, 12 V",
    };

    private static int CellsOf(ShelfPart motor) => Math.Max(1, (int)Math.Round((motor.Find("voltage")?.Value ?? 12.0) / CellVoltage));

    private static double DiameterOf(double mass, int wheels) => Math.Cbrt(mass / PlainMass) * (wheels switch { 6 => 0.040, 8 => 0.032, _ => 0.050 });

    // [m/s]
    private static double SpeedAtRatioOne(ShelfPart motor, double diameter)
    {
        double constant = motor.Find("speed_constant")?.Value ?? (1.0 / motor.Find("torque_constant")!.Value!.Value);
        return constant * CellVoltage * CellsOf(motor) * 0.5 * diameter;
    }
}
