using static PushSim.Scenarios.Keys.KeyTable;

namespace PushSim.Scenarios.Keys;

/// <summary>Keys that say how errors are shared between parts; single runs do not use them.</summary>
internal static class ChanceKeys
{
    public static readonly KeyDefinition[] All =
    [
        Number("tyre", "own_share", 0, 1, "When values are drawn from their tolerances: share of the variance that each wheel's tyre has for itself; 0 for tyres from one print or sheet, which share their error.", "0.3", "0").Usual(0, 1),
        Number("motor", "own_share", 0, 1, "When values are drawn from their tolerances: share of the variance that each motor has for itself; 0 for one error of all, 1 for errors of their own.", "0.5", "0").Usual(0, 1),
    ];
}
