namespace PushSim.Contact;

/// <summary>Contact of two convex parts: <see cref="PartSide{T}"/> once with the faces of either, weighed together.</summary>
internal sealed class PartPair<T>
    where T : struct, IReal<T>
{
    private readonly PartSide<T> _a, _b;

    public PartPair(PartShape<T> a, PartShape<T> b) => (_a, _b) = (new(a, b), new(b, a));

    /// <summary>Forces of the two parts on each other; false, and no forces, where they do not overlap in any lane.</summary>
    /// <param name="meeting">The bodies' places and motion.</param>
    /// <param name="a">Pose of the first.</param>
    /// <param name="b">Pose of the second.</param>
    /// <param name="stiffness">k of edges against faces [N/m^2].</param>
    /// <param name="damping">lambda [s/m].</param>
    /// <param name="force">The forces.</param>
    public bool Evaluate(in Meeting<T> meeting, in BodyPose<T> a, in BodyPose<T> b, T stiffness, T damping, out PairForce<T> force)
    {
        T least = _a.LeastOverlap(meeting.OfA, 1e30);
        if (T.AllLess(least, EdgeProfile.Nothing<T>()))
        {
            force = default;
            return false;
        }

        least = _b.LeastOverlap(meeting.OfB, least);
        if (T.AllLess(least, EdgeProfile.Nothing<T>()))
        {
            force = default;
            return false;
        }

        T sum = _a.Weigh(least) + _b.Weigh(least);
        T scale = T.IfLess(least, EdgeProfile.Nothing<T>(), 0.0, stiffness / T.Max(sum, EdgeProfile.Nothing<T>()));
        _a.Act(meeting.OfA, scale, damping);
        _b.Act(meeting.OfB, scale, damping);
        PairForce<T>.Of(a, b, _a.Sums, _b.Sums, out force);
        return true;
    }
}
