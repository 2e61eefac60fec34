namespace PushSim.Scenarios.Logs;

/// <summary>What the user says about a log that its header does not.</summary>
public sealed record LogOptions
{
    /// <summary>Unit of the force column where the header names none; null: the header must.</summary>
    public string? ForceUnit { get; init; }

    /// <summary>Unit of the time column where the header names none; null: guessed.</summary>
    public string? TimeUnit { get; init; }

    /// <summary>Readings a second of a log without times [1/s]; null: not known.</summary>
    public double? Rate { get; init; }

    /// <summary>Calibration of a cell logged in mV, with the sign of a pull [N/mV]; null: none.</summary>
    public double? ForcePerMillivolt { get; init; }

    /// <summary>True for a cell whose sign is reversed.</summary>
    public bool IsReversed { get; init; }

    /// <summary>Longest history kept of one log; a longer one is kept at half the rate, then a quarter, and so on [sample].</summary>
    public int MostSamples { get; init; } = 2_000_000;

    /// <summary>What to tell a user to do.</summary>
    public LogAdvice Advice { get; init; } = LogAdvice.OfFit;
}
