namespace PushSim.Scenarios.Notebook;

/// <summary>One row of the notebook: one pull.</summary>
public sealed record PullRow
{
    /// <summary>When it was, by the clock on the wall; null if nobody wrote it.</summary>
    public DateTime? When { get; init; }

    /// <summary>The tyre, as the garage calls it.</summary>
    public required string Tyre { get; init; }

    /// <summary>The robot's file or name; empty if none is known.</summary>
    public string Robot { get; init; } = "";

    /// <summary>Mass of the robot on that day [kg]; null if not known.</summary>
    public double? Mass { get; init; }

    /// <summary>Motors of the robot on that day, in words.</summary>
    public string Motors { get; init; } = "";

    /// <summary>The floor, as the garage calls it.</summary>
    public string Floor { get; init; } = "";

    /// <summary>How the floor was.</summary>
    public FloorState State { get; init; } = FloorState.Unknown;

    /// <summary>Force between the tested tyres and the floor [N]; null if not known.</summary>
    public double? Load { get; init; }

    /// <summary>Greatest force of the pull [N]; null if not known.</summary>
    public double? Peak { get; init; }

    /// <summary>Steady force while the tyres slide [N]; null if not known.</summary>
    public double? Sliding { get; init; }

    /// <summary>The log that it was read from; empty if it was read off a display.</summary>
    public string Source { get; init; } = "";

    /// <summary>What else was noted.</summary>
    public string Note { get; init; } = "";

    /// <summary>Why the pull is left out; empty if it counts.</summary>
    public string LeftOut { get; init; } = "";

    /// <summary>Line of the file, from 1; 0 of a row that is not yet in it [1].</summary>
    public int Line { get; init; }

    /// <summary>Whether it counts.</summary>
    public bool IsCounted => LeftOut.Length == 0;
}
