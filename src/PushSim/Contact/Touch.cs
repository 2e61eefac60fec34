namespace PushSim.Contact;

/// <summary>A point of contact relative to either body's centre of mass, over the floor, in that body's axes.</summary>
internal struct Touch<T>
    where T : struct, IReal<T>
{
    /// <summary>In the own body: forward, left [m], and height in the body above its centre of mass [m].</summary>
    public T X, Y, Z;

    /// <summary>In the other body, the same [m].</summary>
    public T OtherX, OtherY, OtherZ;
}
