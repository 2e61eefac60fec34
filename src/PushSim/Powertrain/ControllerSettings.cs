namespace PushSim.Powertrain;

/// <summary>A speed controller: duty, current limit, losses, behaviour at zero, heat fold-back.</summary>
public sealed record ControllerSettings
{
    /// <summary>Name, unique in the robot.</summary>
    public required string Name { get; init; }

    /// <summary>The motors on it, each as index of a drive and of a motor in that drive.</summary>
    public required IReadOnlyList<(int Drive, int Motor)> Motors { get; init; }

    /// <summary>The side it follows.</summary>
    public required CommandSide Side { get; init; }

    /// <summary>Wiring of its motors.</summary>
    public Wiring Wiring { get; init; } = Wiring.Single;

    /// <summary>Limit of the motor current (of the sum, if parallel) [A]; infinite is none.</summary>
    public double CurrentLimit { get; init; } = double.PositiveInfinity;

    /// <summary>On-resistance of both switches in the current's path [ohm].</summary>
    public double OnResistance { get; init; }

    /// <summary>Fastest change of the command [1/s]; infinite is none.</summary>
    public double SlewLimit { get; init; } = double.PositiveInfinity;

    /// <summary>Command below which it counts as zero [1].</summary>
    public double Deadband { get; init; }

    /// <summary>Whether braking current flows back into the battery.</summary>
    public bool Regeneration { get; init; } = true;

    /// <summary>What it does between its pulses at part command; null: not known, computed as <see cref="BetweenPulses.Brake"/>.</summary>
    public BetweenPulses? BetweenPulses { get; init; }

    /// <summary>Pulses per second [Hz]; null: not known, <see cref="UsualPulseFrequency"/> where it counts.</summary>
    public double? PulseFrequency { get; init; }

    /// <summary>Whether its current limit ends each pulse at that current; false: it holds the mean.</summary>
    public bool LimitsEachPulse { get; init; }

    /// <summary>Pulses of a controller of which nobody knows better, 1 to 25 kHz are built (common practice, no source) [Hz].</summary>
    internal const double UsualPulseFrequency = 10_000.0;

    /// <summary>Whether the course of each pulse counts and not only the mean voltage.</summary>
    public bool HasPulses => BetweenPulses is Powertrain.BetweenPulses.Coast or Powertrain.BetweenPulses.Diode || PulseFrequency is not null;

    /// <summary>Behaviour at zero command.</summary>
    public ZeroCommand ZeroCommand { get; init; } = ZeroCommand.Brake;

    /// <summary>Thermal resistance to air [K/W]; 0 switches its heating off.</summary>
    public double ThermalResistance { get; init; }

    /// <summary>Heat capacity [J/K].</summary>
    public double HeatCapacity { get; init; }

    /// <summary>Temperature from which the current limit folds back [degree Celsius].</summary>
    public double FoldBackTemperature { get; init; } = 110.0;

    /// <summary>Temperature at which the current limit has fallen to zero [degree Celsius].</summary>
    public double ShutDownTemperature { get; init; } = 150.0;
}
