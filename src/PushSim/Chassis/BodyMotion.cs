using System.Runtime.CompilerServices;

namespace PushSim.Chassis;

/// <summary>Velocities of the body in its heading frame (x and y along the floor under the heading, z up, turning with it), and the velocity of any of its points.
/// The arms here and in <see cref="Wrench{T}"/> are the same ones, so that force times velocity is generalised force times generalised speed.</summary>
internal struct BodyMotion<T>
    where T : struct, IReal<T>
{
    /// <summary>Forward, left and upward speed of the centre of mass [m/s].</summary>
    public T U, V, ZDot;

    /// <summary>Turning about the heading frame's z, y and x: counter-clockwise from above, nose down, left side up [rad/s].</summary>
    public T R, ThetaDot, PhiDot;

    /// <summary>Velocity of a point of the body.</summary>
    /// <param name="x">Forward of the centre of mass [m].</param>
    /// <param name="y">Left of it [m].</param>
    /// <param name="z">Above it [m].</param>
    /// <param name="vx">Forward [m/s].</param>
    /// <param name="vy">Left [m/s].</param>
    /// <param name="vz">Up [m/s].</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void PointVelocity(T x, T y, T z, out T vx, out T vy, out T vz)
    {
        vx = U - (R * y) + (z * ThetaDot);
        vy = V + (R * x) - (z * PhiDot);
        vz = ZDot - (ThetaDot * x) + (PhiDot * y);
    }
}
