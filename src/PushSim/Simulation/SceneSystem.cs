using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using PushSim.Contact;
using PushSim.Numerics;

namespace PushSim.Simulation;

/// <summary>
/// One or two robots and what they touch as one system: explicit states of the robots, energy lost in contacts, then bristles of the
/// robots and of the contacts. The second robot computes in a floor frame turned by exactly half a turn, so that two equal
/// robots nose to nose do the same arithmetic and stay exactly level.
/// </summary>
internal sealed class SceneSystem : IAdditiveSystem, ISegmented
{
    private readonly int[] _firstExplicit;
    private readonly int[] _firstImplicit;
    private readonly BodyPose<R1>[] _poses;
    private readonly SceneContact[] _contacts;
    private readonly int _ledger;
    private readonly double _frictionDeflection;

    /// <param name="scenario">Scenario whose robots are in canonical order.</param>
    public SceneSystem(ScenarioSettings scenario)
    {
        Robots = SceneBuilder.Robots(scenario);
        _contacts = SceneBuilder.Contacts(scenario);
        _frictionDeflection = scenario.Contact.FrictionDeflection;
        _poses = new BodyPose<R1>[Robots.Count];
        _firstExplicit = new int[Robots.Count];
        _firstImplicit = new int[Robots.Count];
        int next = 0;
        for (int k = 0; k < Robots.Count; k++)
        {
            _firstExplicit[k] = next;
            next += Robots[k].ExplicitCount;
        }

        _ledger = _contacts.Length > 0 ? next++ : -1;
        ExplicitCount = next;
        next = 0;
        for (int k = 0; k < Robots.Count; k++)
        {
            _firstImplicit[k] = next;
            next += Robots[k].ImplicitCount;
        }

        foreach (SceneContact contact in _contacts)
        {
            contact.FirstBristle = next;
            next += contact.Pair.BristleCount;
        }

        ImplicitCount = next;
        Breakpoints = [.. Robots.SelectMany(r => r.Breakpoints).Distinct().Order()];
    }

    /// <summary>The robots, the first one first.</summary>
    public IReadOnlyList<RobotSystem> Robots { get; }

    /// <summary>Contacts that may come about.</summary>
    public IReadOnlyList<SceneContact> Contacts => _contacts;

    /// <summary>Rising times at which commands jump or kink [s].</summary>
    public double[] Breakpoints { get; }

    public int ExplicitCount { get; }

    public int ImplicitCount { get; }

    public int Count => ExplicitCount + ImplicitCount;

    /// <summary>Bound on the step where every robot may come to rest [s].</summary>
    public double LongestStep { get; private set; } = double.PositiveInfinity;

    /// <summary>Where a robot's explicit states begin.</summary>
    public int FirstExplicit(int robot) => _firstExplicit[robot];

    /// <summary>Energies stored in a state, which must just have been evaluated.</summary>
    public StoredEnergy Stored(ReadOnlySpan<double> y)
    {
        StoredEnergy sum = default;
        for (int k = 0; k < Robots.Count; k++)
        {
            sum += StoredEnergy.Of(Robots[k].Scenario, Robots[k].Equations, y.Slice(_firstExplicit[k], Robots[k].ExplicitCount));
        }

        return sum;
    }

    /// <summary>The ledger of a run up to a state, which must just have been evaluated.</summary>
    public EnergyLedger Ledger(ReadOnlySpan<double> y, StoredEnergy before)
    {
        double[] integrals = new double[LedgerIndex.Count];
        for (int k = 0; k < Robots.Count; k++)
        {
            ReadOnlySpan<double> own = y.Slice(_firstExplicit[k] + Robots[k].Layout.FirstLedger, LedgerIndex.Count);
            for (int i = 0; i < integrals.Length; i++)
            {
                integrals[i] += own[i];
            }
        }

        return EnergyLedger.Of(integrals, _ledger < 0 ? null : y[_ledger], before, Stored(y));
    }

    public void Evaluate(double t, double g, Span<double> y, Span<double> dy) =>
        Evaluate(t, g, MemoryMarshal.Cast<double, R1>(y), MemoryMarshal.Cast<double, R1>(dy));

    public void EnterSegment(int index)
    {
        double t = index == 0 ? 0.0 : Breakpoints[index - 1];
        LongestStep = double.PositiveInfinity;
        foreach (RobotSystem robot in Robots)
        {
            robot.EnterAt(t);
            LongestStep = Math.Min(LongestStep, robot.LongestStep);
        }
    }

