using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>The wheels of a body as numbers of the kernel, how fast they turn, and what a contact does to them.</summary>
internal sealed class WheelRims<T> : INumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Hubs from the centre of mass, radii, half widths [m].</summary>
    public readonly T[] X, Y, Z, Radius, HalfWidth;

    /// <summary>Stiffness of an edge's length on the tread, its tyre's in series [N/m^2]; friction [1].</summary>
    public readonly T[] Stiffness, Friction;

    /// <summary>How far each reaches from its hub [m].</summary>
    public readonly T[] Reach;

    /// <summary>Box about all of them, from the centre of mass along the body's axes: its middle, then half its lengths [m].</summary>
    public readonly T[] Box;

    /// <summary>Turning about the axle against the body, positive rolling forward: to be set before a contact is evaluated [rad/s].</summary>
    public readonly T[] Spin;

    /// <summary>Moment of the contact on each wheel about its axle, positive as <see cref="Spin"/> [N m].</summary>
    public readonly T[] Torque;

    /// <param name="wheels">The wheels.</param>
    /// <param name="edgeStiffness">Stiffness of an edge against a face [N/m^2].</param>
    public WheelRims(IReadOnlyList<RoundWheel> wheels, double edgeStiffness)
    {
        X = Aligned.Copy([.. wheels.Select(w => (T)w.X)]);
        Y = Aligned.Copy([.. wheels.Select(w => (T)w.Y)]);
        Z = Aligned.Copy([.. wheels.Select(w => (T)w.Z)]);
        Radius = Aligned.Copy([.. wheels.Select(w => (T)w.Radius)]);
        HalfWidth = Aligned.Copy([.. wheels.Select(w => (T)w.HalfWidth)]);

        // flush, both ends of the line of contact at depth d carry 2 k d (b + l0/4)
        Stiffness = Aligned.Copy([.. wheels.Select(w => (T)(1.0 / ((1.0 / edgeStiffness) + (2.0 * (w.HalfWidth + (0.25 * EdgeProfile.CapLength)) / w.Stiffness))))]);
        Friction = Aligned.Copy([.. wheels.Select(w => (T)w.Friction)]);
        Reach = Aligned.Copy([.. wheels.Select(w => (T)double.Hypot(w.Radius, w.HalfWidth))]);
        Box = Aligned.Copy([.. BoxOf(wheels).Select(v => (T)v)]);
        Spin = Aligned.Array<T>(wheels.Count);
        Torque = Aligned.Array<T>(wheels.Count);
    }

    /// <summary>Number of wheels.</summary>
    public int Count => X.Length;

    public void Show(NumberWalk<T> walk)
    {
        foreach (T[] numbers in (T[][])[X, Y, Z, Radius, HalfWidth, Stiffness, Friction, Reach, Box])
        {
            walk.Take(numbers);
        }
    }

    /// <summary>Whether the box about these wheels, a tenth larger, is beside, before or above the one about others, in all lanes: quickly told, and true of most passes.</summary>
    /// <param name="other">Wheels of the other body.</param>
    /// <param name="v">How the other body sees this one.</param>
    [MethodImpl(Kernel.Part)]
    public bool IsApart(WheelRims<T> other, in PartView<T> v)
    {
        (T x, T y, T z) = (Box[0], Box[1], Box[2]);
        (T hx, T hy, T hz) = (1.1 * Box[3], 1.1 * Box[4], 1.1 * Box[5]);
        T dx = (((2.0 * v.HalfX) - other.Box[0]) + ((v.XX * x) + (v.XY * y))) + (v.XZ * z);
        T dy = (((2.0 * v.HalfY) - other.Box[1]) + ((v.YX * x) + (v.YY * y))) + (v.YZ * z);
        T dz = (((2.0 * v.HalfZ) - other.Box[2]) + ((v.ZX * x) + (v.ZY * y))) + (v.ZZ * z);
        T gapX = T.Abs(dx) - (other.Box[3] + (((T.Abs(v.XX) * hx) + (T.Abs(v.XY) * hy)) + (T.Abs(v.XZ) * hz)));
        T gapY = T.Abs(dy) - (other.Box[4] + (((T.Abs(v.YX) * hx) + (T.Abs(v.YY) * hy)) + (T.Abs(v.YZ) * hz)));
        T gapZ = T.Abs(dz) - (other.Box[5] + (((T.Abs(v.ZX) * hx) + (T.Abs(v.ZY) * hy)) + (T.Abs(v.ZZ) * hz)));
        return T.AllLess(0.0, T.Max(gapX, T.Max(gapY, gapZ)));
    }

    private static double[] BoxOf(IReadOnlyList<RoundWheel> wheels)
    {
        if (wheels.Count == 0)
        {
            return [];
        }

        (double Low, double High)[] spans =
        [
            (wheels.Min(w => w.X - w.Radius), wheels.Max(w => w.X + w.Radius)), (wheels.Min(w => w.Y - w.HalfWidth), wheels.Max(w => w.Y + w.HalfWidth)),
            (wheels.Min(w => w.Z - w.Radius), wheels.Max(w => w.Z + w.Radius)),
        ];
        return [.. spans.Select(s => 0.5 * (s.Low + s.High)), .. spans.Select(s => 0.5 * (s.High - s.Low))];
    }

    /// <summary>Forgets the moments.</summary>
    public void Release() => Torque.AsSpan().Clear();

    /// <summary>Adds moments of a part, or of two that are mirror partners.</summary>
    /// <param name="first">Of the one [N m].</param>
    /// <param name="second">Of the other [N m]; empty without one.</param>
    public void Add(ReadOnlySpan<T> first, ReadOnlySpan<T> second)
    {
        for (int i = 0; i < first.Length; i++)
        {
            Torque[i] = Torque[i] + (second.Length > 0 ? first[i] + second[i] : first[i]);
        }
    }

    /// <summary>Power that the contact gives to the wheels' turning [W].</summary>
    public T Power()
    {
        T sum = 0.0;
        for (int i = 0; i < Torque.Length; i++)
        {
            sum = sum + (Torque[i] * Spin[i]);
        }

        return sum;
    }
}
