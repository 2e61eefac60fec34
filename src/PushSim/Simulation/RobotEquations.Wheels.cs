using System.Runtime.CompilerServices;
using PushSim.Chassis;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <content>The wheels on the floor and its patches.</content>
internal sealed partial class RobotEquations<T>
{
    [MethodImpl(Kernel.Part)]
    private void AddWheels(
        in BodyMotion<T> motion, in Attitude<T> attitude, T sine, T cosine, T g, Span<T> y, Span<T> z, ReadOnlySpan<T> predicted, Span<T> dy, Span<T> dz, ref Wrench<T> wrench)
    {
        T centre = Body.Height + y[StateLayout.Heave];
        Unsafe.SkipInit(out WheelPlace<T> place);
        for (int i = 0; i < Wheels.Length; i++)
        {
            ref readonly WheelParameters<T> p = ref Wheels[i];
            WheelKind<T> kind = Kinds[i];
            ref readonly WheelShape shape = ref kind.Shape;
            ref WheelWork<T> w = ref WheelWork[i];
            T surface = 0.0;
            if (shape.Drive >= 0)
            {
                surface = p.Radius * (p.DriveRatio * y[Layout.FirstDrive + shape.Drive]);
            }

            place.Set(p, attitude, motion, centre);
            T friction = Body.FloorFriction;
            if (Patches.Length > 0)
            {
                friction = PatchFriction(
                    y[StateLayout.X] + ((cosine * place.X) - (sine * place.Y)),
                    y[StateLayout.Y] + ((sine * place.X) + (cosine * place.Y)));
            }

            if (shape.FoulingIndex >= 0)
            {
                friction = friction * (1.0 + ((p.DustyRatio - 1.0) * y[shape.FoulingIndex]));
            }

            WheelEquations.Evaluate(p, kind, place, motion.R, surface, friction, g, i, Layout.Block, z, predicted, dz, ref w, out T wearSpeed);
            T torque = p.Radius * w.Fx;
            w.RollingPower = 0.0;
            if (shape.HasRolling)
            {
                T spin = p.DriveRatio * y[Layout.FirstDrive + shape.Drive];
                T rolling = p.RollingResistance * w.Load * p.Radius * T.Tanh(spin * p.InverseRollingSpeed);
                torque = torque + rolling;
                w.RollingPower = rolling * spin;
            }

            w.DriveTorque = p.DriveRatio * torque;
            place.Turn(w.Fx, w.Fy, out T fx, out T fy);
            wrench.Add(place.X, place.Y, place.Z, fx, fy, w.Load);
            if (shape.SpinIndex >= 0)
            {
                wrench.Yaw = wrench.Yaw + w.SpinMoment;
            }

            if (shape.FoulingIndex >= 0)
            {
                dy[shape.FoulingIndex] = wearSpeed * p.InverseFoulingDistance * (1.0 - y[shape.FoulingIndex]);
            }

            if (shape.WearIndex >= 0)
            {
                dy[shape.WearIndex] = p.WearRate * w.Load * wearSpeed;
                dy[shape.WearIndex + 1] = w.TreadPower;
            }
        }
    }

    // Friction scale of the floor with its patches, blended over an edge's width.
    private T PatchFriction(T x, T y)
    {
        T scale = Body.FloorFriction;
        foreach (ref readonly PatchParameters<T> patch in Patches.AsSpan())
        {
            T inside = Edge(x - patch.MinX) * Edge(patch.MaxX - x) * Edge(y - patch.MinY) * Edge(patch.MaxY - y);
            scale = scale + (((Body.FloorFriction * patch.FrictionScale) - scale) * inside);
        }

        return scale;
    }

    private static T Edge(T distance) => T.Max(0.0, T.Min(1.0, 0.5 + (distance * (1.0 / EdgeWidth))));
}
