namespace PushSim.Words.Terms;

/// <summary>Words for the entries of the energy ledger.</summary>
public static class EnergyWords
{
    private static readonly Dictionary<string, string> s_energies = new()
    {
        ["cells_j"] = "out of the cells",
        ["anchor_j"] = "work of the moving anchor, or of drives that a log turns",
        ["battery_loss_j"] = "battery resistance",
        ["controller_loss_j"] = "controllers",
        ["copper_j"] = "motor windings",
        ["brush_drop_j"] = "brush drop",
        ["motor_viscous_j"] = "motor drag",
        ["gear_j"] = "gears and bearings",
        ["tread_j"] = "tyre tread on the floor",
        ["tyre_body_j"] = "tyre body damping",
        ["vertical_damping_j"] = "vertical tyre damping",
        ["rolling_j"] = "rolling resistance",
        ["tether_damping_j"] = "tether damping",
        ["body_on_floor_j"] = "bodies on the floor",
        ["contact_j"] = "contacts of bodies",
        ["kinetic_change_j"] = "change of kinetic energy",
        ["spring_change_j"] = "change of spring energy",
        ["gravity_change_j"] = "change of height and downforce energy",
    };

    /// <summary>The keys, in the ledger's order.</summary>
    public static IReadOnlyCollection<string> Keys => s_energies.Keys;

    /// <summary>What an entry is.</summary>
    public static string Of(string key) => s_energies[key];
}
