namespace PushSim.Analysis.Limits;

/// <summary>Heat and charge over a match.</summary>
public sealed record DutyHeat
{
    /// <summary>The pattern.</summary>
    public required DutyPattern Pattern { get; init; }

    /// <summary>Times, rising: the end of each piece of a phase, a second or less [s].</summary>
    public required double[] Time { get; init; }

    /// <summary>Hottest winding [degree Celsius]; NaN without thermal data.</summary>
    public required double[] Winding { get; init; }

    /// <summary>Hottest motor case [degree Celsius]; NaN without thermal data.</summary>
    public required double[] Case { get; init; }

    /// <summary>Hottest controller [degree Celsius]; NaN without thermal data.</summary>
    public required double[] Controller { get; init; }

    /// <summary>Battery voltage [V].</summary>
    public required double[] Voltage { get; init; }

    /// <summary>Hottest winding of the match [degree Celsius]; null without thermal data.</summary>
    public double? PeakWinding { get; init; }

    /// <summary>Least room to a winding's limit [K]; null without thermal data.</summary>
    public double? WindingRoom { get; init; }

    /// <summary>The first winding that passes its limit; null if none does or nothing is known.</summary>
    public Overheating? Overheating { get; init; }

    /// <summary>Time to the winding's limit stalled at this throttle, from cold [s]; null if it is never reached or nothing is known.</summary>
    public double? StallTimeToLimit { get; init; }

    /// <summary>When a controller first folds its limit back [s]; null if never.</summary>
    public double? FoldBackAt { get; init; }

    /// <summary>Least share of the current limit left by fold-back [1].</summary>
    public double LeastLimitShare { get; init; } = 1.0;

    /// <summary>Lowest battery voltage [V].</summary>
    public required double LowestVoltage { get; init; }

    /// <summary>Charge used [A s].</summary>
    public required double ChargeUsed { get; init; }

    /// <summary>Charge used as a share of the capacity [1].</summary>
    public required double ChargeShare { get; init; }

    /// <summary>Whether the battery runs empty before the end.</summary>
    public bool RunsEmpty { get; init; }
}
