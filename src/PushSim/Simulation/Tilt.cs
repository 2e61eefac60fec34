namespace PushSim.Simulation;

/// <summary>Angles of a body's tilt from its states, for people: by how much its x and y axes lean against upright, up to 180 degrees.</summary>
internal static class Tilt
{
    /// <summary>Pitch, nose down positive [rad].</summary>
    public static double Pitch(double roll, double pitch)
    {
        (double scalar, double up) = Parts(roll, pitch);
        return Math.Atan2(scalar * pitch, up);
    }

    /// <summary>Roll, left side up positive [rad].</summary>
    public static double Roll(double roll, double pitch)
    {
        (double scalar, double up) = Parts(roll, pitch);
        return Math.Atan2(scalar * roll, up);
    }

    /// <summary>Angle between the body's z axis and upright [rad].</summary>
    public static double Whole(double roll, double pitch) => 2.0 * Math.Asin(Math.Min(1.0, 0.5 * double.Hypot(roll, pitch)));

    /// <summary>State of pitch or roll that is an angle about one axis alone [1].</summary>
    public static double State(double angle) => 2.0 * Math.Sin(0.5 * angle);

    private static (double Scalar, double Up) Parts(double roll, double pitch)
    {
        double square = (roll * roll) + (pitch * pitch);
        return (Math.Sqrt(Math.Max(0.0, 1.0 - (0.25 * square))), 1.0 - (0.5 * square));
    }
}
