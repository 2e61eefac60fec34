namespace PushSim.Words.Runs;

/// <summary>Words for what a run records: marks of a plot, entries of the energy ledger.</summary>
public static class RecordWords
{
    private static readonly Dictionary<string, string> s_energies = new()
    {
        ["cells_j"] = "out of the cells",
        ["anchor_j"] = "work of the moving anchor",
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
        ["contact_j"] = "contacts of bodies",
        ["kinetic_change_j"] = "change of kinetic energy",
        ["spring_change_j"] = "change of spring energy",
        ["gravity_change_j"] = "change of height and downforce energy",
    };

    /// <summary>What an entry of the energy ledger is.</summary>
    /// <param name="key">Its key.</param>
    public static string Energy(string key) => s_energies[key];

    /// <summary>What a mark of a plot is.</summary>
    /// <param name="kind">Its kind.</param>
    public static string Mark(MarkKind kind) => kind switch
    {
        MarkKind.Near => "90 % of top speed",
        MarkKind.TopSpeed => "top speed",
        MarkKind.Touch => "first touch",
        MarkKind.Command => "command",
        MarkKind.Standstill => "standstill",
        MarkKind.Breakaway => "breakaway",
        MarkKind.Settled => "settled",
        _ => "plateau",
    };
}
