using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PushSim.Contact;

/// <summary>Half of a contact: one body's faces ("own") against the outline of the other, all in the own body's axes. The other
/// half is the same code with the bodies exchanged, and the two are added: that makes the contact symmetric to the bit.
/// <code>
///   depth of the other's point P under face i:   D = n.(m_i - P) + z_p n.(theta, -phi) - z_q n.(theta', -phi')'
///   overlap_i = greatest D of a corner,   weight_i = max(0, 1 - (overlap_i / least overlap - 1) / 0.25) / sum
///   N = weight k  integral of D over the clipped edge  max(0, 1 + d depth')
/// </code>
/// z_p and z_q are the heights of the acting point in either body: depth follows the tilted faces, and depth' is the
/// closing speed of the two bodies' points at the contact. On a ramp depth is counted from where the slope reaches the
/// rider's lower edge: that line lies g = (lower edge - tip) cot beta inward of the tip.</summary>
internal sealed partial class ContactSide<T>
    where T : struct, IReal<T>
{
    /// <summary>Most corners of an outline [1].</summary>
    public const int Most = 8;

    /// <summary>Share of the least overlap above it within which other faces act too [1].</summary>
    private const double Band = 0.25;

    /// <summary>1 / height over which getting under, or passing over, blends [1/m].</summary>
    private const double InverseBlend = 1.0 / 0.001;

    /// <summary>Overlap of a face that cannot act [m]; far more than rounding in a depth [m].</summary>
    internal const double Deep = 1e30;
    private const double Rounding = 1e-6;

    private readonly ContactShape<T> _own, _other;

    // the face that was in front last time, to be tried first
    private int _likely;

    /// <summary>Stiffness per length of overlap [N/m^2], damping [s/m].</summary>
    internal T Stiffness, Damping;
    private readonly bool _ramps;

    // the other's corners in own axes; floor height of either body's level plane there, above its corner heights
    private readonly T[] _cornerX = Aligned.Array<T>(Most), _cornerY = Aligned.Array<T>(Most), _ownTilt = Aligned.Array<T>(Most), _otherTilt = Aligned.Array<T>(Most);

    // of each face of the other: floor heights of its edges and of the body's centre plane at its middle
    private readonly T[] _lower = Aligned.Array<T>(Most), _upper = Aligned.Array<T>(Most), _level = Aligned.Array<T>(Most);

    // of the face at hand, per corner of the other: depth below it and place along it
    private readonly T[] _depth = Aligned.Array<T>(Most + 1), _along = Aligned.Array<T>(Most);

    // per face and edge: depth added by tilt, floor height of the acting point; per own face: that of the centre plane there
    private readonly T[] _shift = Aligned.Array<T>(Most * Most), _height = Aligned.Array<T>(Most * Most), _ownLevel = Aligned.Array<T>(Most);
    private readonly T[] _overlap = Aligned.Array<T>(Most), _weight = Aligned.Array<T>(Most);

    private readonly BodyPose<T>[] _poses = Aligned.Array<BodyPose<T>>(2);
    private readonly T[] _numbers = Aligned.Array<T>(11);

    private ref BodyPose<T> Pose => ref _poses[0];

    private ref BodyPose<T> OtherPose => ref _poses[1];

    // the other's centre of mass and heading in own axes, its tilt (theta, -phi) turned into them
    private ref T OtherX => ref Number(0);

    private ref T OtherY => ref Number(1);

    private ref T Cosine => ref Number(2);

    private ref T Sine => ref Number(3);

    private ref T LeanX => ref Number(4);

    private ref T LeanY => ref Number(5);

    // the face at hand
    private ref T NormalX => ref Number(6);

    private ref T NormalY => ref Number(7);

    private ref T MiddleX => ref Number(8);

    private ref T MiddleY => ref Number(9);

    private ref T OwnLean => ref Number(10);

    private ref T Number(int i) => ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_numbers), i);

    /// <summary>What the last <see cref="Act"/> found.</summary>
    public ref ContactSums<T> Sums => ref _sums[0];

    // the sum; further terms of an edge pair, of an edge's partner, of a face pair, of a face's partner
    private readonly ContactSums<T>[] _sums = Aligned.Array<ContactSums<T>>(5);

    public ContactSide(ContactShape<T> own, ContactShape<T> other, ContactSettings settings)
    {
        _own = own;
        _other = other;
        _ramps = own.HasRamp || other.HasRamp;
        Stiffness = settings.Stiffness;
        Damping = settings.Damping;
    }

    /// <summary>The body whose faces these are.</summary>
    internal ContactShape<T> Own => _own;

    /// <summary>Sets the poses and finds the least overlap of the own faces [m]; stops where there is none, in any lane.</summary>
    /// <param name="ownPose">The own body's pose.</param>
    /// <param name="poseOfOther">The other's.</param>
    /// <param name="slack">By how much tilt may change a depth at most [m].</param>
    /// <param name="least">Least overlap found before [m].</param>
    /// <returns>The lesser of both [m].</returns>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public T LeastOverlap(in BodyPose<T> ownPose, in BodyPose<T> poseOfOther, T slack, T least)
    {
        Pose = ownPose;
        OtherPose = poseOfOther;
        Place();
        PlaceCorners();
        PlaceFaces();
        T depth = (_other.Inner - _other.LongestRamp) - slack;
        Try(_likely, depth, ref least);
        int first = _likely;
        for (int i = 0; i < _own.Count && !T.AllLess(least, DepthProfile<T>.Nothing); i++)
        {
            if (i != first)
            {
                Try(i, depth, ref least);
            }
        }

        return least;
    }

    // A face that lies certainly deeper than those that can act is left out: its weight would be exactly zero, and the least
    // overlap does not hang on the order. So no bit hangs on what is left out, nor on which face is tried first.
    private void Try(int i, T depth, ref T least)
    {
        T bound = depth + (_own.Across[i] - ((_own.NormalX[i] * OtherX) + (_own.NormalY[i] * OtherY)));
        if (T.AllLess(T.Max(0.0, (1.0 + (2.0 * Band)) * least) + Rounding, bound))
        {
            _overlap[i] = Deep;
            return;
        }

        T deepest = FaceOverlap(i);
        _overlap[i] = deepest;
        if (T.AllLess(deepest, least))
        {
            _likely = i;
        }

        least = T.Min(least, deepest);
    }

    /// <summary>Weighs the faces, not yet divided by the sum over both sides, which is returned [m].</summary>
    /// <param name="least">Least overlap of both sides [m].</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public T Weigh(T least)
    {
        T limit = (1.0 + Band) * least;
        T sum = 0.0;
        foreach ((int first, int second) in _own.Partners)
        {
            T pair = T.Max(0.0, limit - _overlap[first]);
            _weight[first] = pair;
            if (second >= 0)
            {
                _weight[second] = T.Max(0.0, limit - _overlap[second]);
                pair = pair + _weight[second];
            }

            sum = sum + pair;
        }

        return sum;
    }

    private void Place()
    {
        T x = OtherPose.X - Pose.X;
        T y = OtherPose.Y - Pose.Y;
        OtherX = (Pose.Cosine * x) + (Pose.Sine * y);
        OtherY = (Pose.Cosine * y) - (Pose.Sine * x);
        Cosine = (Pose.Cosine * OtherPose.Cosine) + (Pose.Sine * OtherPose.Sine);
        Sine = (Pose.Cosine * OtherPose.Sine) - (Pose.Sine * OtherPose.Cosine);
        LeanX = (Cosine * OtherPose.Pitch) + (Sine * OtherPose.Roll);
        LeanY = (Sine * OtherPose.Pitch) - (Cosine * OtherPose.Roll);
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void PlaceCorners()
    {
        for (int c = 0; c < _other.Count; c++)
        {
            T x = OtherX + ((Cosine * _other.X[c]) - (Sine * _other.Y[c]));
            T y = OtherY + ((Sine * _other.X[c]) + (Cosine * _other.Y[c]));
            _cornerX[c] = x;
            _cornerY[c] = y;
            _ownTilt[c] = Pose.Heave - (x * Pose.Pitch) + (y * Pose.Roll);
            _otherTilt[c] = OtherPose.Heave - (_other.X[c] * OtherPose.Pitch) + (_other.Y[c] * OtherPose.Roll);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void PlaceFaces()
    {
        for (int j = 0; j < _other.Count; j++)
        {
            T tilt = 0.5 * (_otherTilt[j] + _otherTilt[Next(j)]);
            _lower[j] = _other.Lower[j] + tilt;
            _upper[j] = _other.Upper[j] + tilt;
            _level[j] = _other.CentreHeight + tilt;
        }
    }

    private int Next(int corner) => corner + 1 < _other.Count ? corner + 1 : 0;

    private void Take(int i)
    {
        NormalX = _own.NormalX[i];
        NormalY = _own.NormalY[i];
        MiddleX = _own.MiddleX[i];
        MiddleY = _own.MiddleY[i];
        OwnLean = (NormalX * Pose.Pitch) - (NormalY * Pose.Roll);
    }

    // greatest depth of the other's corners below face i
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private T FaceOverlap(int i)
    {
        Take(i);
        T otherLean = (NormalX * LeanX) + (NormalY * LeanY);
        T tilt = Pose.Heave - (MiddleX * Pose.Pitch) + (MiddleY * Pose.Roll);
        T low = _own.Lower[i] + tilt;
        T high = _own.Upper[i] + tilt;
        T centre = _own.CentreHeight + tilt;
        int n = _other.Count;
        Span<T> deep = _depth.AsSpan(0, n + 1);
        ReadOnlySpan<T> xs = _cornerX.AsSpan(0, n);
        ReadOnlySpan<T> ys = _cornerY.AsSpan(0, n);
        for (int c = 0; c < xs.Length; c++)
        {
            deep[c] = (NormalX * (MiddleX - xs[c])) + (NormalY * (MiddleY - ys[c]));
        }

        deep[n] = deep[0];
        ReadOnlySpan<T> lowers = _lower.AsSpan(0, n);
        ReadOnlySpan<T> uppers = _upper.AsSpan(0, n);
        ReadOnlySpan<T> levels = _level.AsSpan(0, n);
        Span<T> heights = _height.AsSpan(i * Most, n);
        Span<T> shifts = _shift.AsSpan(i * Most, n);
        T deepest = -1e30;
        for (int j = 0; j < lowers.Length; j++)
        {
            T bottom = T.Max(low, lowers[j]);
            T middle = 0.5 * (bottom + T.Min(high, uppers[j]));
            bool isRamp = _ramps && (_own.IsRamp[i] || _other.IsRamp[j]);
            if (isRamp)
            {
                // on a slope the point that acts is the rider's lower edge
                Under(i, j, lowers[j] - low, out T ownUnder, out T otherUnder);
                middle = middle + ((ownUnder + otherUnder) * (bottom - middle));
            }

            T lean = ((middle - centre) * OwnLean) - ((middle - levels[j]) * otherLean);
            heights[j] = middle;
            shifts[j] = lean;
            deepest = T.Max(deepest, isRamp ? RampOverlap(i, j, lean) : T.Max(deep[j], deep[j + 1]) + lean);
        }

        _ownLevel[i] = centre;
        return deepest;
    }
}
