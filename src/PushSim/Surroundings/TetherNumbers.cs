namespace PushSim.Surroundings;

/// <summary>Numbers of a tether, and nothing else.</summary>
internal struct TetherNumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Hook relative to the centre of mass [m], anchor's line [m], free length [m].</summary>
    public T HookX, HookY, HookZ, AnchorY, AnchorHeight, FreeLength;

    /// <summary>k [N/m], d [s/m], height of the centre of mass [m].</summary>
    public T Stiffness, Damping, CentreHeight;
}
