using System.Runtime.CompilerServices;
using PushSim.Chassis;

namespace PushSim.Contact;

/// <summary>A body on the floor: the edges of its parts against the plane z = 0 by the law of <see cref="PartSide{T}"/>, without planes beside it and without weights,
/// damped by restitution, with one bristle of friction at the centre of pressure that never forgets (<see cref="ContactFriction"/>).
/// <code>
///   N_e = k lying n0 max(0, 1 + lambda closing)
/// </code></summary>
internal sealed class FloorContact<T> : INumbers<T>
    where T : struct, IReal<T>
{
    private readonly int[][] _groups;
    private readonly T[] _x, _y, _z;

    private PairNumbers<T> _numbers;

    /// <param name="body">The body.</param>
    /// <param name="settings">What its underside is made of.</param>
    public FloorContact(ContactBody body, UndersideSettings settings)
    {
        Shapes = [.. body.Parts.Select(p => new PartShape<T>(p))];
        _groups = body.Groups;
        Shape = body.Shape;
        int most = Shapes.Max(s => s.Count);
        _x = Aligned.Array<T>(most);
        _y = Aligned.Array<T>(most);
        _z = Aligned.Array<T>(most);
        _numbers.Stiffness = settings.Stiffness;
        _numbers.Damping = Restitution.Damping(settings.Restitution);
        _numbers.Friction = settings.Friction;
        _numbers.DeflectionLimit = settings.FrictionDeflection;
    }

    /// <summary>Shapes of the parts.</summary>
    internal PartShape<T>[] Shapes { get; }

    /// <summary>What is no number of the body.</summary>
    public ShapeList<int> Shape { get; }

    public void Show(NumberWalk<T> walk)
    {
        walk.Take(ref _numbers);
        foreach (PartShape<T> shape in Shapes)
        {
            shape.Show(walk);
        }
    }

    /// <summary>Sum of the normal forces [N]; height of the lowest corner above the floor [m]; power lost [W].</summary>
    public T NormalForce, Lowest, LostPower;

    /// <summary>Adds the floor's forces to the body; for g > 0 solves the friction bristle.</summary>
    /// <param name="attitude">The body's attitude.</param>
    /// <param name="motion">Its velocities.</param>
    /// <param name="sine">Of its heading [1].</param>
    /// <param name="cosine">Of its heading [1].</param>
    /// <param name="centre">Height of its centre of mass above the floor [m].</param>
    /// <param name="g">Stage step, 0 for a plain evaluation [s].</param>
    /// <param name="z">Bristle deflections, floor axes [m]; replaced by the stage's solution when g > 0.</param>
    /// <param name="dz">Their derivatives [m/s].</param>
    /// <param name="wrench">Added to.</param>
    [MethodImpl(Kernel.Part)]
    public void Apply(
        in Attitude<T> attitude, in BodyMotion<T> motion, T sine, T cosine, T centre, T g, Span<T> z, Span<T> dz, ref Wrench<T> wrench)
    {
        T normal = 0.0, px = 0.0, py = 0.0, pz = 0.0;
        Lowest = 1e30;
        foreach (int[] group in _groups)
        {
            FaceSums<T> sums = default;
            AddPart(Shapes[group[0]], attitude, motion, centre, ref sums);
            if (group.Length > 1)
            {
                FaceSums<T> other = default;
                AddPart(Shapes[group[1]], attitude, motion, centre, ref other);
                sums.Add(other);
            }

            normal = normal + sums.Normal;
            px = px + sums.PlaceX;
            py = py + sums.PlaceY;
            pz = pz + sums.PlaceZ;
        }

        NormalForce = normal;
        LostPower = 0.0;
        Axes<T> n, slip;
        n.X = 0.0;
        n.Y = 0.0;
        n.Z = -1.0;
        if (T.AllLess(normal, EdgeProfile.Nothing<T>()))
        {
            ContactFriction.Solve(_numbers.DeflectionLimit, 0.0, 0.0, n, default, g, z, dz, out _);
            return;
        }

        T inverse = 1.0 / T.Max(normal, EdgeProfile.Nothing<T>());
        T x = px * inverse;
        T y = py * inverse;
        T low = pz * inverse;
        motion.PointVelocity(x, y, low, out T vx, out T vy, out T vz);
        slip.X = (cosine * vx) - (sine * vy);
        slip.Y = (sine * vx) + (cosine * vy);
        slip.Z = vz;
        ContactFriction.Solve(_numbers.DeflectionLimit, 0.0, normal, n, slip, g, z, dz, out Axes<T> pull);
        T grip = _numbers.Friction * normal;
        T fx = grip * ((cosine * pull.X) + (sine * pull.Y));
        T fy = grip * ((cosine * pull.Y) - (sine * pull.X));
        wrench.Add(x, y, low, fx, fy, normal);
        LostPower = -(((fx * vx) + (fy * vy)) + (normal * vz));
    }

    [MethodImpl(Kernel.Part)]
    private void AddPart(PartShape<T> shape, in Attitude<T> a, in BodyMotion<T> motion, T centre, ref FaceSums<T> sums)
    {
        T lowest = 1e30;
        for (int c = 0; c < shape.X.Length; c++)
        {
            T z = ((a.ZX * shape.X[c]) + (a.ZY * shape.Y[c])) + (a.ZZ * shape.Z[c]);
            _z[c] = z;
            lowest = T.Min(lowest, z);
        }

        lowest = centre + lowest;
        Lowest = T.Min(Lowest, lowest);
        if (T.AllLess(0.0, lowest))
        {
            return;
        }

        for (int c = 0; c < shape.X.Length; c++)
        {
            _x[c] = ((a.XX * shape.X[c]) + (a.XY * shape.Y[c])) + (a.XZ * shape.Z[c]);
            _y[c] = ((a.YX * shape.X[c]) + (a.YY * shape.Y[c])) + (a.YZ * shape.Z[c]);
        }

        foreach ((int first, int second) in shape.EdgePairs)
        {
            T n = 0.0, px = 0.0, py = 0.0, pz = 0.0;
            AddEdge(shape, first, motion, centre, ref n, ref px, ref py, ref pz);
            if (second >= 0)
            {
                AddEdge(shape, second, motion, centre, ref n, ref px, ref py, ref pz);
            }

            sums.Normal = sums.Normal + n;
            sums.PlaceX = sums.PlaceX + px;
            sums.PlaceY = sums.PlaceY + py;
            sums.PlaceZ = sums.PlaceZ + pz;
        }
    }

    [MethodImpl(Kernel.Part)]
    private void AddEdge(PartShape<T> shape, int e, in BodyMotion<T> motion, T centre, ref T normal, ref T px, ref T py, ref T pz)
    {
        (int p, int q) = shape.Edges[e];
        T dp = -(centre + _z[p]);
        T dq = -(centre + _z[q]);
        if (T.AllLess(T.Max(dp, dq), EdgeProfile.Nothing<T>()))
        {
            return;
        }

        T length = shape.Length[e];
        EdgeProfile.Integrate(-0.5, 0.5, dp, dq, length, out T area, out T moment);
        T place = moment / T.Max(area, EdgeProfile.Nothing<T>());
        T x = (0.5 * (_x[p] + _x[q])) + (place * (_x[q] - _x[p]));
        T y = (0.5 * (_y[p] + _y[q])) + (place * (_y[q] - _y[p]));
        T z = (0.5 * (_z[p] + _z[q])) + (place * (_z[q] - _z[p]));
        motion.PointVelocity(x, y, z, out _, out _, out T rising);
        T force = (_numbers.Stiffness * EdgeProfile.Lying(length, dq - dp)) * (area * T.Max(0.0, 1.0 - (_numbers.Damping * rising)));
        normal = normal + force;
        px = px + (force * x);
        py = py + (force * y);
        pz = pz + (force * z);
    }
}
