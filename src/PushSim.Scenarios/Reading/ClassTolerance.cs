using PushSim.Analysis.Chance;

namespace PushSim.Scenarios.Reading;

/// <summary>
/// Tolerances of values that are stated without one, or not at all: what two prints, two tables, two motors of a lot, two charges and two hands at the start differ by. Where no source stands
/// beside them the sizes are estimates from common practice.
/// </summary>
/// <param name="Section">Table of the key, for example "tyre".</param>
/// <param name="Key">The key.</param>
/// <param name="Share">Half-width as a share of the value [1].</param>
/// <param name="Absolute">Half-width beside it [unit of the key, SI].</param>
/// <param name="Spread">How values lie within it.</param>
internal sealed record ClassTolerance(string Section, string Key, double Share, double Absolute, DrawShape Spread)
{
    private const double Degree = Math.PI / 180.0;

    // Hands at the sticks differ by this, later only [s].
    private const double Reaction = 0.05;

    // And eyes and thumbs by this while they steer [s].
    private const double DeadTime = 0.05;

    public static readonly ClassTolerance[] All =
    [
        // friction between tables and days about 30 % in all (common practice, no source): the floor and its day, which all tyres share, and the tyre's own print and lot
        new("floor", "friction", 0.25, 0.0, DrawShape.Normal),
        new("tyre", "static_friction", 0.15, 0.0, DrawShape.Normal),
        new("tyre", "kinetic_friction", 0.15, 0.0, DrawShape.Normal),

        // copper by its temperature and brushes; windings of one kind measured 2.85 to 2.92 ohm and 15.5 to 15.9 mN m/A (a student project, at second hand), cheap ones more
        new("motor", "resistance", 0.10, 0.0, DrawShape.Normal),
        new("motor", "stall_current", 0.10, 0.0, DrawShape.Normal),
        new("motor", "locked_rotor_current", 0.10, 0.0, DrawShape.Normal),
        new("motor", "torque_constant", 0.05, 0.0, DrawShape.Normal),
        new("motor", "speed_constant", 0.05, 0.0, DrawShape.Normal),
        new("motor", "no_load_speed", 0.05, 0.0, DrawShape.Normal),
        new("motor", "output_speed", 0.05, 0.0, DrawShape.Normal),

        // a stage has 10 to 15 % of loss by two sources (Faulhaber, Machine Design, 2002; a course at a university, 2008), so one or two stages are off by as much
        new("motor", "gear_efficiency", 0.08, 0.0, DrawShape.Normal),
        new("drive", "gear_efficiency", 0.08, 0.0, DrawShape.Normal),

        // estimate: resistance grows with age and in the cold, and most sheets tell none
        new("battery", "resistance", 0.20, 0.0, DrawShape.Normal),
        new("battery", "charge", 0.0, 0.05, DrawShape.Uniform),
        new("shove", "offset", 0.0, 5e-3, DrawShape.Normal),
        new("manoeuvre", "heading", 0.0, 3.0 * Degree, DrawShape.Normal),
        new("opponent", "heading", 0.0, 3.0 * Degree, DrawShape.Normal),
        new("manoeuvre.driver", "reaction", 0.0, Reaction, DrawShape.Uniform) { IsNeverNegative = true },
        new("opponent.driver", "reaction", 0.0, Reaction, DrawShape.Uniform) { IsNeverNegative = true },
        new("manoeuvre.driver", "dead_time", 0.0, DeadTime, DrawShape.Normal),
        new("opponent.driver", "dead_time", 0.0, DeadTime, DrawShape.Normal),

        // nobody measures these of a robot; estimates. Stiffness: printed shells and plates are several times stiffer or softer than each other, and none is as soft as 1 N/mm2, so three
        // quarters of it are the least that says so; restitution: plates and printed walls bounce 0.1 to 0.3 at 1 m/s; the memory is a time of shaking, good to half of itself
        new("contact", "stiffness", 0.75, 0.0, DrawShape.Triangular),
        new("contact", "restitution", 0.0, 0.10, DrawShape.Triangular),
        new("contact", "friction_memory", 0.50, 0.0, DrawShape.Triangular),

        // a ruler under a standing robot, and what it is pushed down by until the next match (estimate)
        new("outline", "clearance", 0.0, 0.3e-3, DrawShape.Normal),
        new("outline.ramp", "tip", 0.0, 0.2e-3, DrawShape.Normal),
        new("floor", "dust", 0.0, 0.1, DrawShape.Uniform) { IsNeverNegative = true },
    ];

    /// <summary>Whether the value can only be off upwards from 0: one that is stated stays the middle, so that a stated 0 is 0.</summary>
    public bool IsNeverNegative { get; init; }

    /// <summary>The tolerance of a key; null if none is usual.</summary>
    public static ClassTolerance? Find(string section, string key) => Array.Find(All, c => c.Section == section && c.Key == key);

    /// <summary>Half-width around a value that is stated [unit of the key, SI].</summary>
    public double HalfWidth(double value) => IsNeverNegative ? Math.Min(Absolute, value) : (Share * Math.Abs(value)) + Absolute;

    /// <summary>Middle and half-width of a value that nobody states [unit of the key, SI].</summary>
    /// <param name="byDefault">What the key has then.</param>
    public (double Middle, double HalfWidth) Unstated(double byDefault) => IsNeverNegative && byDefault < Absolute ? (byDefault + Absolute, Absolute) : (byDefault, HalfWidth(byDefault));
}
