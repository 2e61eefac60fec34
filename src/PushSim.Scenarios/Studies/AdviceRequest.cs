namespace PushSim.Scenarios.Studies;

/// <summary>What advice is asked for.</summary>
public sealed record AdviceRequest
{
    /// <summary>Robot file or name.</summary>
    public required string Robot { get; init; }

    /// <summary>Opponents' files or names, one at least.</summary>
    public required IReadOnlyList<string> Opponents { get; init; }

    /// <summary>Scenario file with floor, shove and driving; null: a plain shove.</summary>
    public string? Scene { get; init; }

    /// <summary>Most that the robot may weigh [kg]; null: no limit.</summary>
    public double? Limit { get; init; }

    /// <summary>Matches against each opponent of the changes that look best [1].</summary>
    public long Matches { get; init; } = 384;

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Threads [1].</summary>
    public int Threads { get; init; } = 1;

    /// <summary>How files are read.</summary>
    public ReadOptions Read { get; init; } = new();

    /// <summary>Changes to look at; null: all that the garage, the shelf and the robot offer.</summary>
    public IReadOnlyList<AdviceChange>? Changes { get; init; }
}
