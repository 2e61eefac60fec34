using PushSim.Chassis;
using PushSim.Powertrain;
using PushSim.Scenarios.Keys;
using PushSim.Tyres;

namespace PushSim.Scenarios.Editing;

/// <summary>Values that no file gives and that reading works out from others: inertias, stiffness of covers, resistance of a pack.</summary>
internal static class WorkedOut
{
    /// <summary>The value of a key, in SI; null where the robot's records have none.</summary>
    /// <param name="robot">The robot as it was read.</param>
    /// <param name="key">The key.</param>
    /// <param name="part">Name of the part that its table is of; empty for a table that there is once.</param>
    public static double? Value(RobotSettings robot, KeyDefinition key, string part)
    {
        object?[] records = key.Section.Split('.')[0] switch
        {
            "chassis" => [robot.Chassis],
            "battery" => [robot.Battery],
            "tyre" => [robot.Wheels.FirstOrDefault(w => w.Tyre.Name == part)?.Tyre],
            "wheel" => [robot.Wheels.FirstOrDefault(w => w.Name == part)],
            "drive" => [robot.Drives.FirstOrDefault(d => d.Name == part)],
            _ => [],
        };
        return records.Select(r => r switch
        {
            ChassisSettings c => Of(key, c),
            BatterySettings b => Of(key, b),
            TyreSettings t => Of(key, t),
            WheelSettings w => Of(key, w),
            DriveSettings d => Of(key, d),
            _ => null,
        }).FirstOrDefault(v => v is double value && double.IsFinite(value) && value >= key.Min && value <= key.Max);
    }

    private static double? Of<T>(KeyDefinition key, T record) => key.Row<T>()?.Get(record);
}
