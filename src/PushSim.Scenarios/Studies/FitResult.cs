using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Scenarios.Scenes;

namespace PushSim.Scenarios.Studies;

/// <summary>What came of a fit.</summary>
public sealed record FitResult
{
    /// <summary>Complaints about the files.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>Whether a file could not be read.</summary>
    public bool CannotRead { get; init; }

    /// <summary>What it lacks; null if nothing.</summary>
    public FitLack? Lack { get; init; }

    /// <summary>Force that would lift the tested tyres where that is what it lacks [N].</summary>
    public double LiftingForce { get; init; }

    /// <summary>Readings whose own load counted in place of a given one [1].</summary>
    public int ReadingsOfOtherLoad { get; init; }

    /// <summary>Whether the height of the tether matters and was taken as 0.</summary>
    public bool IsHeightUnknown { get; init; }

    /// <summary>The tyres.</summary>
    public IReadOnlyList<TyreFit> Fits { get; init; } = [];

    /// <summary>The tyres compared; null if nothing was fitted.</summary>
    public TyreComparison? Comparison { get; init; }

    /// <summary>The tyres fitted by simulating their test, in the order of <see cref="Fits"/>; empty if that was not asked for.</summary>
    public IReadOnlyList<(string Tyre, SimulationFit? Fit)> Simulated { get; init; } = [];

    /// <summary>The tyre tables to paste, in the order of <see cref="Fits"/>.</summary>
    public IReadOnlyList<FittedTable> Tables { get; init; } = [];

    /// <summary>What was guessed in reading the logs, in sentences.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>The robot, if one was named.</summary>
    public RobotSettings? Robot { get; init; }

    /// <summary>The values of its file.</summary>
    public ReadResult? Read { get; init; }

    /// <summary>Its motors' force.</summary>
    public StallForce? Stall { get; init; }

    /// <summary>What the tyres make of it; null without a robot that drives.</summary>
    public MeaningResult? Meaning { get; init; }
}
