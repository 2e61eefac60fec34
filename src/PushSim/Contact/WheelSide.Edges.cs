using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <content>Edges of the part on the wheel's tread and on its sides.</content>
internal sealed partial class WheelSide<T>
{
    // An edge of the part on the tread and on the wheel's sides; the sides' circle takes over within twice the rim's width.
    [MethodImpl(Kernel.Part)]
    private void AddEdge(in PartView<T> v, int e, ref FaceSums<T> sums)
    {
        (int p, int q) = _own.Edges[e];
        T ex = _own.X[q] - _own.X[p];
        T ey = _own.Y[q] - _own.Y[p];
        T ez = _own.Z[q] - _own.Z[p];
        T mx = (0.5 * (_own.X[p] + _own.X[q])) - v.HalfX;
        T my = (0.5 * (_own.Y[p] + _own.Y[q])) - v.HalfY;
        T mz = (0.5 * (_own.Z[p] + _own.Z[q])) - v.HalfZ;
        T axial = (((mx - _cx) * _ax) + ((my - _cy) * _ay)) + ((mz - _cz) * _az);
        T change = ((ex * _ax) + (ey * _ay)) + (ez * _az);

        // across the axle
        T rx = (mx - _cx) - (axial * _ax);
        T ry = (my - _cy) - (axial * _ay);
        T rz = (mz - _cz) - (axial * _az);
        T tx = ex - (change * _ax);
        T ty = ey - (change * _ay);
        T tz = ez - (change * _az);
        T square = (((tx * tx) + (ty * ty)) + (tz * tz)) + TinySquare;
        T nearest = -((((rx * tx) + (ry * ty)) + (rz * tz)) / square);
        T dx = rx + (nearest * tx);
        T dy = ry + (nearest * ty);
        T dz = rz + (nearest * tz);
        T within = (_radius * _radius) - (((dx * dx) + (dy * dy)) + (dz * dz));
        if (T.AllLess(within, 0.0))
        {
            return;
        }

        T chord = T.Sqrt(T.Max(0.0, within) / square);
        T c0 = T.Max(-0.5, nearest - chord);
        T c1 = T.Max(c0, T.Min(0.5, nearest + chord));
        T length = _own.Length[e];
        T deep = T.Min(1.0, T.Max(0.0, within) / ((4.0 * EdgeProfile.Rim) * _radius));
        OnSide(v, 1.0, _plus * deep, axial, change, c0, c1, length, mx, my, mz, ex, ey, ez, ref sums);
        OnSide(v, -1.0, _minus * deep, axial, change, c0, c1, length, mx, my, mz, ex, ey, ez, ref sums);

        T s0 = c0;
        T s1 = c1;
        Clip(_half - axial, 0.5 * change, ref s0, ref s1, out T share, out T span);
        Clip(_half + axial, -(0.5 * change), ref s0, ref s1, out T share2, out T span2);
        s1 = T.Max(s0, s1);
        T at = T.Min(s1, T.Max(s0, nearest));
        dx = rx + (at * tx);
        dy = ry + (at * ty);
        dz = rz + (at * tz);
        T inverse = 1.0 / T.Sqrt((((dx * dx) + (dy * dy)) + (dz * dz)) + TinySquare);
        dx = dx * inverse;
        dy = dy * inverse;
        dz = dz * inverse;
        T slope = -(((dx * tx) + (dy * ty)) + (dz * tz));
        T middle = _radius - (((dx * rx) + (dy * ry)) + (dz * rz));
        EdgeProfile.Integrate(s0, s1, middle + (s0 * slope), middle + (s1 * slope), length, out T area, out T moment);
        T place = moment / T.Max(area, EdgeProfile.Nothing<T>());
        T density = (share * share2) / T.Max(span * span2, EdgeProfile.Nothing<T>());
        T push = ((_scale * _open) * EdgeProfile.Lying(length, slope)) * (density * area);
        Add(v, push, -dx, -dy, -dz, mx + (place * ex), my + (place * ey), mz + (place * ez), ref sums);
    }

    [MethodImpl(Kernel.Part)]
    private void OnSide(in PartView<T> v, double sign, T weight, T axial, T change, T c0, T c1, T length, T mx, T my, T mz, T ex, T ey, T ez, ref FaceSums<T> sums)
    {
        if (T.AllLess(weight, EdgeProfile.Nothing<T>()))
        {
            return;
        }

        T middle = _half - (sign * axial);
        T slope = -(sign * change);
        EdgeProfile.Integrate(c0, c1, middle + (c0 * slope), middle + (c1 * slope), length, out T area, out T moment);
        T place = moment / T.Max(area, EdgeProfile.Nothing<T>());
        T push = ((_scale * weight) * EdgeProfile.Lying(length, slope)) * area;
        Add(v, push, -(sign * _ax), -(sign * _ay), -(sign * _az), mx + (place * ex), my + (place * ey), mz + (place * ez), ref sums);
    }
}
