namespace PushSim.Simulation;

/// <summary>An energy of the ledger.</summary>
/// <param name="Key">snake_case name with unit, e.g. "copper_j".</param>
/// <param name="Joule">Value at the end of the run, signed as the key says [J].</param>
public sealed record LedgerEntry(string Key, double Joule);

/// <summary>Energy out of the cells + work of the moving anchor = losses + change of what is stored. The residual measures the integration, not the physics.</summary>
/// <param name="Entries">All entries [J].</param>
/// <param name="ResidualRatio">|residual| / sum of |entries|, 0 where nothing flowed [1].</param>
internal sealed record EnergyLedger(IReadOnlyList<LedgerEntry> Entries, double ResidualRatio)
{
    // A robot that stands still moves less energy than this per kilogram, all of it rounding, of which there is no share; a kilogram at 0.05 mm/s holds as much [J/kg].
    private const double NothingFlowed = 1e-9;

    private static readonly string[] s_integrals =
    [
        "cells_j", "anchor_j", "battery_loss_j", "controller_loss_j", "copper_j", "brush_drop_j", "motor_viscous_j",
        "gear_j", "tread_j", "tyre_body_j", "vertical_damping_j", "rolling_j", "tether_damping_j", "body_on_floor_j",
    ];

    private const string Contact = "contact_j", Kinetic = "kinetic_change_j", Spring = "spring_change_j", Gravity = "gravity_change_j";

    /// <summary>Keys of all entries that there can be, in their order.</summary>
    public static IReadOnlyList<string> Keys => [.. s_integrals, Contact, Kinetic, Spring, Gravity];

    /// <param name="integrals">Sums of the robots' integrals, in the order of <see cref="LedgerIndex"/> [J].</param>
    /// <param name="contact">Lost in contacts [J]; null where there can be none.</param>
    /// <param name="mass">Mass of the robots [kg].</param>
    /// <param name="before">Stored at the start.</param>
    /// <param name="after">Stored at the end.</param>
    public static EnergyLedger Of(ReadOnlySpan<double> integrals, double? contact, double mass, StoredEnergy before, StoredEnergy after)
    {
        List<LedgerEntry> entries = [];
        double residual = 0.0;
        for (int i = 0; i < integrals.Length; i++)
        {
            entries.Add(new LedgerEntry(s_integrals[i], integrals[i]));
            residual += i <= LedgerIndex.Anchor ? integrals[i] : -integrals[i];
        }

        if (contact is double loss)
        {
            AddChange(Contact, loss);
        }

        AddChange(Kinetic, after.Kinetic - before.Kinetic);
        AddChange(Spring, after.Spring - before.Spring);
        AddChange(Gravity, after.Gravity - before.Gravity);
        double sum = entries.Sum(e => Math.Abs(e.Joule));
        return new EnergyLedger(entries, sum <= NothingFlowed * Math.Max(1.0, mass) ? 0.0 : Math.Abs(residual) / sum);

        void AddChange(string key, double joule)
        {
            entries.Add(new LedgerEntry(key, joule));
            residual -= joule;
        }
    }
}
