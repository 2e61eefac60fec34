namespace PushSim.Analysis.Meaning;

/// <summary>What several tyres make of a robot.</summary>
public record RobotMeaning
{
    /// <summary>Name of the robot.</summary>
    public required string Robot { get; init; }

    /// <summary>Name of the opponent; empty without one.</summary>
    public string Opponent { get; init; } = "";

    /// <summary>Label of the contest whose draws the shoves take; empty without an opponent.</summary>
    public string Contest { get; init; } = "";

    /// <summary>Each tyre on the robot as it is, then each with the stronger motors.</summary>
    public IReadOnlyList<TyreMeaning> Tyres { get; init; } = [];

    /// <summary>Fits that were not put on the robot, with the reason.</summary>
    public IReadOnlyList<(string Tyre, string Reason)> LeftOut { get; init; } = [];

    /// <summary>Stall torque of the stronger motors over that of the file [1]; null: only the file's.</summary>
    public double? Stronger { get; init; }

    /// <summary>Shoves of each tyre [1].</summary>
    public long Shoves { get; init; }

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; }

    /// <summary>Time that it took [s].</summary>
    public double Seconds { get; init; }
}