    /// <summary>State at the start.</summary>
    public double[] InitialState() => Gather(r => r.InitialState(), 0.0, 0.0);

    /// <summary>Absolute tolerance of each component at a relative tolerance, each in its own unit; the contacts' loss is out of the norm.</summary>
    public double[] AbsoluteTolerances(double relative) =>
        Gather(r => r.AbsoluteTolerances(relative), double.PositiveInfinity, relative * RobotSystem.ShareOfTypical * _frictionDeflection);

    private double[] Gather(Func<RobotSystem, double[]> of, double ledger, double bristle)
    {
        double[] all = new double[Count];
        Array.Fill(all, bristle, ExplicitCount, ImplicitCount);
        if (_ledger >= 0)
        {
            all[_ledger] = ledger;
        }

        for (int k = 0; k < Robots.Count; k++)
        {
            double[] own = of(Robots[k]);
            int n = Robots[k].ExplicitCount;
            own.AsSpan(0, n).CopyTo(all.AsSpan(_firstExplicit[k]));
            own.AsSpan(n).CopyTo(all.AsSpan(ExplicitCount + _firstImplicit[k]));
        }

        return all;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Evaluate(R1 t, R1 g, Span<R1> y, Span<R1> dy)
    {
        Span<R1> z = y[ExplicitCount..];
        Span<R1> dz = dy[ExplicitCount..];
        for (int k = 0; k < Robots.Count; k++)
        {
            RobotEquations<R1> eq = Robots[k].Equations;
            int e = _firstExplicit[k];
            int i = _firstImplicit[k];
            eq.Forces(
                t, g, y.Slice(e, Robots[k].ExplicitCount), z.Slice(i, Robots[k].ImplicitCount),
                dy.Slice(e, Robots[k].ExplicitCount), dz.Slice(i, Robots[k].ImplicitCount));
        }

        if (_contacts.Length > 0)
        {
            Touch(g, y, z, dy, dz);
        }

        for (int k = 0; k < Robots.Count; k++)
        {
            int e = _firstExplicit[k];
            Robots[k].Equations.Finish(y.Slice(e, Robots[k].ExplicitCount), dy.Slice(e, Robots[k].ExplicitCount));
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Touch(R1 g, Span<R1> y, Span<R1> z, Span<R1> dy, Span<R1> dz)
    {
        for (int k = 0; k < Robots.Count; k++)
        {
            SetPose(ref _poses[k], Robots[k].Equations, y[_firstExplicit[k]..], k == 0 ? 1.0 : -1.0);
        }

        R1 loss = 0.0;
        foreach (SceneContact contact in _contacts)
        {
            int n = contact.Pair.BristleCount;
            Span<R1> bristles = z.Slice(contact.FirstBristle, n);
            Span<R1> rates = dz.Slice(contact.FirstBristle, n);
            ref Chassis.Wrench<R1> first = ref Robots[contact.First].Equations.Wrench;
            if (contact.IsWall)
            {
                Chassis.Wrench<R1> onWall = default;
                contact.Pair.Evaluate(_poses[contact.First], contact.WallPose, g, bristles, rates, ref first, ref onWall);
            }
            else
            {
                contact.Pair.Evaluate(_poses[contact.First], _poses[contact.Second], g, bristles, rates, ref first, ref Robots[contact.Second].Equations.Wrench);
            }

            loss = loss + contact.Pair.LostPower;
        }

        dy[_ledger] = loss;
    }

    private static void SetPose(ref BodyPose<R1> pose, RobotEquations<R1> eq, Span<R1> y, R1 frame)
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

/// <summary>A contact that may come about in a scene.</summary>
/// <param name="First">Index of the one robot.</param>
/// <param name="Second">Index of the other robot; -1 for a wall.</param>
/// <param name="Pair">The contact's equations.</param>
internal sealed record SceneContact(int First, int Second, ContactPair<R1> Pair)
{
    /// <summary>Whether the other body is a wall.</summary>
    public bool IsWall => Second < 0;

    /// <summary>Where the wall stands.</summary>
    public BodyPose<R1> WallPose { get; init; }

    /// <summary>Where the contact's bristles begin among the implicit states.</summary>
    public int FirstBristle { get; set; }
}
