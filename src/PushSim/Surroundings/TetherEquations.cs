using System.Runtime.CompilerServices;
using PushSim.Chassis;

namespace PushSim.Surroundings;

/// <summary>A tether in three dimensions: pulls only, tension k e (1 + d e') >= 0 for stretch e > 0.</summary>
internal sealed class TetherEquations<T> : INumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Its numbers.</summary>
    public TetherNumbers<T> Numbers;

    /// <summary>Tension [N], stretch [m], damping loss [W], power of the moving anchor [W].</summary>
    public T Tension, Stretch, DampingPower, AnchorPower;

    public void Show(NumberWalk<T> walk) => walk.Take(ref Numbers);

    /// <summary>Adds the tether's pull to the body, whose centre of mass stands at x, y and the heave over its height.</summary>
    [MethodImpl(Kernel.Part)]
    public void Apply(in BodyMotion<T> motion, in Attitude<T> attitude, T x, T y, T sine, T cosine, T heave, T anchorX, T anchorSpeed, ref Wrench<T> wrench)
    {
        attitude.ToHeading(Numbers.HookX, Numbers.HookY, Numbers.HookZ, out T armX, out T armY, out T armZ);
        T gapX = anchorX - (x + (cosine * armX) - (sine * armY));
        T gapY = Numbers.AnchorY - (y + (sine * armX) + (cosine * armY));
        T gapZ = Numbers.AnchorHeight - (Numbers.CentreHeight + armZ + heave);
        T length = T.Sqrt((gapX * gapX) + (gapY * gapY) + (gapZ * gapZ));
        T inverse = 1.0 / length;

        // unit vector to the anchor, in the heading frame
        T nx = ((cosine * gapX) + (sine * gapY)) * inverse;
        T ny = ((cosine * gapY) - (sine * gapX)) * inverse;
        T nz = gapZ * inverse;
        motion.PointVelocity(armX, armY, armZ, out T vx, out T vy, out T vz);
        T anchorAlong = anchorSpeed * (gapX * inverse);
        T stretchRate = anchorAlong - ((nx * vx) + (ny * vy) + (nz * vz));
        T stretch = length - Numbers.FreeLength;
        T spring = Numbers.Stiffness * stretch;
        T tension = T.IfLess(0.0, stretch, T.Max(0.0, spring * (1.0 + (Numbers.Damping * stretchRate))), 0.0);
        Tension = tension;
        Stretch = stretch;
        DampingPower = T.IfLess(0.0, stretch, (tension - spring) * stretchRate, 0.0);
        AnchorPower = tension * anchorAlong;
        wrench.Add(armX, armY, armZ, tension * nx, tension * ny, tension * nz);
    }
}
