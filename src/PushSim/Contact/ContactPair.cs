using System.Runtime.CompilerServices;
using PushSim.Chassis;
using PushSim.Tyres;

namespace PushSim.Contact;

/// <summary>The contact of two bodies A and B: normal forces from the overlap of their outlines (<see cref="ContactSide{T}"/>, once
/// with A's faces and once with B's, added), Hunt-Crossley damping, and friction by one elasto-plastic bristle along the
/// face and one along each body's ramp:
/// <code>
///   z' = v - alpha (|v|/z_max) z      T = N (mu/z_max) (z + t z'),   kept within +-mu N
/// </code>
/// with v the slip, averaged over what touches by its normal force. Hunt and Crossley, J. Appl. Mech. 42:440-445, 1975;
/// bristle as in <see cref="BristleLaw"/>. Exchanging A and B, or left and right, exchanges the forces to the last bit.
/// Limits: a ramp's angle is the one it has when level; friction along the face and along a slope are limited each by
/// itself; a side face next to a ramp is as high as it is given, also where it overlaps only the low end of a slope.</summary>
internal sealed class ContactPair<T>
    where T : struct, IReal<T>
{
    /// <summary>Share of z_max up to which friction is elastic [1].</summary>
    private const double ElasticShare = 0.8;

    /// <summary>t, damping of the bristle over its stiffness [s]: stills a stuck contact; much more would be stiff in a hard impact.</summary>
    private const double BristleDamping = 2e-3;

    private readonly ContactSide<T> _sideA, _sideB;
    private readonly bool _rampA, _rampB;

    // how far apart the bodies' middles may be and still touch, level and tilted [m]; friction of a unit of normal force [1/m]
    internal T Reach, Size, DeflectionLimit, FrictionStiffness;

    /// <summary>A contact of two bodies.</summary>
    /// <param name="a">Body A.</param>
    /// <param name="b">Body B; a wall, say.</param>
    /// <param name="settings">Stiffness, damping and friction.</param>
    public ContactPair(ContactBody a, ContactBody b, ContactSettings settings)
    {
        ContactShape<T> shapeA = new(a);
        ContactShape<T> shapeB = new(b);
        _sideA = new(shapeA, shapeB, settings);
        _sideB = new(shapeB, shapeA, settings);
        _rampA = a.HasRamp;
        _rampB = b.HasRamp;
        Reach = shapeA.Radius + shapeB.Radius;
        Size = Reach + shapeA.Size + shapeB.Size;
        DeflectionLimit = settings.FrictionDeflection;
        FrictionStiffness = settings.Friction / settings.FrictionDeflection;
    }

    /// <summary>The two halves.</summary>
    internal (ContactSide<T> A, ContactSide<T> B) Sides => (_sideA, _sideB);

    /// <summary>Number of bristles: one along the face, then A's ramp and B's ramp, where they have one [1].</summary>
    public int BristleCount => 1 + (_rampA ? 1 : 0) + (_rampB ? 1 : 0);

    /// <summary>Sum of the normal forces [N], of that upright faces against each other, on A's ramp, on B's ramp [N].</summary>
    public T NormalForce, BluntForce, RampForceA, RampForceB;

    /// <summary>Middle of the normal forces, floor axes [m]; between the centres of mass while nothing touches.</summary>
    public T CentreX, CentreY;

    /// <summary>Force on A along floor x and y, and up; on B it is the opposite [N].</summary>
    public T ForceX, ForceY, ForceZ;

    /// <summary>Friction along the face, positive where A slides counter-clockwise around itself over B [N].</summary>
    public T FaceFriction;

    /// <summary>Power that the two bodies lose in the contact: -(force on A . v_A + force on B . v_B) there [W].</summary>
    public T LostPower;

    /// <summary>Adds the contact's forces to both bodies; for g > 0 solves the friction bristles, as in <see cref="IAdditiveSystem"/>.</summary>
    /// <param name="a">A's place and velocities.</param>
    /// <param name="b">B's.</param>
    /// <param name="g">Stage step, 0 for a plain evaluation [s].</param>
    /// <param name="z">Bristle deflections [m]; replaced by the stage's solution when g > 0.</param>
    /// <param name="dz">Their derivatives [m/s].</param>
    /// <param name="onA">Forces on A, added to.</param>
    /// <param name="onB">Forces on B, added to.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Evaluate(in BodyPose<T> a, in BodyPose<T> b, T g, Span<T> z, Span<T> dz, ref Wrench<T> onA, ref Wrench<T> onB)
    {
        T slack = Slack(a, b);
        if (IsFar(a, b, slack) || !Touches(a, b, slack))
        {
            Release(a, b, g, z, dz);
            return;
        }

        T normal = _sideA.Sums.Normal + _sideB.Sums.Normal;
        T slip = _sideA.Sums.Slip + _sideB.Sums.Slip;
        T along = Bristle(normal, slip, g, ref z[0], ref dz[0]);
        Wrench<T> forceA = Combine(_sideA.Sums.Own, _sideB.Sums.Other, _sideA.Sums.OwnAlong, _sideB.Sums.OtherAlong, along);
        Wrench<T> forceB = Combine(_sideB.Sums.Own, _sideA.Sums.Other, _sideB.Sums.OwnAlong, _sideA.Sums.OtherAlong, along);
        NormalForce = normal;
        BluntForce = normal;
        FaceFriction = along * normal;
        LostPower = (_sideA.Sums.Closing + _sideB.Sums.Closing) + (along * slip);
        RampForceA = 0.0;
        RampForceB = 0.0;
        if (_rampA || _rampB)
        {
            AddRamps(g, z, dz, ref forceA, ref forceB);
        }

        Report(a, b, forceA);
        ContactSums<T>.AddWrench(ref onA, forceA);
        ContactSums<T>.AddWrench(ref onB, forceB);
    }

    /// <summary>By how much tilt may move an outline at most [m]; only to skip work.</summary>
    internal T Slack(in BodyPose<T> a, in BodyPose<T> b)
    {
        T tilt = (T.Abs(a.Pitch) + T.Abs(a.Roll)) + (T.Abs(b.Pitch) + T.Abs(b.Roll));
        return T.IfLess(tilt, 1.0, tilt * (Size + T.Abs(a.Heave - b.Heave)), ContactSide<T>.Deep);
    }

    // Whether the outlines cannot meet however they turn.
    private bool IsFar(in BodyPose<T> a, in BodyPose<T> b, T slack)
    {
        T x = b.X - a.X;
        T y = b.Y - a.Y;
        T far = Reach + slack;
        return T.AllLess(far * far, (x * x) + (y * y));
    }

    // Sums the forces of either side; false where the outlines do not overlap.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private bool Touches(in BodyPose<T> a, in BodyPose<T> b, T slack)
    {
        T least = _sideA.LeastOverlap(a, b, slack, ContactSide<T>.Deep);
        if (T.AllLess(least, DepthProfile<T>.Nothing))
        {
            return false;
        }

        least = _sideB.LeastOverlap(b, a, slack, least);
        if (T.AllLess(least, DepthProfile<T>.Nothing))
        {
            return false;
        }

        T sum = _sideA.Weigh(least) + _sideB.Weigh(least);
        T scale = T.IfLess(least, DepthProfile<T>.Nothing, 0.0, 1.0 / T.Max(sum, DepthProfile<T>.Nothing));
        _sideA.Act(scale);
        _sideB.Act(scale);
        return true;
    }

    private void Release(in BodyPose<T> a, in BodyPose<T> b, T g, Span<T> z, Span<T> dz)
    {
        for (int i = 0; i < BristleCount; i++)
        {
            Bristle(0.0, 0.0, g, ref z[i], ref dz[i]);
        }

        NormalForce = 0.0;
        BluntForce = 0.0;
        RampForceA = 0.0;
        RampForceB = 0.0;
        CentreX = 0.5 * (a.X + b.X);
        CentreY = 0.5 * (a.Y + b.Y);
        ForceX = 0.0;
        ForceY = 0.0;
        ForceZ = 0.0;
        FaceFriction = 0.0;
        LostPower = 0.0;
    }

    // Friction per normal force; in the air the bristle only relaxes.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private T Bristle(T normal, T power, T g, ref T z, ref T dz)
    {
        T v = power / T.Max(normal, 1e-100);
        T q = T.Fma(g, v, z);
        T slide = T.Max(0.0, T.IfLess(q, 0.0, -v, v)) / DeflectionLimit;
        T f = BristleLaw.Switched(T.Abs(q), g, slide, 1.0, DeflectionLimit, ElasticShare * DeflectionLimit, 1.0 / ((1.0 - ElasticShare) * DeflectionLimit), out T alpha);
        T decay = alpha * slide;
        T inAir = 1.0 / BristleLaw.RelaxationTime;
        T free = 1.0 / (1.0 + (g * inAir));
        T end = T.IfLess(0.0, normal, f * q, free * z);
        T rate = T.IfLess(0.0, normal, v - (decay * end), -(inAir * end));
        z = end;
        dz = rate;

        // the bound keeps the law passive by itself: z' never turns against z while it slides
        T pulled = T.Max(-DeflectionLimit, T.Min(DeflectionLimit, end + (BristleDamping * rate)));
        return T.IfLess(0.0, normal, FrictionStiffness * pulled, 0.0);
    }

    private void AddRamps(T g, Span<T> z, Span<T> dz, ref Wrench<T> forceA, ref Wrench<T> forceB)
    {
        T lost = 0.0;
        int next = 1;

        // both ramps' forces are added up before they meet the rest, so that neither comes first
        Wrench<T> rubA = default;
        Wrench<T> rubB = default;
        if (_rampA)
        {
            RampForceA = AddRamp(_sideA.Sums.OwnRamp, _sideB.Sums.OtherRamp, g, ref z[next], ref dz[next], ref rubA, ref rubB, out T power);
            lost = power;
            next++;
        }

        if (_rampB)
        {
            RampForceB = AddRamp(_sideB.Sums.OwnRamp, _sideA.Sums.OtherRamp, g, ref z[next], ref dz[next], ref rubB, ref rubA, out T power);
            lost = lost + power;
        }

        ContactSums<T>.AddWrench(ref forceA, rubA);
        ContactSums<T>.AddWrench(ref forceB, rubB);
        BluntForce = BluntForce - (RampForceA + RampForceB);
        LostPower = LostPower + lost;
    }

    // One body's ramp, from the side of its own faces and from the other's.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private T AddRamp(
        in SlopeSums<T> own, in SlopeSums<T> other, T g, ref T z, ref T dz, ref Wrench<T> onRamp, ref Wrench<T> onRider, out T lost)
    {
        T normal = own.Normal + other.Normal;
        T slip = own.Slip + other.Slip;
        T along = Bristle(normal, slip, g, ref z, ref dz);
        lost = along * slip;
        Subtract(ref onRamp, own.Own, other.Other, along);
        Subtract(ref onRider, own.Other, other.Own, along);
        return normal;
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static Wrench<T> Combine(in Wrench<T> own, in Wrench<T> other, in Wrench<T> ownAlong, in Wrench<T> otherAlong, T along)
    {
        Wrench<T> sum = own;
        ContactSums<T>.AddWrench(ref sum, other);
        Subtract(ref sum, ownAlong, otherAlong, along);
        return sum;
    }

    private static void Subtract(ref Wrench<T> sum, in Wrench<T> x, in Wrench<T> y, T factor)
    {
        sum.Fx = sum.Fx - (factor * (x.Fx + y.Fx));
        sum.Fy = sum.Fy - (factor * (x.Fy + y.Fy));
        sum.Fz = sum.Fz - (factor * (x.Fz + y.Fz));
        sum.Roll = sum.Roll - (factor * (x.Roll + y.Roll));
        sum.Pitch = sum.Pitch - (factor * (x.Pitch + y.Pitch));
        sum.Yaw = sum.Yaw - (factor * (x.Yaw + y.Yaw));
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Report(in BodyPose<T> a, in BodyPose<T> b, in Wrench<T> onA)
    {
        ForceX = (a.Cosine * onA.Fx) - (a.Sine * onA.Fy);
        ForceY = (a.Sine * onA.Fx) + (a.Cosine * onA.Fy);
        ForceZ = onA.Fz;
        T inverse = 1.0 / T.Max(NormalForce, DepthProfile<T>.Nothing);
        Turn(a, _sideA.Sums, out T ax, out T ay);
        Turn(b, _sideB.Sums, out T bx, out T by);
        T placeX = ((_sideA.Sums.Normal * a.X) + (_sideB.Sums.Normal * b.X)) + (ax + bx);
        T placeY = ((_sideA.Sums.Normal * a.Y) + (_sideB.Sums.Normal * b.Y)) + (ay + by);
        CentreX = T.IfLess(0.0, NormalForce, placeX * inverse, 0.5 * (a.X + b.X));
        CentreY = T.IfLess(0.0, NormalForce, placeY * inverse, 0.5 * (a.Y + b.Y));
    }

    private static void Turn(in BodyPose<T> pose, in ContactSums<T> sums, out T x, out T y)
    {
        x = (pose.Cosine * sums.NormalX) - (pose.Sine * sums.NormalY);
        y = (pose.Sine * sums.NormalX) + (pose.Cosine * sums.NormalY);
    }
}
