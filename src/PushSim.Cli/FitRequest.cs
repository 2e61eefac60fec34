using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Scenarios;
using PushSim.Scenarios.Logs;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>What a fit is asked for.</summary>
internal sealed record FitRequest
{
    /// <summary>The logs.</summary>
    public required IReadOnlyList<string> Files { get; init; }

    /// <summary>Load on the tested tyres [N]; null: from the robot file or a column.</summary>
    public double? Load { get; init; }

    /// <summary>Robot or scenario file.</summary>
    public string? RobotFile { get; init; }

    /// <summary>Height of the tether [m]; null: from the scenario.</summary>
    public double? Height { get; init; }

    /// <summary>Whether the robot was dragged.</summary>
    public bool IsDrag { get; init; }

    /// <summary>Name of the one tyre; null: from columns or file names.</summary>
    public string? Tyre { get; init; }

    /// <summary>Tare [N]; null: from the slack parts.</summary>
    public double? Tare { get; init; }

    /// <summary>Difference of friction that matters [1]; null: a twentieth of the mean.</summary>
    public double? Difference { get; init; }

    /// <summary>What is asked about the tyres on the robot; null: nothing.</summary>
    public MeaningRequest? Meaning { get; init; }

    /// <summary>Whether the test is simulated too.</summary>
    public bool Simulate { get; init; }

    /// <summary>How to read the logs.</summary>
    public required LogOptions Log { get; init; }
}

/// <summary>What came of it.</summary>
internal sealed record FitOutcome
{
    /// <summary>Complaints about the files.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>Whether a file could not be read.</summary>
    public bool CannotRead { get; init; }

    /// <summary>What the command line lacks; empty if nothing.</summary>
    public string Missing { get; init; } = "";

    /// <summary>The tyres.</summary>
    public IReadOnlyList<TyreFit> Fits { get; init; } = [];

    /// <summary>The tyres compared; null if nothing was fitted.</summary>
    public TyreComparison? Comparison { get; init; }

    /// <summary>The tyres fitted by simulating their test, in the order of <see cref="Fits"/>; empty if that was not asked for.</summary>
    public IReadOnlyList<(string Tyre, SimulationFit? Fit)> Simulated { get; init; } = [];

    /// <summary>What was guessed, in sentences.</summary>
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
