namespace PushSim.Simulation;

/// <summary>The ledger's integrals, in the order they stand in the state.</summary>
internal static class LedgerIndex
{
    public const int Cells = 0, Anchor = 1, BatteryLoss = 2, ControllerLoss = 3, Copper = 4, Brush = 5, Viscous = 6;
    public const int Gear = 7, Tread = 8, Carcass = 9, Vertical = 10, Rolling = 11, Tether = 12, Underside = 13;
    public const int Count = 14;
}
