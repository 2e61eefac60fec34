namespace PushSim.Contact;

/// <summary>Numbers of a contact of two bodies, or of a body on the floor, but for their shapes, and nothing else. On the floor nothing is far and nothing is forgotten.</summary>
internal struct PairNumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>How far apart the centres of mass may be and still touch [m].</summary>
    public T Reach;

    /// <summary>k [N/m^2], lambda [s/m], mu [1], z_max [m], 1/tau [1/s].</summary>
    public T Stiffness, Damping, Friction, DeflectionLimit, Forget;
}
