namespace PushSim.Scenarios.Keys;

/// <summary>What builders, or files written before a key was renamed, call things that files call otherwise, and what to write instead.</summary>
public static class OtherNames
{
    private const string Rating = "no key limits the pack's current; its C rating stands for a low resistance: shelf = \"lithium polymer, 30C and up\" (or 20C) takes the resistance from it, or give resistance or two loads";

    private const string OldDriver = "it is read on; by now it stands in [manoeuvre.driver] and [opponent.driver], as ";

    private static readonly (string Section, string[] Names, string Advice)[] All =
    [
        ("battery", ["c_rating", "crating", "c_rate", "c", "discharge_rate", "max_discharge", "max_current"], Rating),
        ("battery", ["current_limit"], "the limit of a controller stands in [[controller]], current_limit = \"5 A\"; " + Rating),
        ("battery", ["voltage", "nominal_voltage"], "give the number of cells, cells = 3; cell_voltage is one cell's rest voltage against charge"),
        ("battery", ["mah", "ah"], "write capacity = \"450 mA h\""),
        ("motor", ["kv"], "write speed_constant = \"1400 rpm/V\""),
        ("motor", ["kt"], "write torque_constant = \"6.8 mN m/A\""),
        ("motor", ["rpm", "free_speed", "max_rpm", "speed", "no_load_rpm"], "write output_speed = \"600 rpm\", with voltage, if it is that of the gearbox's shaft; no_load_speed = \"9500 rpm\" if it is the bare motor's"),
        ("motor", ["output_rpm", "output_no_load_speed", "shaft_speed", "rated_speed", "no_load_output_speed"], "write output_speed = \"600 rpm\", with voltage"),
        ("motor", ["torque", "max_torque", "output_torque", "holding_torque"], "write output_stall_torque = \"4.2 kgf cm\", if it is that of the gearbox's shaft; stall_torque if it is the bare motor's"),
        ("motor", ["ratio", "gearing"], "write gear_ratio, motor turns per turn of the output shaft where its data hold; the robot's own gearing stands in [[drive]]"),
        ("wheel", ["radius"], "write diameter, twice the radius"),
        ("wheel", ["weight"], "write mass = \"26 g\""),
        ("tyre", ["friction", "mu", "grip"], "write static_friction (as it breaks away) and kinetic_friction (as it slides)"),
        ("tyre", ["bristle_damping"], "write tread_damping, its name now"),
        ("tyre", ["plain_bristle"], "write plain_friction, its name now"),
        ("chassis", ["weight"], "write mass = \"1360 g\""),
        ("drive", ["ratio", "gearing"], "write gear_ratio, motor turns per turn of the drive"),
        ("manoeuvre", ["reaction_delay"], OldDriver + "reaction"),
        ("manoeuvre", ["heading_hold"], OldDriver + "heading_hold"),
        ("manoeuvre", ["heading_lag"], OldDriver + "heading_lag"),
        ("floor", ["mu", "grip"], "write friction, a multiple of every tyre's own"),
    ];

    /// <summary>What to write in a table for a name that it does not know; null if that is no usual name of anything in it.</summary>
    public static string? Advice(string section, string name)
    {
        string wanted = name.ToLowerInvariant().Replace('-', '_').Replace(' ', '_');
        return Array.Find(All, o => o.Section == section && o.Names.Contains(wanted)).Advice;
    }

    /// <summary>The tables in which a name is a usual one of something, each with what to write there; with the table in front ("battery.c_rating") that one only.</summary>
    public static IReadOnlyList<(string Section, string Advice)> Find(string name)
    {
        string[] path = name.Split('.');
        return
        [
            .. All.Select(o => o.Section).Distinct().Where(s => path.Length == 1 || s.Equals(path[^2], StringComparison.OrdinalIgnoreCase))
                .Select(s => (Section: s, Advice: Advice(s, path[^1]))).Where(f => f.Advice is not null).Select(f => (f.Section, f.Advice!)),
        ];
    }
}
