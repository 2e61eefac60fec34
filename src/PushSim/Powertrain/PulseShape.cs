namespace PushSim.Powertrain;

/// <summary>One controller's pulse at a bus voltage, before its share is known; see <see cref="PulseEquations"/>.</summary>
internal struct PulseShape<T>
    where T : struct, IReal<T>
{
    /// <summary>1, or -1 where the back-EMF drives the current [1]; bus voltage, voltage against the current while off, back-EMF and brushes [V]; derivative of V_off by the bus voltage [1].</summary>
    public T Sign, Bus, Off, Emf, OffRise;

    /// <summary>I and D [A], 1/R [S], x = T R/L [1].</summary>
    public T Towards, Away, Conductance, Period;

    /// <summary>Whether the current may reverse and so never ends.</summary>
    public bool EndsNot;
}
