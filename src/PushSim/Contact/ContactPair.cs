using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>The contact of two bodies A and B: normal forces where edges of the one press into faces of the other (<see cref="PartSide{T}"/>, once for each pair of
/// convex parts), damped by restitution, and friction by one bristle at the centre of pressure (<see cref="ContactFriction"/>). Exchanging A and B, or left and right,
/// exchanges the forces to the last bit.
/// Limits: one direction of friction for all that touches; no friction against turning on the spot; faces of the two bodies decide what overlaps, not pairs of their edges.</summary>
internal sealed partial class ContactPair<T> : INumbers<T>
    where T : struct, IReal<T>
{
    private readonly PartPair<T>[][] _pairs;
    private readonly PairForce<T>[] _forces;
    private readonly WheelSide<T>[] _wheelsOnA, _wheelsOnB;
    private readonly WheelPairs<T>? _wheelPairs;
    private readonly int[][] _groupsA, _groupsB;
    private Meeting<T> _meeting;

    private PairNumbers<T> _numbers;

    /// <summary>A contact of two bodies.</summary>
    /// <param name="a">Body A.</param>
    /// <param name="b">Body B; a wall, say.</param>
    /// <param name="settings">Stiffness, restitution and friction.</param>
    public ContactPair(ContactBody a, ContactBody b, ContactSettings settings)
    {
        ShapesA = [.. a.Parts.Select(p => new PartShape<T>(p))];
        ShapesB = [.. b.Parts.Select(p => new PartShape<T>(p))];
        _pairs = [.. ShapesA.Select(p => ShapesB.Select(q => new PartPair<T>(p, q)).ToArray())];
        _forces = new PairForce<T>[4];
        _groupsA = a.Groups;
        _groupsB = b.Groups;
        WheelsA = new WheelRims<T>(a.Wheels, settings.EdgeStiffness);
        WheelsB = new WheelRims<T>(b.Wheels, settings.EdgeStiffness);
        _wheelsOnA = b.Wheels.Count > 0 ? [.. ShapesA.Select(p => new WheelSide<T>(p, WheelsB))] : [];
        _wheelsOnB = a.Wheels.Count > 0 ? [.. ShapesB.Select(p => new WheelSide<T>(p, WheelsA))] : [];
        _wheelPairs = a.Wheels.Count > 0 && b.Wheels.Count > 0 ? new WheelPairs<T>(WheelsA, WheelsB) : null;
        Shape = (a.Shape, b.Shape);
        _numbers.Reach = a.Radius + b.Radius;
        _numbers.Stiffness = settings.EdgeStiffness;
        _numbers.Damping = Restitution.Damping(settings.Restitution);
        _numbers.Friction = settings.Friction;
        _numbers.DeflectionLimit = settings.FrictionDeflection;
        _numbers.Forget = settings.FrictionMemory > 0.0 ? 1.0 / settings.FrictionMemory : 0.0;
    }

    /// <summary>Shapes of the parts of either body.</summary>
    internal PartShape<T>[] ShapesA { get; }

    /// <summary>See <see cref="ShapesA"/>.</summary>
    internal PartShape<T>[] ShapesB { get; }

    /// <summary>Wheels of A and of B: how fast they turn goes in, the moments on them come out.</summary>
    internal WheelRims<T> WheelsA { get; }

    /// <summary>See <see cref="WheelsA"/>.</summary>
    internal WheelRims<T> WheelsB { get; }

    /// <summary>What is no number of body A, and of body B.</summary>
    public (ShapeList<int> A, ShapeList<int> B) Shape { get; }

    public void Show(NumberWalk<T> walk)
    {
        walk.Take(ref _numbers);
        foreach (PartShape<T> shape in ShapesA.Concat(ShapesB))
        {
            shape.Show(walk);
        }

        WheelsA.Show(walk);
        WheelsB.Show(walk);
    }

    /// <summary>Number of bristles [1].</summary>
    public static int BristleCount => ContactFriction.Bristles;

    /// <summary>Sum of the normal forces, wheels included [N], of it on upright faces [N].</summary>
    public T NormalForce, UprightForce;

    /// <summary>Middle of the normal forces, floor axes [m]; between the centres of mass while nothing touches.</summary>
    public T CentreX, CentreY, CentreZ;

    /// <summary>Force on A along floor x and y, and up; on B it is the opposite [N].</summary>
    public T ForceX, ForceY, ForceZ;

    /// <summary>Moments about either centre of mass, floor axes [N m].</summary>
    public Axes<T> OnA, OnB;

    /// <summary>Friction on A in floor axes [N].</summary>
    public Axes<T> FrictionForce;

    /// <summary>Closing speed along the contact's normal at the centre of pressure [m/s].</summary>
    public T ClosingSpeed;

    /// <summary>Power that the two bodies lose in the contact [W].</summary>
    public T LostPower;

    /// <summary>Finds the contact's forces; for g > 0 solves the friction bristle, as in <see cref="IAdditiveSystem"/>.</summary>
    /// <param name="a">A's place and velocities.</param>
    /// <param name="b">B's.</param>
    /// <param name="g">Stage step, 0 for a plain evaluation [s].</param>
    /// <param name="z">Bristle deflections [m]; replaced by the stage's solution when g > 0.</param>
    /// <param name="dz">Their derivatives [m/s].</param>
    /// <returns>Whether there are any forces, in any lane.</returns>
    [MethodImpl(Kernel.Part)]
    public bool Evaluate(in BodyPose<T> a, in BodyPose<T> b, T g, Span<T> z, Span<T> dz)
    {
        T x = b.X - a.X;
        T y = b.Y - a.Y;
        T up = b.Z - a.Z;
        bool isFar = T.AllLess(_numbers.Reach * _numbers.Reach, ((x * x) + (y * y)) + (up * up));
        if (!isFar)
        {
            _meeting.Set(a, b);
        }

        if (isFar)
        {
            Release(a, b, g, z, dz);
            return false;
        }

        bool presses = Press(a, b, out PairForce<T> force);
        bool rolls = Roll(a, b, out PairForce<T> wheels);
        if (!presses && !rolls)
        {
            Release(a, b, g, z, dz);
            return false;
        }

        Rub(force, g, z, dz);
        if (rolls)
        {
            AddWheels(force, wheels);
        }

        return true;
    }

    // Sums over the parts: groups of mirror partners, and of the two orders of a pair of groups, are summed first, so that no order comes before another.
    [MethodImpl(Kernel.Part)]
    private bool Press(in BodyPose<T> a, in BodyPose<T> b, out PairForce<T> sum)
    {
        if (_groupsA.Length == 1 && _groupsB.Length == 1)
        {
            return _pairs[0][0].Evaluate(_meeting, a, b, _numbers.Stiffness, _numbers.Damping, out sum);
        }

        sum = default;
        bool any = false;
        int most = Math.Max(_groupsA.Length, _groupsB.Length);
        for (int i = 0; i < most; i++)
        {
            for (int j = i; j < most; j++)
            {
                bool one = Group(i, j, a, b, out PairForce<T> both);
                if (i != j && Group(j, i, a, b, out PairForce<T> other))
                {
                    both.Add(other);
                    one = true;
                }

                if (one)
                {
                    sum.Add(both);
                    any = true;
                }
            }
        }

        return any;
    }

    private bool Group(int groupA, int groupB, in BodyPose<T> a, in BodyPose<T> b, out PairForce<T> sum)
    {
        sum = default;
        if (groupA >= _groupsA.Length || groupB >= _groupsB.Length)
        {
            return false;
        }

        // parallel ones, then crossed ones
        int[] ofA = _groupsA[groupA];
        int[] ofB = _groupsB[groupB];
        bool any = false;
        for (int k = 0; k < 4; k++)
        {
            int i = k is 1 or 3 ? 1 : 0;
            int j = k is 1 or 2 ? 1 : 0;
            _forces[k] = default;
            if (i < ofA.Length && j < ofB.Length)
            {
                any |= _pairs[ofA[i]][ofB[j]].Evaluate(_meeting, a, b, _numbers.Stiffness, _numbers.Damping, out _forces[k]);
            }
        }

        _forces[0].Add(_forces[1]);
        _forces[2].Add(_forces[3]);
        sum = _forces[0];
        sum.Add(_forces[2]);
        return any;
    }

    [MethodImpl(Kernel.Part)]
    private void Rub(in PairForce<T> f, T g, Span<T> z, Span<T> dz)
    {
        T inverse = 1.0 / T.Max(f.Normal, EdgeProfile.Nothing<T>());
        T px = f.PlaceX * inverse;
        T py = f.PlaceY * inverse;
        T pz = f.PlaceZ * inverse;
        T length = T.Sqrt(((f.X * f.X) + (f.Y * f.Y)) + (f.Z * f.Z));
        T perLength = -1.0 / T.Max(length, EdgeProfile.Nothing<T>());
        Axes<T> n, slip;
        n.X = f.X * perLength;
        n.Y = f.Y * perLength;
        n.Z = f.Z * perLength;
        slip.X = _meeting.VX + ((_meeting.WY * pz) - (_meeting.WZ * py));
        slip.Y = _meeting.VY + ((_meeting.WZ * px) - (_meeting.WX * pz));
        slip.Z = _meeting.VZ + ((_meeting.WX * py) - (_meeting.WY * px));
        ContactFriction.Solve(_numbers.DeflectionLimit, _numbers.Forget * (f.Upright * inverse), f.Normal, n, slip, g, z, dz, out Axes<T> pull);
        T grip = _numbers.Friction * f.Normal;
        T tx = grip * pull.X;
        T ty = grip * pull.Y;
        T tz = grip * pull.Z;
        ForceX = f.X + tx;
        ForceY = f.Y + ty;
        ForceZ = f.Z + tz;
        T mx = f.MomentX + ((py * tz) - (pz * ty));
        T my = f.MomentY + ((pz * tx) - (px * tz));
        T mz = f.MomentZ + ((px * ty) - (py * tx));

        // about the centres of mass: the half distance times the force is the same for both
        T hx = (_meeting.HalfY * ForceZ) - (_meeting.HalfZ * ForceY);
        T hy = (_meeting.HalfZ * ForceX) - (_meeting.HalfX * ForceZ);
        T hz = (_meeting.HalfX * ForceY) - (_meeting.HalfY * ForceX);
        OnA.X = mx + hx;
        OnA.Y = my + hy;
        OnA.Z = mz + hz;
        OnB.X = hx - mx;
        OnB.Y = hy - my;
        OnB.Z = hz - mz;
        NormalForce = f.Normal;
        UprightForce = f.Upright;
        FrictionForce.X = tx;
        FrictionForce.Y = ty;
        FrictionForce.Z = tz;
        ClosingSpeed = ((n.X * slip.X) + (n.Y * slip.Y)) + (n.Z * slip.Z);
        CentreX = _meeting.X + px;
        CentreY = _meeting.Y + py;
        CentreZ = _meeting.Z + pz;
        LostPower = -((((ForceX * _meeting.VX) + (ForceY * _meeting.VY)) + (ForceZ * _meeting.VZ))
            + (((mx * _meeting.WX) + (my * _meeting.WY)) + (mz * _meeting.WZ)));
    }

    private void Release(in BodyPose<T> a, in BodyPose<T> b, T g, Span<T> z, Span<T> dz)
    {
        ContactFriction.Solve(_numbers.DeflectionLimit, 0.0, 0.0, default, default, g, z, dz, out _);
        NormalForce = 0.0;
        UprightForce = 0.0;
        CentreX = 0.5 * (a.X + b.X);
        CentreY = 0.5 * (a.Y + b.Y);
        CentreZ = 0.5 * (a.Z + b.Z);
        ForceX = 0.0;
        ForceY = 0.0;
        ForceZ = 0.0;
        OnA = default;
        OnB = default;
        FrictionForce = default;
        WheelsA.Release();
        WheelsB.Release();
        ClosingSpeed = 0.0;
        LostPower = 0.0;
    }
}
