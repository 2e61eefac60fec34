using PushSim.Analysis.Chance;
using PushSim.Analysis.Meaning;
using PushSim.Scenarios.Sources;

namespace PushSim.Scenarios.Studies;

/// <summary>What the fitted tyres make of the robot.</summary>
public sealed record MeaningResult
{
    /// <summary>What was asked.</summary>
    public required MeaningRequest Request { get; init; }

    /// <summary>Name of the robot.</summary>
    public required string Robot { get; init; }

    /// <summary>Name of the opponent; empty without one.</summary>
    public string Opponent { get; init; } = "";

    /// <summary>Each tyre on the robot as it is, then each with the stronger motors.</summary>
    public IReadOnlyList<TyreMeaning> Tyres { get; init; } = [];

    /// <summary>Fits that were not put on the robot, with the reason.</summary>
    public IReadOnlyList<(string Tyre, string Reason)> LeftOut { get; init; } = [];

    /// <summary>Complaints about the opponent's file, which make the call fail.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>Whether the opponent's file could not be read.</summary>
    public bool CannotRead { get; init; }

    /// <summary>Why the tyres could not be put on this robot at all; null if they were.</summary>
    public MeaningLack? Lack { get; init; }

    /// <summary>Time that it took [s].</summary>
    public double Seconds { get; init; }

    /// <summary>Share of shoves won with its interval; null without shoves.</summary>
    /// <param name="m">A tyre.</param>
    public static Bounds? Share(TyreMeaning m) => m.Shoves is { Matches: > 0 } t ? t.WinInterval : null;
}
