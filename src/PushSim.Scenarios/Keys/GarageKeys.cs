using PushSim.Scenarios.Units;
using static PushSim.Scenarios.Keys.KeyTable;

namespace PushSim.Scenarios.Keys;

/// <summary>The keys of `garage.toml`, and those that tyres and floors have because a garage keeps them.</summary>
internal static class GarageKeys
{
    public static readonly KeyDefinition[] All =
    [
        Text("garage", "name", "What the garage is called on its page.", "evening league 2026"),
        Text("garage", "note", "What you want to remember.", "all boards were repainted in March"),
        Tables("garage", "tyre", "A tyre, as in a robot file; wheels of robots refer to it by its name. One on no wheel is no mistake."),
        Tables("garage", "floor", "A floor with a name; a scenario takes it by [floor] shelf = \"its name\"."),
        Tables("garage", "rival", "An opponent known by a glance. What is not given is taken as robots of that mass usually have it, and everything has a wide tolerance."),
        Tables("garage", "price", "What a part costs and weighs, for `advise`."),

        Text("rival", "name", "Name by which commands take it.", "wombat", required: true),
        Quantity("rival", "mass", Dimension.Mass, 0.05, 100, "Mass; without a tolerance it is taken as 10 % off.", "1.4 kg", required: true).Usual(0.1, 4),
        Whole("rival", "wheels", 2, 8, "Count of driven wheels: 2, 4, 6 or 8.", "4", "4"),
        Quantity("rival", "wheel_diameter", Dimension.Length, 0.004, 0.5, "Diameter of its wheels; without a tolerance it is taken as 10 % off.", "50 mm", "usual for the mass").Usual(0.012, 0.12),
        Quantity("rival", "wheel_width", Dimension.Length, 1e-3, 0.2, "Width of its tyres.", "20 mm", "usual for the mass").Usual(0.004, 0.08),
        Quantity("rival", "top_speed", Dimension.Speed, 0.05, 30, "Speed that it was seen to reach; gives its gears.", "2 m/s", "as the motor of the shelf is geared").Usual(0.3, 6),
        Text("rival", "motor", "Motor of the shelf, or its class.", "25 mm", "usual for the mass"),
        Text("rival", "tyre", "Tyre material of the shelf, an alias, or words of one.", "silicone", "moulded natural rubber 60A"),
        Number("rival", "grip", 0.01, 10, "Friction at breakaway of its tyres; without a tolerance it is taken as 25 % off.", "\"0.9 ± 0.2\"", "that of the material").Usual(0.1, 1.5),
        Text("rival", "note", "What you saw of it.", "lifts its nose when it starts"),

        Text("price", "part", "Name of the part: a tyre of the garage, or a tyre material, motor, controller or cell of the shelf.", "25 mm brushed gearmotor, 12 V, 20:1", required: true),
        Number("price", "price", 0, 1e6, "What one costs, in your currency.", "18", required: true),
        Quantity("price", "mass", Dimension.Mass, 0, 50, "What one weighs.", "95 g").Usual(0.001, 1),

        Text("floor", "name", "Name of a floor of the garage.", "league board"),
        Text("floor", "note", "What you want to remember of it.", "wiped with alcohol between rounds"),

        Quantity("tyre", "diameter", Dimension.Length, 1e-3, 5, "Diameter of the wheel with this tyre on; wheels that give none take it.", "54 mm").Usual(0.01, 0.15),
        Quantity("tyre", "wheel_mass", Dimension.Mass, 1e-5, 50, "Mass of the wheel with this tyre on; wheels that give neither mass nor inertia take it.", "26 g").Usual(0.002, 0.3),
        Text("tyre", "made", "When it was printed, poured or bought.", "2026-03-01"),
        Text("tyre", "note", "What you want to remember of it.", "second batch, softer"),
        Number("tyre", "price", 0, 1e6, "What one costs, in your currency.", "4"),
    ];
}
