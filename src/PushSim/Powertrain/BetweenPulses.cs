namespace PushSim.Powertrain;

/// <summary>What a controller does with the motor's current while its pulse is off.</summary>
public enum BetweenPulses
{
    /// <summary>Both low switches on: the current goes on through them and may reverse; the mean voltage is d V_b.</summary>
    Brake,

    /// <summary>One switch on: the current runs down through it and one diode, and stops at zero.</summary>
    Diode,

    /// <summary>All switches off: the current runs down through two diodes back into the battery, and stops at zero.</summary>
    Coast,
}
