using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>What two bodies, or parts of them, do to each other: force and moment on the first about the middle between both centres, floor axes; on the second they
/// are the opposite.</summary>
internal struct PairForce<T>
    where T : struct, IReal<T>
{
    /// <summary>Sum of normal forces, of it on upright faces [N].</summary>
    public T Normal, Upright;

    /// <summary>Force on the first [N].</summary>
    public T X, Y, Z;

    /// <summary>Moment on the first [N m].</summary>
    public T MomentX, MomentY, MomentZ;

    /// <summary>Sum of normal forces times their places from the middle [N m].</summary>
    public T PlaceX, PlaceY, PlaceZ;

    /// <summary>Adds another.</summary>
    public void Add(in PairForce<T> b)
    {
        Normal = Normal + b.Normal;
        Upright = Upright + b.Upright;
        X = X + b.X;
        Y = Y + b.Y;
        Z = Z + b.Z;
        MomentX = MomentX + b.MomentX;
        MomentY = MomentY + b.MomentY;
        MomentZ = MomentZ + b.MomentZ;
        PlaceX = PlaceX + b.PlaceX;
        PlaceY = PlaceY + b.PlaceY;
        PlaceZ = PlaceZ + b.PlaceZ;
    }

    /// <summary>From the forces on both bodies' faces, each in its body's axes.</summary>
    [MethodImpl(Kernel.Part)]
    public static void Of(in BodyPose<T> a, in BodyPose<T> b, in FaceSums<T> onA, in FaceSums<T> onB, out PairForce<T> force)
    {
        force.Normal = onA.Normal + onB.Normal;
        force.Upright = onA.Upright + onB.Upright;
        a.ToFloor(onA.X, onA.Y, onA.Z, out T ax, out T ay, out T az);
        b.ToFloor(onB.X, onB.Y, onB.Z, out T bx, out T by, out T bz);
        force.X = bx - ax;
        force.Y = by - ay;
        force.Z = bz - az;
        a.ToFloor(onA.MomentX, onA.MomentY, onA.MomentZ, out ax, out ay, out az);
        b.ToFloor(onB.MomentX, onB.MomentY, onB.MomentZ, out bx, out by, out bz);
        force.MomentX = bx - ax;
        force.MomentY = by - ay;
        force.MomentZ = bz - az;
        a.ToFloor(onA.PlaceX, onA.PlaceY, onA.PlaceZ, out ax, out ay, out az);
        b.ToFloor(onB.PlaceX, onB.PlaceY, onB.PlaceZ, out bx, out by, out bz);
        force.PlaceX = ax + bx;
        force.PlaceY = ay + by;
        force.PlaceZ = az + bz;
    }
}
