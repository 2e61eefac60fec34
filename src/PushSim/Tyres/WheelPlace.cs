using System.Runtime.CompilerServices;
using PushSim.Chassis;

namespace PushSim.Tyres;

/// <summary>Where a wheel meets the floor: under its axle, a radius from the hub in the wheel's own plane, in the heading frame. With a the axle and n up,
/// <code>
///   l = sqrt(1 - (n.a)^2)     P = hub - R (n - (n.a) a)/l     t = a x n/l     s = n x t
/// </code>
/// P is the lowest point of the rim, so what a rigid body's point there moves is what P's height changes. Limits: a thin wheel, singular where it lies flat.</summary>
internal struct WheelPlace<T>
    where T : struct, IReal<T>
{
    /// <summary>P from the centre of mass: forward, left, up [m]; its height above the floor [m].</summary>
    public T X, Y, Z, Height;

    /// <summary>t: forward and left; s is (-left, forward) [1].</summary>
    public T AlongX, AlongY;

    /// <summary>Velocity of the chassis at P along t, along s, and up [m/s].</summary>
    public T Rolling, Lateral, Sinking;

    // Keeps l off zero for a wheel that lies flat [1].
    private const double LeastSquare = 1e-4;

    /// <summary>Sets it.</summary>
    /// <param name="p">The wheel.</param>
    /// <param name="attitude">The body's attitude.</param>
    /// <param name="motion">Its velocities.</param>
    /// <param name="centre">Height of the centre of mass above the floor [m].</param>
    [MethodImpl(Kernel.Part)]
    public void Set(in WheelParameters<T> p, in Attitude<T> attitude, in BodyMotion<T> motion, T centre)
    {
        attitude.ToHeading(p.X, p.Y, p.HubZ, out T x, out T y, out T z);
        T rise = attitude.ZY;
        T l = T.Sqrt(T.Max(LeastSquare, 1.0 - (rise * rise)));
        T inverse = 1.0 / l;
        T ax = attitude.XY * inverse;
        T ay = attitude.YY * inverse;
        T along = p.Radius * rise;
        X = x + (along * ax);
        Y = y + (along * ay);
        Z = z - (p.Radius * l);
        Height = centre + Z;
        AlongX = ay;
        AlongY = -ax;
        motion.PointVelocity(X, Y, Z, out T vx, out T vy, out Sinking);
        Rolling = (vx * AlongX) + (vy * AlongY);
        Lateral = (vy * AlongX) - (vx * AlongY);
    }

    /// <summary>A force in the wheel's frame as one in the heading frame [N].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Turn(T along, T left, out T fx, out T fy)
    {
        fx = (along * AlongX) - (left * AlongY);
        fy = (along * AlongY) + (left * AlongX);
    }
}
