using PushSim.Chassis;
using PushSim.Numerics;

namespace PushSim.Tests;

/// <summary>What a wrench does to a body that moves.</summary>
internal static class WrenchPower
{
    /// <summary>Generalised force times generalised speed [W].</summary>
    public static T Power<T>(this in Wrench<T> f, in BodyMotion<T> motion)
        where T : struct, IReal<T> =>
        (f.Fx * motion.U) + (f.Fy * motion.V) + (f.Fz * motion.ZDot) + (f.Roll * motion.PhiDot) + (f.Pitch * motion.ThetaDot) + (f.Yaw * motion.R);
}
