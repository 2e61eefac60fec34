namespace PushSim.Runs;

/// <summary>One mode of the linearised steady turn: a small disturbance of its shape goes as exp(growth t), swinging at its frequency.</summary>
/// <param name="Part">What moves most, by energy of motion.</param>
/// <param name="Growth">Growth rate, negative where it dies out [1/s].</param>
/// <param name="Frequency">Frequency, 0 where it does not swing [Hz].</param>
/// <param name="Shares">Shares of the energy of motion, largest first, those above 5 % [1].</param>
public sealed record TurnMode(TurnPart Part, double Growth, double Frequency, IReadOnlyList<(TurnPart Part, double Share)> Shares)
{
    // Twentyfold within a second; what grows slower is not seen within a turn [1/s].
    private const double SeenGrowth = 3.0;

    /// <summary>Whether it is chatter that begins by itself: it grows so fast that a turn shows it, and swings too fast to be the robot's own motion.</summary>
    public bool IsChatter => Growth > SeenGrowth && Frequency >= ForceSpectrum.LowestFrequency;
}
