using PushSim.Scenarios.Units;
using static PushSim.Scenarios.Keys.KeyTable;

namespace PushSim.Scenarios.Keys;

/// <summary>The keys of a measured log that is laid over a simulated pull.</summary>
internal static class MeasuredKeys
{
    public static readonly KeyDefinition[] All =
    [
        Table("scenario", "measured", "A log of a real pull, laid over the simulated one."),

        Text("measured", "file", "The log as CSV, in this file's folder or below.", "logs/soft-tyre.csv", required: true),
        Text("measured", "force_unit", "Unit of its force where its header names none.", "gf", "by the header"),
        Text("measured", "time_unit", "Unit of its time where its header names none.", "ms", "by the header, else guessed"),
        Quantity("measured", "shift", Dimension.Time, -1e6, 1e6, "Added to its times; without it the first pulls of both are laid on each other where they reach half their sliding force.", "0.4 s").Usual(-600, 600),
    ];
}
