namespace PushSim.Contact;

/// <summary>Place, attitude and velocities of a body that can touch others, in floor axes: x and y along the floor, z up.</summary>
internal struct BodyPose<T>
    where T : struct, IReal<T>
{
    /// <summary>Centre of mass, z above the floor [m].</summary>
    public T X, Y, Z;

    /// <summary>Rows of the rotation from body axes to the floor's [1].</summary>
    public T XX, XY, XZ, YX, YY, YZ, ZX, ZY, ZZ;

    /// <summary>Velocity of the centre of mass [m/s].</summary>
    public T VX, VY, VZ;

    /// <summary>Turning about the floor's axes [rad/s].</summary>
    public T WX, WY, WZ;

    /// <summary>A vector of the body in floor axes.</summary>
    public readonly void ToFloor(T x, T y, T z, out T fx, out T fy, out T fz)
    {
        fx = ((XX * x) + (XY * y)) + (XZ * z);
        fy = ((YX * x) + (YY * y)) + (YZ * z);
        fz = ((ZX * x) + (ZY * y)) + (ZZ * z);
    }

    /// <summary>A vector of the floor in body axes.</summary>
    public readonly void ToBody(T x, T y, T z, out T bx, out T by, out T bz)
    {
        bx = ((XX * x) + (YX * y)) + (ZX * z);
        by = ((XY * x) + (YY * y)) + (ZY * z);
        bz = ((XZ * x) + (YZ * y)) + (ZZ * z);
    }
}
