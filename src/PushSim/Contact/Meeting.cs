using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>Two bodies about the middle between their centres of mass: how each sees the other, and how the first moves against the second there. Exchanging the
/// bodies, turning the floor by half a turn, or mirroring both changes signs and nothing else.</summary>
internal struct Meeting<T>
    where T : struct, IReal<T>
{
    /// <summary>What A sees of B, and B of A.</summary>
    public PartView<T> OfA, OfB;

    /// <summary>Middle, and from it to B's centre of mass, floor axes [m].</summary>
    public T X, Y, Z, HalfX, HalfY, HalfZ;

    /// <summary>Velocity of A against B at the middle, floor axes [m/s]; turning of A against B [rad/s].</summary>
    public T VX, VY, VZ, WX, WY, WZ;

    /// <summary>Sets all of it.</summary>
    [MethodImpl(Kernel.Part)]
    public void Set(in BodyPose<T> a, in BodyPose<T> b)
    {
        X = 0.5 * (a.X + b.X);
        Y = 0.5 * (a.Y + b.Y);
        Z = 0.5 * (a.Z + b.Z);
        HalfX = 0.5 * (b.X - a.X);
        HalfY = 0.5 * (b.Y - a.Y);
        HalfZ = 0.5 * (b.Z - a.Z);
        T sumX = a.WX + b.WX;
        T sumY = a.WY + b.WY;
        T sumZ = a.WZ + b.WZ;
        VX = (a.VX - b.VX) + ((sumY * HalfZ) - (sumZ * HalfY));
        VY = (a.VY - b.VY) + ((sumZ * HalfX) - (sumX * HalfZ));
        VZ = (a.VZ - b.VZ) + ((sumX * HalfY) - (sumY * HalfX));
        WX = a.WX - b.WX;
        WY = a.WY - b.WY;
        WZ = a.WZ - b.WZ;
        See(a, b);
        Turn(a, HalfX, HalfY, HalfZ, VX, VY, VZ, WX, WY, WZ, ref OfA);
        Turn(b, -HalfX, -HalfY, -HalfZ, -VX, -VY, -VZ, -WX, -WY, -WZ, ref OfB);
    }

    private void See(in BodyPose<T> a, in BodyPose<T> b)
    {
        OfA.XX = OfB.XX = ((a.XX * b.XX) + (a.YX * b.YX)) + (a.ZX * b.ZX);
        OfA.XY = OfB.YX = ((a.XX * b.XY) + (a.YX * b.YY)) + (a.ZX * b.ZY);
        OfA.XZ = OfB.ZX = ((a.XX * b.XZ) + (a.YX * b.YZ)) + (a.ZX * b.ZZ);
        OfA.YX = OfB.XY = ((a.XY * b.XX) + (a.YY * b.YX)) + (a.ZY * b.ZX);
        OfA.YY = OfB.YY = ((a.XY * b.XY) + (a.YY * b.YY)) + (a.ZY * b.ZY);
        OfA.YZ = OfB.ZY = ((a.XY * b.XZ) + (a.YY * b.YZ)) + (a.ZY * b.ZZ);
        OfA.ZX = OfB.XZ = ((a.XZ * b.XX) + (a.YZ * b.YX)) + (a.ZZ * b.ZX);
        OfA.ZY = OfB.YZ = ((a.XZ * b.XY) + (a.YZ * b.YY)) + (a.ZZ * b.ZY);
        OfA.ZZ = OfB.ZZ = ((a.XZ * b.XZ) + (a.YZ * b.YZ)) + (a.ZZ * b.ZZ);
    }

    private static void Turn(in BodyPose<T> own, T hx, T hy, T hz, T vx, T vy, T vz, T wx, T wy, T wz, ref PartView<T> view)
    {
        own.ToBody(hx, hy, hz, out view.HalfX, out view.HalfY, out view.HalfZ);
        own.ToBody(vx, vy, vz, out view.VX, out view.VY, out view.VZ);
        own.ToBody(wx, wy, wz, out view.WX, out view.WY, out view.WZ);
    }
}
