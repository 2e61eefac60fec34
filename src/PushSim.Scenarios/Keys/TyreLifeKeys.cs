using PushSim.Scenarios.Units;
using static PushSim.Scenarios.Keys.KeyTable;

namespace PushSim.Scenarios.Keys;

/// <summary>Keys of tyre materials and of tyres over many runs.</summary>
internal static class TyreLifeKeys
{
    public static readonly KeyDefinition[] All =
    [
        Text("tyre", "shelf", "Material of the parts shelf by its name or an alias, such as PLA, TPU 95A or silicone (pushsim shelf lists them); gives every value that the tyre does not give itself. Sizes stay yours: width and tread_thickness.", "cast silicone 20A", "none"),

        Table("scenario", "tyre_life", "What is asked about wear and dust over many runs."),
        Quantity("tyre_life", "match", Dimension.Time, 0.1, 1e5, "How long this manoeuvre goes on in one match.", "60 s", Own).Usual(1, 600).Of(Blank.TyreLife, t => t.MatchTime, (t, v) => t with { MatchTime = v }),
        Whole("tyre_life", "runs", 1, 1000, "Runs looked at, each starting with the dust of the last.", "10", Own).Usual(1, 100).Of(Blank.TyreLife, t => t.Runs, (t, v) => t with { Runs = (int)v }),
        Whole("tyre_life", "clean_every", 0, 1000, "Runs from one cleaning of the tyres to the next; 0 is never.", "5", Own).Usual(0, 100).Of(Blank.TyreLife, t => t.CleanEvery, (t, v) => t with { CleanEvery = (int)v }),
        Number("tyre_life", "cleaning", 0, 1, "Share of the dust that a cleaning takes off.", "\"90 %\"", Own).Usual(0, 1).Of(Blank.TyreLife, t => t.CleaningShare, (t, v) => t with { CleaningShare = v }),
        Number("tyre_life", "grip_loss", 0.001, 0.99, "Loss of grip whose run is looked for, as a share of the clean tyre's.", "\"20 %\"", Own).Usual(0.02, 0.8).Of(Blank.TyreLife, t => t.GripLoss, (t, v) => t with { GripLoss = v }),
    ];
}
