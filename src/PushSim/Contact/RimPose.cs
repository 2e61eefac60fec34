using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>A wheel in floor axes, from the middle between both bodies' centres of mass.</summary>
internal struct RimPose<T>
    where T : struct, IReal<T>
{
    /// <summary>Keeps a direction defined for a wheel that lies on its side; 14 um of a usual radius [1].</summary>
    public const double LyingSquare = 1e-3;

    /// <summary>Hub [m].</summary>
    public T X, Y, Z;

    /// <summary>Axle, to the left [1].</summary>
    public T AX, AY, AZ;

    /// <summary>Radius, half the width [m], stiffness of an edge's length on the tread [N/m^2], friction [1], turning about the axle [rad/s].</summary>
    public T Radius, HalfWidth, Stiffness, Friction, Spin;

    /// <summary>Sets it for a wheel of a body whose centre of mass is at x, y, z from the middle.</summary>
    [MethodImpl(Kernel.Part)]
    public void Set(in BodyPose<T> body, WheelRims<T> wheels, int i, T x, T y, T z)
    {
        body.ToFloor(wheels.X[i], wheels.Y[i], wheels.Z[i], out T fx, out T fy, out T fz);
        X = x + fx;
        Y = y + fy;
        Z = z + fz;
        (AX, AY, AZ) = (body.XY, body.YY, body.ZY);
        (Radius, HalfWidth, Stiffness, Friction, Spin) = (wheels.Radius[i], wheels.HalfWidth[i], wheels.Stiffness[i], wheels.Friction[i], wheels.Spin[i]);
    }

    /// <summary>h, how far the wheel reaches from its hub along a direction [m].</summary>
    [MethodImpl(Kernel.Part)]
    public readonly T Height(T nx, T ny, T nz)
    {
        T along = ((nx * AX) + (ny * AY)) + (nz * AZ);
        T across = T.Max(0.0, 1.0 - (along * along));
        return ((Radius * across) / T.Sqrt(across + LyingSquare)) + (HalfWidth * T.Abs(along));
    }

    /// <summary>Moves a place into the cylinder, along the axle and towards it.</summary>
    [MethodImpl(Kernel.Part)]
    public readonly void DrawIn(ref T x, ref T y, ref T z)
    {
        T dx = x - X;
        T dy = y - Y;
        T dz = z - Z;
        T along = ((dx * AX) + (dy * AY)) + (dz * AZ);
        dx = dx - (along * AX);
        dy = dy - (along * AY);
        dz = dz - (along * AZ);
        T distance = T.Sqrt(((dx * dx) + (dy * dy)) + (dz * dz));
        T share = Radius / T.Max(Radius, distance);
        T within = T.Max(-HalfWidth, T.Min(HalfWidth, along));
        x = X + ((share * dx) + (within * AX));
        y = Y + ((share * dy) + (within * AY));
        z = Z + ((share * dz) + (within * AZ));
    }

    /// <summary>Velocity of the turning rim against the body at a place [m/s].</summary>
    [MethodImpl(Kernel.Part)]
    public readonly void Rim(T x, T y, T z, out T vx, out T vy, out T vz)
    {
        T dx = x - X;
        T dy = y - Y;
        T dz = z - Z;
        vx = Spin * ((AY * dz) - (AZ * dy));
        vy = Spin * ((AZ * dx) - (AX * dz));
        vz = Spin * ((AX * dy) - (AY * dx));
    }

    /// <summary>Moment about the axle of a force with a moment about the middle [N m].</summary>
    [MethodImpl(Kernel.Part)]
    public readonly T Torque(in PairForce<T> f)
    {
        T tx = f.MomentX - ((Y * f.Z) - (Z * f.Y));
        T ty = f.MomentY - ((Z * f.X) - (X * f.Z));
        T tz = f.MomentZ - ((X * f.Y) - (Y * f.X));
        return ((AX * tx) + (AY * ty)) + (AZ * tz);
    }
}
