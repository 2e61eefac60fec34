using System.Runtime.CompilerServices;

namespace PushSim.Chassis;

/// <summary>Velocities of the body in its own axes, and the velocity of any of its points. The arms here and in
/// <see cref="Wrench{T}"/> are the same ones, so that force times velocity is generalised force times generalised speed.</summary>
internal struct BodyMotion<T>
    where T : struct, IReal<T>
{
    /// <summary>Forward, left and upward speed of the centre of mass [m/s].</summary>
    public T U, V, ZDot;

    /// <summary>Yaw rate, counter-clockwise from above; pitch rate, nose down; roll rate, left side up [rad/s].</summary>
    public T R, ThetaDot, PhiDot;

    /// <summary>Velocity of a point whose force does not come from positions (V_x = u - r y + z_p theta', ...).</summary>
    /// <param name="x">Forward of the centre of mass [m].</param>
    /// <param name="y">Left of the centre of mass [m].</param>
    /// <param name="zp">Above the centre of mass [m].</param>
    /// <param name="vx">Forward [m/s].</param>
    /// <param name="vy">Left [m/s].</param>
    /// <param name="vz">Up [m/s].</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void PointVelocity(T x, T y, T zp, out T vx, out T vy, out T vz) =>
        PointVelocity(x, y, zp, x, y, out vx, out vy, out vz);

    /// <summary>The same with other arms in the yaw terms, for a force that comes from positions.</summary>
    /// <param name="x">Forward of the centre of mass [m].</param>
    /// <param name="y">Left of the centre of mass [m].</param>
    /// <param name="zp">Above the centre of mass [m].</param>
    /// <param name="yawX">x + z_p theta [m].</param>
    /// <param name="yawY">y - z_p phi [m].</param>
    /// <param name="vx">Forward [m/s].</param>
    /// <param name="vy">Left [m/s].</param>
    /// <param name="vz">Up [m/s].</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void PointVelocity(T x, T y, T zp, T yawX, T yawY, out T vx, out T vy, out T vz)
    {
        vx = U - (R * yawY) + (zp * ThetaDot);
        vy = V + (R * yawX) - (zp * PhiDot);
        vz = ZDot - (ThetaDot * x) + (PhiDot * y);
    }
}
