using static PushSim.Scenarios.Keys.KeyTable;

namespace PushSim.Scenarios.Keys;

/// <summary>Keys that take a generic part over from the shelf.</summary>
internal static class PartKeys
{
    public static readonly KeyDefinition[] All =
    [
        Text("motor", "shelf", "Motor of the parts shelf (pushsim shelf lists them); gives every value that the motor does not give itself. Its winding data are at the motor shaft, so another gear_ratio keeps the rest right.", "25 mm brushed gearmotor, 12 V, 20:1", "none"),
        Text("controller", "shelf", "Controller of the parts shelf (pushsim shelf lists them); gives every value that the controller does not give itself.", "integrated bridge, 3.6 A", "none"),
        Text("battery", "shelf", "Cell of the parts shelf (pushsim shelf lists them); gives the pack's resistance, that of a cell of 1 A h times cells over capacity, and its voltage curve.", "lithium polymer, 20C", "none"),
        Text("floor", "shelf", "Floor of the parts shelf (pushsim shelf lists them); gives every value that the floor does not give itself.", "bare plywood", "none"),
    ];
}
