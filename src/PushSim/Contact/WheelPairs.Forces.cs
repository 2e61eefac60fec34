using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <content>What the planes carry, and friction.</content>
internal sealed partial class WheelPairs<T>
{
    // Force on the first wheel; treads in pairs, then both sides of each wheel.
    [MethodImpl(Kernel.Part)]
    private void Press(in Meeting<T> m, ref PairForce<T> force)
    {
        PairForce<T> one = default, two = default;
        AddPlane(m, _one, _two, 1.0, _both.X, _both.Y, _both.Z, _treads, ref force);
        AddPlane(m, _two, _one, -1.0, -_both.X, -_both.Y, -_both.Z, _treads, ref one);
        force.Add(one);
        one = default;
        AddPlane(m, _one, _two, 1.0, _first.X, _first.Y, _first.Z, _tread1, ref one);
        AddPlane(m, _two, _one, -1.0, _second.X, _second.Y, _second.Z, _tread2, ref two);
        one.Add(two);
        force.Add(one);

        if (!T.AllLess(T.Max(T.Max(_plus1, _minus1), T.Max(_plus2, _minus2)), EdgeProfile.Nothing<T>()))
        {
            PairForce<T> first = default, second = default, third = default, fourth = default;
            AddPlane(m, _one, _two, 1.0, _one.AX, _one.AY, _one.AZ, _plus1, ref first);
            AddPlane(m, _one, _two, 1.0, -_one.AX, -_one.AY, -_one.AZ, _minus1, ref second);
            AddPlane(m, _two, _one, -1.0, _two.AX, _two.AY, _two.AZ, _plus2, ref third);
            AddPlane(m, _two, _one, -1.0, -_two.AX, -_two.AY, -_two.AZ, _minus2, ref fourth);
            first.Add(second);
            third.Add(fourth);
            first.Add(third);
            force.Add(first);
        }
    }

    // The other wheel's line on a plane of the own one, n outward; sign 1 where the own wheel is the first.
    [MethodImpl(Kernel.Part)]
    private void AddPlane(in Meeting<T> m, in RimPose<T> own, in RimPose<T> other, double sign, T nx, T ny, T nz, T weight, ref PairForce<T> sums)
    {
        if (T.AllLess(weight, EdgeProfile.Nothing<T>()))
        {
            return;
        }

        T along = ((nx * other.AX) + (ny * other.AY)) + (nz * other.AZ);
        T r = other.Radius / T.Sqrt(T.Max(0.0, 1.0 - (along * along)) + RimPose<T>.LyingSquare);
        T x = other.X - (r * (nx - (along * other.AX)));
        T y = other.Y - (r * (ny - (along * other.AY)));
        T z = other.Z - (r * (nz - (along * other.AZ)));
        T depth = own.Height(nx, ny, nz) - ((((x - own.X) * nx) + ((y - own.Y) * ny)) + ((z - own.Z) * nz));
        T change = other.HalfWidth * along;
        EdgeProfile.Integrate(-0.5, 0.5, depth + change, depth - change, 2.0 * other.HalfWidth, out T area, out T moment);
        T place = (2.0 * other.HalfWidth) * (moment / T.Max(area, EdgeProfile.Nothing<T>()));
        x = x + (place * other.AX);
        y = y + (place * other.AY);
        z = z + (place * other.AZ);
        own.DrawIn(ref x, ref y, ref z);
        T vx = m.VX + ((m.WY * z) - (m.WZ * y));
        T vy = m.VY + ((m.WZ * x) - (m.WX * z));
        T vz = m.VZ + ((m.WX * y) - (m.WY * x));
        T closing = sign * (((nx * vx) + (ny * vy)) + (nz * vz));
        T normal = ((_scale * weight) * area) * T.Max(0.0, 1.0 + (_damping * closing));
        T push = -(sign * normal);
        sums.Normal = sums.Normal + normal;
        Add(push * nx, push * ny, push * nz, x, y, z, ref sums);
        sums.PlaceX = sums.PlaceX + (normal * x);
        sums.PlaceY = sums.PlaceY + (normal * y);
        sums.PlaceZ = sums.PlaceZ + (normal * z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(T fx, T fy, T fz, T x, T y, T z, ref PairForce<T> sums)
    {
        sums.X = sums.X + fx;
        sums.Y = sums.Y + fy;
        sums.Z = sums.Z + fz;
        sums.MomentX = sums.MomentX + ((y * fz) - (z * fy));
        sums.MomentY = sums.MomentY + ((z * fx) - (x * fz));
        sums.MomentZ = sums.MomentZ + ((x * fy) - (y * fx));
    }

    // Friction of the two turning rims at the middle of their forces.
    [MethodImpl(Kernel.Part)]
    private void Rub(in Meeting<T> m, ref PairForce<T> s)
    {
        T inverse = 1.0 / T.Max(s.Normal, EdgeProfile.Nothing<T>());
        T x = s.PlaceX * inverse;
        T y = s.PlaceY * inverse;
        T z = s.PlaceZ * inverse;
        T pressed = T.Sqrt(((s.X * s.X) + (s.Y * s.Y)) + (s.Z * s.Z));
        T perLength = 1.0 / T.Max(pressed, EdgeProfile.Nothing<T>());
        T nx = s.X * perLength;
        T ny = s.Y * perLength;
        T nz = s.Z * perLength;
        _one.Rim(x, y, z, out T rx, out T ry, out T rz);
        _two.Rim(x, y, z, out T sx, out T sy, out T sz);
        T vx = (m.VX + ((m.WY * z) - (m.WZ * y))) + (rx - sx);
        T vy = (m.VY + ((m.WZ * x) - (m.WX * z))) + (ry - sy);
        T vz = (m.VZ + ((m.WX * y) - (m.WY * x))) + (rz - sz);
        T along = ((nx * vx) + (ny * vy)) + (nz * vz);
        vx = vx - (along * nx);
        vy = vy - (along * ny);
        vz = vz - (along * nz);
        T friction = T.Min(_one.Friction, _two.Friction);
        T grip = -((friction * pressed) / T.Sqrt((((vx * vx) + (vy * vy)) + (vz * vz)) + (WheelSide<T>.CreepSpeed * WheelSide<T>.CreepSpeed)));
        Add(grip * vx, grip * vy, grip * vz, x, y, z, ref s);
    }
}
