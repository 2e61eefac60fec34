using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Who won a shove and by what.</summary>
public sealed record ShoveOutcome
{
    /// <summary>How it ended.</summary>
    public required ShoveEnding Ending { get; init; }

    /// <summary>0 if the first robot won, 1 if the opponent did, -1 for neither [1].</summary>
    public required int Winner { get; init; }

    /// <summary>Ground that the first robot gained at the contact, negative if it lost ground [m].</summary>
    public required double GroundGained { get; init; }

    /// <summary>Whether the line that was crossed is the winner's: the pair had swapped ends.</summary>
    public bool IsFarLine { get; init; }

    /// <summary>How the loser lost its stand, where that decided.</summary>
    public Upset Upset { get; init; }

    /// <summary>When it ended [s].</summary>
    public required double EndTime { get; init; }

    /// <summary>When the robots first touched [s]; null if they never did.</summary>
    public double? FirstContact { get; init; }

    /// <summary>When the loser began to give ground for good [s]; null if nobody did.</summary>
    public double? GivesGroundAt { get; init; }

    /// <summary>Mean speed of the contact from then on, never negative [m/s].</summary>
    public double GroundSpeed { get; init; }

    /// <summary>Greatest turn of each robot off its start heading after the first touch [rad].</summary>
    public (double First, double Opponent) TurnedAside { get; init; }

    /// <summary>Whether a nearly equal start ends otherwise; null if that was not tried.</summary>
    public bool? TooCloseToCall { get; init; }

    /// <summary>Why it is too close to call; null if it is not, or that was not tried.</summary>
    public CloseShove? Close { get; init; }
}
