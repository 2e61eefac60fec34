namespace PushSim.Analysis.Limits;

/// <summary>State of charge and heat in which limits are asked for, and how hard the robot is told to go.</summary>
public sealed record LimitCondition
{
    /// <summary>Temperature of all windings [degree Celsius]; null: as at the start of a run.</summary>
    public double? WindingTemperature { get; init; }

    /// <summary>Temperature of each winding in the order of the controllers' motors [degree Celsius]; goes before <see cref="WindingTemperature"/>.</summary>
    public IReadOnlyList<double>? WindingTemperatures { get; init; }

    /// <summary>Temperature of each controller [degree Celsius]; null: cool, no fold-back.</summary>
    public IReadOnlyList<double>? ControllerTemperatures { get; init; }

    /// <summary>State of charge 0..1 [1]; null: that of the file.</summary>
    public double? Charge { get; init; }

    /// <summary>Throttle 0..1 [1].</summary>
    public double Throttle { get; init; } = 1.0;
}
