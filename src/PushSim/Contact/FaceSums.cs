namespace PushSim.Contact;

/// <summary>Forces on some faces, in the axes of the body that has them, from the middle between both centres.</summary>
internal struct FaceSums<T>
    where T : struct, IReal<T>
{
    /// <summary>Sum of normal forces, of it on faces that stand upright in their body [N].</summary>
    public T Normal, Upright;

    /// <summary>Sum of normal forces times outward normals [N].</summary>
    public T X, Y, Z;

    /// <summary>Sum of normal forces times their places [N m].</summary>
    public T PlaceX, PlaceY, PlaceZ;

    /// <summary>Sum of places times outward forces, as a moment [N m].</summary>
    public T MomentX, MomentY, MomentZ;

    /// <summary>Adds others.</summary>
    public void Add(in FaceSums<T> b)
    {
        Normal = Normal + b.Normal;
        Upright = Upright + b.Upright;
        X = X + b.X;
        Y = Y + b.Y;
        Z = Z + b.Z;
        PlaceX = PlaceX + b.PlaceX;
        PlaceY = PlaceY + b.PlaceY;
        PlaceZ = PlaceZ + b.PlaceZ;
        MomentX = MomentX + b.MomentX;
        MomentY = MomentY + b.MomentY;
        MomentZ = MomentZ + b.MomentZ;
    }
}
