using PushSim.Analysis.Statistics;

namespace PushSim.Scenarios.Studies;

/// <summary>What changes and measurements would bring.</summary>
public sealed record AdviceResult
{
    /// <summary>Name of the robot.</summary>
    public required string Robot { get; init; }

    /// <summary>Names of the opponents.</summary>
    public required IReadOnlyList<string> Opponents { get; init; }

    /// <summary>Share of matches that the robot wins as it is, the mean over opponents [1].</summary>
    public required Interval WinShare { get; init; }

    /// <summary>Matches of each change against each opponent [1].</summary>
    public required long Matches { get; init; }

    /// <summary>Each change with the win share that it adds [1], the best gain first. The intervals hold together in 95 of 100 cases, so that a gain that is surely above zero is not the luck of the best of many.</summary>
    public required IReadOnlyList<(AdviceChange Change, Interval Gain, long Matches)> Changes { get; init; }

    /// <summary>Pairs of the best changes that interact; the gains of all other pairs that were tried add up.</summary>
    public required IReadOnlyList<AdvicePair> Pairs { get; init; }

    /// <summary>Pairs that were tried [1].</summary>
    public int PairsTried { get; init; }

    /// <summary>What to measure, most of the doubt per minute first: by how much the win share would move, and how long it takes [min].</summary>
    public required IReadOnlyList<(string What, Interval Narrows, double Minutes)> Measurements { get; init; }

    /// <summary>Changes that were left out, and why; what was taken for granted.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>What is wrong with the files.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>Whether a file could not be read at all.</summary>
    public bool CannotRead { get; init; }
}
