using PushSim.Powertrain;

namespace PushSim.Scenarios.Estimates;

/// <summary>What <see cref="MotorFromData"/> made of the data.</summary>
/// <param name="Settings">The motor; null if the data do not determine it.</param>
/// <param name="Missing">What is missing, in words; empty if nothing is.</param>
/// <param name="Notes">How each number was found, in sentences.</param>
/// <param name="Warnings">Contradictions in the data, with the numbers.</param>
public sealed record MotorConversion(MotorSettings? Settings, string Missing, IReadOnlyList<string> Notes, IReadOnlyList<string> Warnings)
{
    /// <summary>Efficiency of the gearbox where the stall torque gave it [1]; null: it did not.</summary>
    public double? GearEfficiency { get; init; }

    /// <summary>How it was found, in a sentence; empty if it was not.</summary>
    public string GearEfficiencyNote { get; init; } = "";
}
