using PushSim.Scenarios.Logs;

namespace PushSim.Scenarios.Studies;

/// <summary>What a fit is asked for.</summary>
public sealed record FitRequest
{
    /// <summary>The logs.</summary>
    public required IReadOnlyList<string> Files { get; init; }

    /// <summary>Half-width, two standard deviations, of what load and calibration of the cell are off in all pulls alike, as a share [1].</summary>
    public double CommonOff { get; init; }

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

    /// <summary>Material of the shelf that the tyres are of; null: from a column, or from their names.</summary>
    public string? Material { get; init; }

    /// <summary>What is set anew in the robot or scenario file, by path.</summary>
    public IReadOnlyList<(string Path, string Value)> Set { get; init; } = [];

    /// <summary>Tare [N]; null: from the slack parts.</summary>
    public double? Tare { get; init; }

    /// <summary>Difference of friction that matters [1]; null: a twentieth of the mean.</summary>
    public double? Difference { get; init; }

    /// <summary>What is asked about the tyres on the robot; null: nothing.</summary>
    public MeaningRequest? Meaning { get; init; }

    /// <summary>Whether the test is simulated too.</summary>
    public bool Simulate { get; init; }

    /// <summary>Folder of the garage that names come from; null: the nearest one upwards.</summary>
    public string? Garage { get; init; }

    /// <summary>How to read the logs.</summary>
    public LogOptions Log { get; init; } = new();
}
