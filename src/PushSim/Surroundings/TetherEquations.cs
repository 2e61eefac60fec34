using System.Runtime.CompilerServices;
using PushSim.Chassis;

namespace PushSim.Surroundings;

/// <summary>A tether in three dimensions: pulls only, tension k e (1 + d e') >= 0 for stretch e > 0.</summary>
internal sealed class TetherEquations<T>
    where T : struct, IReal<T>
{
    /// <summary>Hook relative to the centre of mass [m], anchor's line [m], free length [m].</summary>
    public T HookX, HookY, HookZ, AnchorY, AnchorHeight, FreeLength;

    /// <summary>k [N/m], d [s/m], height of the centre of mass [m].</summary>
    public T Stiffness, Damping, CentreHeight;

    /// <summary>Tension [N], stretch [m], damping loss [W], power of the moving anchor [W].</summary>
    public T Tension, Stretch, DampingPower, AnchorPower;

    /// <summary>Adds the tether's pull to the body, whose centre of mass stands at x, y and the heave over its height.</summary>
    [MethodImpl(Kernel.Part)]
    public void Apply(in BodyMotion<T> motion, in Attitude<T> attitude, T x, T y, T sine, T cosine, T heave, T anchorX, T anchorSpeed, ref Wrench<T> wrench)
    {
        attitude.ToHeading(HookX, HookY, HookZ, out T armX, out T armY, out T armZ);
        T gapX = anchorX - (x + (cosine * armX) - (sine * armY));
        T gapY = AnchorY - (y + (sine * armX) + (cosine * armY));
        T gapZ = AnchorHeight - (CentreHeight + armZ + heave);
        T length = T.Sqrt((gapX * gapX) + (gapY * gapY) + (gapZ * gapZ));
        T inverse = 1.0 / length;

        // unit vector to the anchor, in the heading frame
        T nx = ((cosine * gapX) + (sine * gapY)) * inverse;
        T ny = ((cosine * gapY) - (sine * gapX)) * inverse;
        T nz = gapZ * inverse;
        motion.PointVelocity(armX, armY, armZ, out T vx, out T vy, out T vz);
        T anchorAlong = anchorSpeed * (gapX * inverse);
        T stretchRate = anchorAlong - ((nx * vx) + (ny * vy) + (nz * vz));
        T stretch = length - FreeLength;
        T spring = Stiffness * stretch;
        T tension = T.IfLess(0.0, stretch, T.Max(0.0, spring * (1.0 + (Damping * stretchRate))), 0.0);
        Tension = tension;
        Stretch = stretch;
        DampingPower = T.IfLess(0.0, stretch, (tension - spring) * stretchRate, 0.0);
        AnchorPower = tension * anchorAlong;
        wrench.Add(armX, armY, armZ, tension * nx, tension * ny, tension * nz);
    }
}
