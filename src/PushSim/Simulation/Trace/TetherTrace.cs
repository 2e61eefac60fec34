namespace PushSim.Simulation;

/// <summary>What is recorded of the tether; one property a series.</summary>
/// <param name="part">The tether.</param>
public sealed class TetherTrace(TracePart part)
{
    /// <summary>Tension; 0 while slack [N].</summary>
    public Series Force { get; } = part.Add("tether_force_n", "N", p => p.Robot.Tether!.Tension.Value);
}
