namespace PushSim.Runs;

/// <summary>Whether the tread ring of one wheel buzzes while its rim is held, by what its losses take of what falling friction feeds in.</summary>
/// <param name="Wheel">Name of the wheel.</param>
/// <param name="Margin">Loss against feed; below 1 the tread buzzes, negative where a factor is [1].</param>
/// <param name="SlipSpeed">Slip speed of the tread in the steady turn [m/s].</param>
/// <param name="Load">Load in the steady turn [N].</param>
/// <param name="FrictionSlope">Slope of the steady friction over slip speed, negative where friction falls [s/m].</param>
/// <param name="Frequency">sqrt(k_c/m_t)/2 pi, near which the tread rings; a full cycle may show twice that in the force [Hz].</param>
public sealed record RingCheck(string Wheel, double Margin, double SlipSpeed, double Load, double FrictionSlope, double Frequency)
{
    /// <summary>Whether the criterion says that it buzzes.</summary>
    public bool Buzzes => Margin < 1.0;
}
