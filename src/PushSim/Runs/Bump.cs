namespace PushSim.Runs;

/// <summary>How two robots meet: a straight bump of two masses, in closed form from the run's closing speed.
/// <code>
///   m = m_1 m_2/(m_1 + m_2)      passed p = m v (1 + e)      lost E = m v^2 (1 - e^2)/2      e at this v (<see cref="Contact.Restitution"/>)
/// </code>
/// Left out: that robots turn as they meet off centre, and what their wheels do meanwhile.</summary>
/// <param name="ClosingSpeed">v, of the centres of mass along the first robot's floor x [m/s].</param>
/// <param name="Momentum">p [N s].</param>
/// <param name="EnergyLost">E [J].</param>
/// <param name="Restitution">e at v [1].</param>
public sealed record Bump(double ClosingSpeed, double Momentum, double EnergyLost, double Restitution)
{
    /// <summary>Share of the ground that the first robot gained which it, or its opponent, would not have gained had they started nose to nose, by the same time after the touch [1]; null where too little was gained to tell.</summary>
    public double? GroundShare { get; init; }
}
