using System.Runtime.CompilerServices;

namespace PushSim.Chassis;

/// <summary>Sum of forces on the body in its heading frame and their moments about the centre of mass through the arms of <see cref="BodyMotion{T}"/>:
/// M_pitch = sum(z_p F_x - x F_z), M_roll = sum(y F_z - z_p F_y), M_yaw = sum(x F_y - y F_x).</summary>
internal struct Wrench<T>
    where T : struct, IReal<T>
{
    /// <summary>Forward, left and upward force [N].</summary>
    public T Fx, Fy, Fz;

    /// <summary>Moments: roll (left side up), pitch (nose down), yaw (counter-clockwise) [N m].</summary>
    public T Roll, Pitch, Yaw;

    /// <summary>Adds a force at a point.</summary>
    /// <param name="x">Forward of the centre of mass [m].</param>
    /// <param name="y">Left of the centre of mass [m].</param>
    /// <param name="zp">Above the centre of mass [m].</param>
    /// <param name="fx">Forward [N].</param>
    /// <param name="fy">Left [N].</param>
    /// <param name="fz">Up [N].</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(T x, T y, T zp, T fx, T fy, T fz)
    {
        Fx = Fx + fx;
        Fy = Fy + fy;
        Fz = Fz + fz;
        Pitch = Pitch + ((zp * fx) - (x * fz));
        Roll = Roll + ((y * fz) - (zp * fy));
        Yaw = Yaw + ((x * fy) - (y * fx));
    }
}
