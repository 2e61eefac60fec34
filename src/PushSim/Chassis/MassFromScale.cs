namespace PushSim.Chassis;

/// <summary>Mass and centre of mass from readings of a kitchen scale under one axle at a time, the other axle at the same height.
/// <code>
/// level:  m = m_f + m_r            x = (m_f x_f + m_r x_r)/m          (the same across: left, right, y)
/// tilted: m_f' / m = ((x - x_r) cos t - (h - r_r) sin t) / (L cos t - d sin t),   L = x_f - x_r,  d = r_f - r_r
///         h = r_r + ((x - x_r) cos t - (m_f'/m)(L cos t - d sin t)) / sin t
///         sin(t + atan(d/L)) = (e + d) / sqrt(L^2 + d^2)
/// </code>
/// with e the rise of the front axle, r the wheels' radii, m_f' the front reading in that place; with equal wheels h = r + (m_f - m_f') L/(m tan t).
/// The wheels must be free to roll, else friction carries part of the load. Lifting one axle and reading the change is the usual test of
/// road vehicles (from memory); the equations are moments about the rear contact.</summary>
public static class MassFromScale
{
    /// <summary>Place of the centre of mass between two supports [m].</summary>
    /// <param name="first">Reading at the first support [kg].</param>
    /// <param name="second">Reading at the second [kg].</param>
    /// <param name="atFirst">Coordinate of the first [m].</param>
    /// <param name="atSecond">Coordinate of the second [m].</param>
    public static double Centre(double first, double second, double atFirst, double atSecond) =>
        ((first * atFirst) + (second * atSecond)) / (first + second);

    /// <summary>Height of the centre of mass above the level floor from a test with the front axle raised; NaN if it cannot be raised so far.</summary>
    /// <param name="axles">The two axles.</param>
    /// <param name="centre">Centre of mass, forward, in the axles' coordinate [m].</param>
    /// <param name="frontShare">Share of the mass that the front carries in the raised place, m_f'/m [1].</param>
    /// <param name="rise">Rise of the front axle, e [m].</param>
    public static TiltResult Height(AxlePair axles, double centre, double frontShare, double rise)
    {
        double l = axles.FrontX - axles.RearX;
        double d = axles.FrontRadius - axles.RearRadius;
        double t = Math.Asin((rise + d) / Math.Sqrt((l * l) + (d * d))) - Math.Atan2(d, l);
        double span = (l * Math.Cos(t)) - (d * Math.Sin(t));
        double height = axles.RearRadius + ((((centre - axles.RearX) * Math.Cos(t)) - (frontShare * span)) / Math.Sin(t));
        return new TiltResult(height, t, span / Math.Sin(t));
    }
}
