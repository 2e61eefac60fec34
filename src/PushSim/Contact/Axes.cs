namespace PushSim.Contact;

/// <summary>A vector in floor axes: x and y along the floor, z up.</summary>
internal struct Axes<T>
    where T : struct
{
    /// <summary>Its components.</summary>
    public T X, Y, Z;
}
