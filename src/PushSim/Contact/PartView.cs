namespace PushSim.Contact;

/// <summary>How one of two bodies sees the other: in its own axes, from the middle between both centres of mass.</summary>
internal struct PartView<T>
    where T : struct, IReal<T>
{
    /// <summary>Axes of the other in the own ones [1].</summary>
    public T XX, XY, XZ, YX, YY, YZ, ZX, ZY, ZZ;

    /// <summary>From the middle to the other's centre of mass; the own one lies opposite [m].</summary>
    public T HalfX, HalfY, HalfZ;

    /// <summary>Velocity of the own body against the other at the middle [m/s].</summary>
    public T VX, VY, VZ;

    /// <summary>Turning of the own body against the other [rad/s].</summary>
    public T WX, WY, WZ;
}
