using PushSim.Scenarios.Units;
using static PushSim.Scenarios.Keys.KeyTable;

namespace PushSim.Scenarios.Keys;

/// <summary>Keys of tyre materials and of tyres over many runs.</summary>
internal static class TyreLifeKeys
{
    public static readonly KeyDefinition[] All =
    [
        Text("tyre", "shelf", "Material of the parts shelf (pushsim shelf lists them); gives every value that the tyre does not give itself. Sizes stay yours: width and tread_thickness.", "foamed elastomer, soft", "none"),

        Table("scenario", "tyre_life", "What is asked about wear and dust over many runs."),
        Quantity("tyre_life", "match", Dimension.Time, 0.1, 1e5, "How long this manoeuvre goes on in one match.", "60 s", "60 s").Usual(1, 600),
        Whole("tyre_life", "runs", 1, 1000, "Runs looked at, each starting with the dust of the last.", "10", "10").Usual(1, 100),
        Whole("tyre_life", "clean_every", 0, 1000, "Runs from one cleaning of the tyres to the next; 0 is never.", "5", "0").Usual(0, 100),
        Number("tyre_life", "cleaning", 0, 1, "Share of the dust that a cleaning takes off.", "\"90 %\"", "100 %").Usual(0, 1),
        Number("tyre_life", "grip_loss", 0.001, 0.99, "Loss of grip whose run is looked for, as a share of the clean tyre's.", "\"20 %\"", "20 %").Usual(0.02, 0.8),
    ];
}
