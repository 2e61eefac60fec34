using System.Runtime.CompilerServices;

namespace PushSim.Chassis;

/// <summary>Attitude of a body by a unit quaternion, split into heading and tilt, q = heading o tilt, where tilt has no part about z:
/// <code>
///   tilt = (q0; roll/2, pitch/2, 0)     q0 = sqrt(1 - roll^2/4 - pitch^2/4)
/// </code>
/// Roll and pitch are so twice the sines of half the angles: the angles themselves while they are small. The heading goes on counting through whole turns. Nothing
/// is singular before the body lies on its back. With W the turning about the axes of the heading frame (x and y along the floor under the heading, z up):
/// <code>
///   c = (W_y roll - W_x pitch)/(2 q0)     heading' = W_z - c     roll' = q0 W_x - c pitch/2     pitch' = q0 W_y + c roll/2
/// </code>
/// from q' = (W o q - q o (0; 0, 0, heading'))/2. Kinematics of unit quaternions: Diebel, Representing Attitude, 2006 (from memory); the split is computed here.</summary>
internal struct Attitude<T>
    where T : struct, IReal<T>
{
    /// <summary>Rows of the rotation from body axes to the heading frame [1].</summary>
    public T XX, XY, XZ, YX, YY, YZ, ZX, ZY, ZZ;

    /// <summary>Scalar part of the tilt [1]; roll and pitch, twice its x and y parts [1].</summary>
    public T Scalar, Roll, Pitch;

    // Keeps the root off zero where the body lies on its back [1]; a run ends before.
    private const double LeastSquare = 1e-6;

    /// <summary>Sets it from the states.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Set(T roll, T pitch)
    {
        T rr = roll * roll;
        T pp = pitch * pitch;
        T q0 = T.Sqrt(T.Max(LeastSquare, 1.0 - (0.25 * (rr + pp))));
        Roll = roll;
        Pitch = pitch;
        Scalar = q0;
        XX = 1.0 - (0.5 * pp);
        XY = 0.5 * (roll * pitch);
        XZ = q0 * pitch;
        YX = XY;
        YY = 1.0 - (0.5 * rr);
        YZ = -(q0 * roll);
        ZX = -XZ;
        ZY = -YZ;
        ZZ = 1.0 - (0.5 * (rr + pp));
    }

    /// <summary>A vector of the body in the heading frame.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void ToHeading(T x, T y, T z, out T hx, out T hy, out T hz)
    {
        hx = ((XX * x) + (XY * y)) + (XZ * z);
        hy = ((YX * x) + (YY * y)) + (YZ * z);
        hz = ((ZX * x) + (ZY * y)) + (ZZ * z);
    }

    /// <summary>A vector of the heading frame in body axes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void ToBody(T x, T y, T z, out T bx, out T by, out T bz)
    {
        bx = ((XX * x) + (YX * y)) + (ZX * z);
        by = ((XY * x) + (YY * y)) + (ZY * z);
        bz = ((XZ * x) + (YZ * y)) + (ZZ * z);
    }

    /// <summary>Rates of the states from the turning about the heading frame's axes [rad/s].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Rates(T wx, T wy, T wz, out T heading, out T roll, out T pitch)
    {
        T c = ((wy * Roll) - (wx * Pitch)) / (2.0 * Scalar);
        heading = wz - c;
        roll = (Scalar * wx) - (0.5 * (c * Pitch));
        pitch = (Scalar * wy) + (0.5 * (c * Roll));
    }
}
