using PushSim.Scenarios.Logs;

namespace PushSim.Scenarios.Bench;

/// <summary>How a load cell is listened to.</summary>
public sealed record BenchSettings
{
    /// <summary>What the lines do not say: unit, rate, calibration, sign.</summary>
    public LogOptions Log { get; init; } = new();

    /// <summary>Reading of the slack cell [N]; null: taken from the first quiet second.</summary>
    public double? Tare { get; init; }

    /// <summary>Weight of a known mass that is put on first, to scale by [N]; null: none.</summary>
    public double? Known { get; init; }
}
