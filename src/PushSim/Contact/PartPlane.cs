namespace PushSim.Contact;

/// <summary>A plane n.p = c that bounds a part.</summary>
/// <param name="X">Outward normal, forward [1].</param>
/// <param name="Y">Outward normal, left [1].</param>
/// <param name="Z">Outward normal, up [1].</param>
/// <param name="Offset">c, from the centre of mass [m].</param>
internal readonly record struct PartPlane(double X, double Y, double Z, double Offset)
{
    /// <summary>A plane by its normal and a point.</summary>
    public static PartPlane Through((double X, double Y, double Z) normal, (double X, double Y, double Z) point)
    {
        double length = Math.Sqrt((normal.X * normal.X) + (normal.Y * normal.Y) + (normal.Z * normal.Z));
        (double x, double y, double z) = (normal.X / length, normal.Y / length, normal.Z / length);
        return new PartPlane(x, y, z, ((x * point.X) + (y * point.Y)) + (z * point.Z));
    }

    /// <summary>Whether it stands upright while its body is level.</summary>
    public bool IsUpright => Z == 0.0;
}
