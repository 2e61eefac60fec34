using System.Runtime.InteropServices;

namespace PushSim.Simulation;

/// <summary>One or two robots and what they touch as one system: explicit states of the robots, energy lost in contacts, then bristles of the
/// robots and of the contacts. The second robot computes in a floor frame turned by exactly half a turn, so that two equal
/// robots nose to nose do the same arithmetic and stay exactly level.</summary>
internal sealed class SceneSystem : IAdditiveSystem, ISegmented
{
    private readonly double _frictionDeflection;

    /// <param name="scenario">Scenario whose robots are in canonical order.</param>
    public SceneSystem(ScenarioSettings scenario)
    {
        Robots = SceneBuilder.Robots(scenario);
        Equations = new SceneEquations<R1>([.. Robots.Select(r => r.Equations)], SceneBuilder.Contacts<R1>(scenario));
        _frictionDeflection = scenario.Contact.FrictionDeflection;
        Breakpoints = [.. Robots.SelectMany(r => r.Breakpoints).Distinct().Order()];
    }

    /// <summary>The robots, the first one first.</summary>
    public IReadOnlyList<RobotSystem> Robots { get; }

    /// <summary>The right-hand side.</summary>
    public SceneEquations<R1> Equations { get; }

    /// <summary>What it must have in common with another to run beside it in lanes.</summary>
    public SceneShape Shape => field ??= Equations.Shape;

    /// <summary>Contacts that may come about.</summary>
    public IReadOnlyList<SceneContact<R1>> Contacts => Equations.Contacts;

    /// <summary>Rising times at which commands jump or kink [s].</summary>
    public double[] Breakpoints { get; }

    public int ExplicitCount => Equations.ExplicitCount;

    public int ImplicitCount => Equations.ImplicitCount;

    public int Count => ExplicitCount + ImplicitCount;

    /// <summary>Bound on the step where every robot may come to rest [s].</summary>
    public double LongestStep { get; private set; } = double.PositiveInfinity;

    /// <summary>Where a robot's explicit states begin.</summary>
    public int FirstExplicit(int robot) => Equations.FirstExplicit[robot];

    /// <summary>Energies stored in a state, which must just have been evaluated.</summary>
    public StoredEnergy Stored(ReadOnlySpan<double> y)
    {
        StoredEnergy sum = default;
        for (int k = 0; k < Robots.Count; k++)
        {
            sum += StoredEnergy.Of(Robots[k].Scenario, Robots[k].Equations, y.Slice(Equations.FirstExplicit[k], Robots[k].ExplicitCount), y[(ExplicitCount + Equations.FirstImplicit[k])..]);
        }

        return sum;
    }

    /// <summary>The ledger of a run up to a state, which must just have been evaluated.</summary>
    public EnergyLedger Ledger(ReadOnlySpan<double> y, StoredEnergy before)
    {
        double[] integrals = new double[LedgerIndex.Count];
        for (int k = 0; k < Robots.Count; k++)
        {
            ReadOnlySpan<double> own = y.Slice(Equations.FirstExplicit[k] + Robots[k].Layout.FirstLedger, LedgerIndex.Count);
            for (int i = 0; i < integrals.Length; i++)
            {
                integrals[i] += own[i];
            }
        }

        return EnergyLedger.Of(integrals, Equations.Loss < 0 ? null : y[Equations.Loss], Robots.Sum(r => r.Scenario.Robot.Chassis.Mass), before, Stored(y));
    }

    public IReadOnlyList<(int From, int To)> PredictedRanges => Equations.PredictedRanges;

    public IReadOnlyList<(int From, int To)> CurveRanges => Equations.CurveRanges;

    public double StepBound => Equations.StepBound().Value;

    public void Evaluate(double t, double g, Span<double> y, Span<double> dy) => Evaluate(t, g, y, y[ExplicitCount..], dy);

    public void Evaluate(double t, double g, Span<double> y, ReadOnlySpan<double> predicted, Span<double> dy) => Equations.Evaluate(
        t, g, MemoryMarshal.Cast<double, R1>(y), MemoryMarshal.Cast<double, R1>(predicted), MemoryMarshal.Cast<double, R1>(dy));

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
    public double[] InitialState()
    {
        double[] y = Gather(r => r.InitialState(), 0.0, 0.0);
        if (Robots.Count == 2)
        {
            // drivers have looked for a while
            Equations.Look(MemoryMarshal.Cast<double, R1>(y));
            for (int k = 0; k < Robots.Count; k++)
            {
                int first = Robots[k].Layout.Steering;
                (double sine, double cosine) = Math.SinCos(Robots[k].Start.Heading);
                for (int i = 0; first >= 0 && i < DriverEquations<R1>.SteeringStates - 1; i++)
                {
                    y[FirstExplicit(k) + first + i] = Robots[k].Equations.Driver.Seen(sine, cosine).Value;
                }
            }
        }

        return y;
    }

    /// <summary>Absolute tolerance of each component at a relative tolerance, each in its own unit; the contacts' loss is out of the norm.</summary>
    public double[] AbsoluteTolerances(double relative) =>
        Gather(r => r.AbsoluteTolerances(relative), double.PositiveInfinity, relative * RobotSystem.ShareOfTypical * _frictionDeflection);

    private double[] Gather(Func<RobotSystem, double[]> of, double ledger, double bristle)
    {
        double[] all = new double[Count];
        Array.Fill(all, bristle, ExplicitCount, ImplicitCount);
        if (Equations.Loss >= 0)
        {
            all[Equations.Loss] = ledger;
        }

        for (int k = 0; k < Robots.Count; k++)
        {
            double[] own = of(Robots[k]);
            int n = Robots[k].ExplicitCount;
            own.AsSpan(0, n).CopyTo(all.AsSpan(Equations.FirstExplicit[k]));
            own.AsSpan(n).CopyTo(all.AsSpan(ExplicitCount + Equations.FirstImplicit[k]));
        }

        return all;
    }
}
