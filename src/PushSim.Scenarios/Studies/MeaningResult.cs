using PushSim.Analysis.Meaning;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Studies;

/// <summary>What the fitted tyres make of the robot, or why that is not known.</summary>
public sealed record MeaningResult : RobotMeaning
{
    /// <summary>Complaints about the opponent's file, which make the call fail.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>Whether the opponent's file could not be read.</summary>
    public bool CannotRead { get; init; }

    /// <summary>What is drawn in the shoves; empty without an opponent.</summary>
    public IReadOnlyList<TolerancedValue> Drawn { get; init; } = [];

    /// <summary>Why the tyres could not be put on this robot at all; null if they were.</summary>
    public MeaningLack? Lack { get; init; }
}
