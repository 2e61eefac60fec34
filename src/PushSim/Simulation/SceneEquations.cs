using System.Runtime.CompilerServices;
using PushSim.Contact;

namespace PushSim.Simulation;

/// <summary>The right-hand side of a scene over a number type: the robots' equations and the contacts between them and the walls.
/// Order of the states as in <see cref="SceneSystem"/>.</summary>
internal sealed class SceneEquations<T>
    where T : struct, IReal<T>
{
    private readonly BodyPose<T>[] _poses;
    private readonly int[] _explicitCounts;
    private readonly int[] _implicitCounts;

    public SceneEquations(RobotEquations<T>[] robots, SceneContact<T>[] contacts)
    {
        Robots = robots;
        Contacts = contacts;
        _poses = Aligned.Array<BodyPose<T>>(robots.Length);
        _explicitCounts = [.. robots.Select(r => r.Layout.ExplicitCount)];
        _implicitCounts = [.. robots.Select(r => r.Layout.Count - r.Layout.ExplicitCount)];
        FirstExplicit = new int[robots.Length];
        FirstImplicit = new int[robots.Length];
        for (int k = 0; k < robots.Length; k++)
        {
            FirstExplicit[k] = ExplicitCount;
            ExplicitCount += _explicitCounts[k];
            FirstImplicit[k] = ImplicitCount;
            ImplicitCount += _implicitCounts[k];
        }

        Loss = contacts.Length > 0 ? ExplicitCount++ : -1;
        foreach (SceneContact<T> contact in contacts)
        {
            contact.FirstBristle = ImplicitCount;
            ImplicitCount += contact.Pair.BristleCount;
        }
    }

    public RobotEquations<T>[] Robots { get; }

    public SceneContact<T>[] Contacts { get; }

    public int ExplicitCount { get; }

    public int ImplicitCount { get; }

    /// <summary>Where each robot's explicit states begin.</summary>
    public int[] FirstExplicit { get; }

    /// <summary>Where each robot's implicit states begin among the implicit ones.</summary>
    public int[] FirstImplicit { get; }

    /// <summary>Index of the energy lost in contacts; -1 without contacts.</summary>
    public int Loss { get; }

    /// <summary>The treads' velocities of each robot; see <see cref="ILaneSystem{T}"/>.</summary>
    public IReadOnlyList<(int From, int To)> PredictedRanges => [.. Robots.Select((r, k) => Range(k, r.Layout.Tread(0), r.Layout.Bristle(0)))];

    /// <summary>The tyres' deflections of each robot; see <see cref="IAdditiveSystem"/>.</summary>
    public IReadOnlyList<(int From, int To)> CurveRanges => [.. Robots.Select((r, k) => Range(k, r.Layout.Deflection(0), r.Layout.Tread(0)))];

    /// <summary>Longest next step after a plain evaluation [s].</summary>
    public T StepBound()
    {
        T least = double.PositiveInfinity;
        foreach (RobotEquations<T> robot in Robots)
        {
            least = T.Min(least, robot.StepBound());
        }

        return least;
    }

    private (int From, int To) Range(int robot, int from, int to)
    {
        int before = FirstImplicit[robot] - Robots[robot].Layout.ExplicitCount;
        return (before + from, before + to);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Evaluate(T t, T g, Span<T> y, ReadOnlySpan<T> predicted, Span<T> dy)
    {
        Span<T> z = y[ExplicitCount..];
        Span<T> dz = dy[ExplicitCount..];
        for (int k = 0; k < Robots.Length; k++)
        {
            int e = FirstExplicit[k];
            int i = FirstImplicit[k];
            Robots[k].Forces(
                t, g, y.Slice(e, _explicitCounts[k]), z.Slice(i, _implicitCounts[k]), predicted.Slice(i, _implicitCounts[k]),
                dy.Slice(e, _explicitCounts[k]), dz.Slice(i, _implicitCounts[k]));
        }

        if (Contacts.Length > 0)
        {
            Touch(g, y, z, dy, dz);
        }

        for (int k = 0; k < Robots.Length; k++)
        {
            int e = FirstExplicit[k];
            Robots[k].Finish(y.Slice(e, _explicitCounts[k]), dy.Slice(e, _explicitCounts[k]));
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Touch(T g, Span<T> y, Span<T> z, Span<T> dy, Span<T> dz)
    {
        for (int k = 0; k < Robots.Length; k++)
        {
            SetPose(ref _poses[k], Robots[k], y[FirstExplicit[k]..], k == 0 ? 1.0 : -1.0);
        }

        T loss = 0.0;
        foreach (SceneContact<T> contact in Contacts)
        {
            int n = contact.Pair.BristleCount;
            Span<T> bristles = z.Slice(contact.FirstBristle, n);
            Span<T> rates = dz.Slice(contact.FirstBristle, n);
            ref Chassis.Wrench<T> first = ref Robots[contact.First].Wrench;
            if (contact.IsWall)
            {
                Chassis.Wrench<T> onWall = default;
                contact.Pair.Evaluate(_poses[contact.First], contact.WallPose, g, bristles, rates, ref first, ref onWall);
            }
            else
            {
                contact.Pair.Evaluate(_poses[contact.First], _poses[contact.Second], g, bristles, rates, ref first, ref Robots[contact.Second].Wrench);
            }

            loss = loss + contact.Pair.LostPower;
        }

        dy[Loss] = loss;
    }

    private static void SetPose(ref BodyPose<T> pose, RobotEquations<T> eq, Span<T> y, T frame)
    {
        pose.X = frame * y[StateLayout.X];
        pose.Y = frame * y[StateLayout.Y];
        pose.Sine = frame * eq.Sine;
        pose.Cosine = frame * eq.Cosine;
        pose.Heave = y[StateLayout.Heave];
        pose.Pitch = y[StateLayout.Pitch];
        pose.Roll = y[StateLayout.Roll];
        pose.Motion = eq.Motion;
    }
}
