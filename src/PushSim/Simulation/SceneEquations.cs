using System.Runtime.CompilerServices;
using PushSim.Contact;

namespace PushSim.Simulation;

/// <summary>The right-hand side of a scene over a number type: the robots' equations and the contacts between them and the walls.
/// Order of the states as in <see cref="SceneSystem"/>.</summary>
internal sealed class SceneEquations<T> : INumbers<T>
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
            ImplicitCount += ContactPair<T>.BristleCount;
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

    /// <summary>Everything of it that is no number.</summary>
    public SceneShape Shape => new(
        new ShapeList<RobotShape>([.. Robots.Select(r => r.Shape)]),
        new ShapeList<ContactShape>([.. Contacts.Select(c => new ContactShape(c.First, c.Second, c.Pair.Shape))]));

    public void Show(NumberWalk<T> walk)
    {
        foreach (RobotEquations<T> robot in Robots)
        {
            robot.Show(walk);
        }

        foreach (SceneContact<T> contact in Contacts)
        {
            contact.Pair.Show(walk);
            walk.Take(ref contact.WallPose);
        }
    }

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

    [MethodImpl(Kernel.Whole)]
    public void Evaluate(T t, T g, Span<T> y, ReadOnlySpan<T> predicted, Span<T> dy)
    {
        Span<T> z = y[ExplicitCount..];
        Span<T> dz = dy[ExplicitCount..];
        if (Robots.Length == 2)
        {
            Look(y);
        }

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

    [MethodImpl(Kernel.Part)]
    private void Touch(T g, Span<T> y, Span<T> z, Span<T> dy, Span<T> dz)
    {
        for (int k = 0; k < Robots.Length; k++)
        {
            SetPose(ref _poses[k], Robots[k], y[FirstExplicit[k]..], k == 0 ? 1.0 : -1.0);
        }

        T loss = 0.0;
        foreach (SceneContact<T> contact in Contacts)
        {
            int n = ContactPair<T>.BristleCount;
            Span<T> bristles = z.Slice(contact.FirstBristle, n);
            Span<T> rates = dz.Slice(contact.FirstBristle, n);
            ref readonly BodyPose<T> other = ref contact.WallPose;
            if (!contact.IsWall)
            {
                other = ref _poses[contact.Second];
            }

            Turn(contact.Pair.WheelsA, contact.First, y);
            if (!contact.IsWall)
            {
                Turn(contact.Pair.WheelsB, contact.Second, y);
            }

            if (contact.Pair.Evaluate(_poses[contact.First], other, g, bristles, rates))
            {
                AddTorque(contact.Pair.WheelsA, contact.First, dy);
                AddForce(Robots[contact.First], contact.First, contact.Pair, contact.Pair.OnA, 1.0);
                if (!contact.IsWall)
                {
                    AddForce(Robots[contact.Second], contact.Second, contact.Pair, contact.Pair.OnB, -1.0);
                    AddTorque(contact.Pair.WheelsB, contact.Second, dy);
                }
            }

            loss = loss + contact.Pair.LostPower;
        }

        dy[Loss] = loss;
    }

    /// <summary>Tells each driver where the other robot is: the frames are half a turn apart, so both see the same numbers.</summary>
    public void Look(ReadOnlySpan<T> y)
    {
        (DriverEquations<T> a, DriverEquations<T> b) = (Robots[0].Driver, Robots[1].Driver);
        a.SightX = b.SightX = -(y[FirstExplicit[0] + StateLayout.X] + y[FirstExplicit[1] + StateLayout.X]);
        a.SightY = b.SightY = -(y[FirstExplicit[0] + StateLayout.Y] + y[FirstExplicit[1] + StateLayout.Y]);
    }

    private void Turn(WheelRims<T> rims, int index, ReadOnlySpan<T> y)
    {
        RobotEquations<T> robot = Robots[index];
        for (int i = 0; i < rims.Count; i++)
        {
            int drive = robot.Kinds[i].Shape.Drive;
            rims.Spin[i] = drive < 0 ? 0.0 : robot.Wheels[i].DriveRatio * y[FirstExplicit[index] + robot.Layout.FirstDrive + drive];
        }
    }

    private void AddTorque(WheelRims<T> rims, int index, Span<T> dy)
    {
        RobotEquations<T> robot = Robots[index];
        for (int i = 0; i < rims.Count; i++)
        {
            int drive = robot.Kinds[i].Shape.Drive;
            if (drive >= 0)
            {
                ref T rate = ref dy[FirstExplicit[index] + robot.Layout.FirstDrive + drive];
                rate = rate + ((robot.Wheels[i].DriveRatio * rims.Torque[i]) * robot.Drives[drive].InverseInertia);
            }
        }
    }

    // A contact's force in the robot's heading frame; sign 1 for the contact's first body.
    [MethodImpl(Kernel.Part)]
    private static void AddForce(RobotEquations<T> robot, int index, ContactPair<T> pair, in Axes<T> moment, T sign)
    {
        T frame = index == 0 ? 1.0 : -1.0;
        T sine = frame * robot.Sine;
        T cosine = frame * robot.Cosine;
        T fx = sign * pair.ForceX;
        T fy = sign * pair.ForceY;
        ref Chassis.Wrench<T> wrench = ref robot.Wrench;
        wrench.Fx = wrench.Fx + ((cosine * fx) + (sine * fy));
        wrench.Fy = wrench.Fy + ((cosine * fy) - (sine * fx));
        wrench.Fz = wrench.Fz + (sign * pair.ForceZ);
        wrench.Roll = wrench.Roll + ((cosine * moment.X) + (sine * moment.Y));
        wrench.Pitch = wrench.Pitch + ((cosine * moment.Y) - (sine * moment.X));
        wrench.Yaw = wrench.Yaw + moment.Z;
    }

    [MethodImpl(Kernel.Part)]
    private static void SetPose(ref BodyPose<T> pose, RobotEquations<T> eq, Span<T> y, T frame)
    {
        T sine = frame * eq.Sine;
        T cosine = frame * eq.Cosine;
        ref Chassis.Attitude<T> a = ref eq.Attitude;
        ref Chassis.BodyMotion<T> m = ref eq.Motion;
        pose.X = frame * y[StateLayout.X];
        pose.Y = frame * y[StateLayout.Y];
        pose.Z = eq.Body.Height + y[StateLayout.Heave];
        pose.XX = (cosine * a.XX) - (sine * a.YX);
        pose.XY = (cosine * a.XY) - (sine * a.YY);
        pose.XZ = (cosine * a.XZ) - (sine * a.YZ);
        pose.YX = (sine * a.XX) + (cosine * a.YX);
        pose.YY = (sine * a.XY) + (cosine * a.YY);
        pose.YZ = (sine * a.XZ) + (cosine * a.YZ);
        pose.ZX = a.ZX;
        pose.ZY = a.ZY;
        pose.ZZ = a.ZZ;
        pose.VX = (cosine * m.U) - (sine * m.V);
        pose.VY = (sine * m.U) + (cosine * m.V);
        pose.VZ = m.ZDot;
        pose.WX = (cosine * m.PhiDot) - (sine * m.ThetaDot);
        pose.WY = (sine * m.PhiDot) + (cosine * m.ThetaDot);
        pose.WZ = m.R;
    }
}
