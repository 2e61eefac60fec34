using PushSim.Tyres;

namespace PushSim.Tests.Tyres;

/// <summary>Stick-slip of a block on a pulled spring: place of the block over time and the greatest values.</summary>
/// <param name="X">Place of the block [m] at a time [s].</param>
/// <param name="PeakSpringForce">[N].</param>
/// <param name="TopSpeed">Of the block [m/s].</param>
internal sealed record StickSlip(Func<double, double> X, double PeakSpringForce, double TopSpeed);

/// <summary>Published friction experiments, run with the engine's bristle law; the tread ring is the block, the tyre body its spring.</summary>
internal static class FrictionExperiments
{
    /// <summary>Bristle damping of <see cref="LuGre"/> [N s/m].</summary>
    public static readonly double Sigma1 = Math.Sqrt(1e5);

    private static readonly Lazy<StickSlip> s_stickSlip = new(RunStickSlip);

    /// <summary>1 kg on 2 N/m, pulled at 0.1 m/s for 25 s (Fig. 6 of the paper of <see cref="LuGre"/>).</summary>
    public static StickSlip StickSlip => s_stickSlip.Value;

    // Canudas de Wit, Olsson, Astrom, Lischinsky, IEEE TAC 40(3), 1995, Table I: sigma0 1e5 N/m, sigma1 sqrt(1e5) N s/m,
    // sigma2 0.4 N s/m, Fc 1 N, Fs 1.5 N, vs 0.001 m/s (read second-hand)
    public static TyreSettings LuGre(double spring) => new()
    {
        Name = "block", StaticFriction = 1.5, KineticFriction = 1.0, SlipSpeed = 0.001, BreakawayDeflection = 1.5e-5,
        ViscousFriction = 0.4, PlainFriction = true, RollingRenewal = 0.0, BodyStiffness = spring, BodyDamping = 0.0,
        TreadMass = 1.0, VerticalStiffness = 1.0,
    };

    /// <summary>Place [m] over time [s] under a force ramp of 0.1425 N/s to 95 % of the static friction, then held (Fig. 2).</summary>
    public static Func<double, double> Presliding()
    {
        RingBlock block = new(LuGre(1.0), Sigma1) { RimSpeed = t => (t < 10.0 ? 0.1425 : 0.0, 0.0) };
        List<(double T, double[] Y)> run = RingBlock.Run(block, new double[6], 15.0, 0.01, 1e-10);
        return t => run[(int)Math.Round(t / 0.01)].Y[0] + (0.1425 * Math.Min(t, 10.0));
    }

    /// <summary>Largest friction [N] before gross slip under a force ramp [N/s] (Fig. 4).</summary>
    public static double Breakaway(double rate)
    {
        RingBlock block = new(LuGre(1.0), Sigma1) { RimSpeed = _ => (rate, 0.0) };
        List<(double T, double[] Y)> run = RingBlock.Run(block, new double[6], 1.6 / rate, 0.0005 / rate, 1e-9);
        double largest = 0.0;
        foreach ((double t, double[] y) in run.TakeWhile(s => s.Y[2] < 0.05))
        {
            largest = Math.Max(largest, -block.Friction(y, t));
        }

        return largest;
    }

    /// <summary>Place [m] over time [s] of 1 kg on 100 N/m with 1 N of Coulomb friction, let go at 0.2 m.</summary>
    public static Func<double, double> CoulombSpring()
    {
        TyreSettings tyre = LuGre(100.0) with { StaticFriction = 1.0, KineticFriction = 1.0, BreakawayDeflection = 1e-7, ViscousFriction = 0.0 };
        RingBlock block = new(tyre) { RimSpeed = _ => (0.0, 0.0) };
        List<(double T, double[] Y)> run = RingBlock.Run(block, [0.2, 0, 0, 0, 0, 0], 2.0, 0.0002, 1e-9);
        return t => run[(int)Math.Round(t / 0.0002)].Y[0];
    }

    /// <summary>Period [s] and top speed [m/s] of stick-slip with bristles so stiff that they do not count.</summary>
    public static (double Period, double TopSpeed) IdealStickSlip()
    {
        TyreSettings tyre = LuGre(2.0) with { ViscousFriction = 0.0, SlipSpeed = 1e-4, BreakawayDeflection = 1.5e-7 };
        RingBlock block = new(tyre, 10.0 * Sigma1) { RimSpeed = _ => (0.1, 0.0) };
        List<(double T, double[] Y)> run = RingBlock.Run(block, new double[6], 24.0, 0.001, 1e-8);
        List<double> starts = [];
        for (int i = 1; i < run.Count; i++)
        {
            if (run[i - 1].Y[2] < 0.05 && run[i].Y[2] >= 0.05)
            {
                starts.Add(run[i].T);
            }
        }

        return (starts[^1] - starts[^2], run.Max(s => s.Y[2]));
    }

    /// <summary>Bristle deflection over its final one, in a slow slide from rest, after whole numbers of Fc/sigma of way.</summary>
    public static Func<int, double> Dahl()
    {
        TyreSettings tyre = LuGre(1e-9) with { StaticFriction = 1.0, KineticFriction = 1.0, BreakawayDeflection = 1e-3, ViscousFriction = 0.0, TreadMass = 1e9 };
        RingBlock block = new(tyre);
        List<(double T, double[] Y)> run = RingBlock.Run(block, [0, 0, 0.01, 0, 0, 0], 0.4, 0.1, 1e-11, 0.001);
        return n => run[n].Y[4] / 1e-3;
    }

    /// <summary>Side force over its steady value after rolling 1/kappa + N sigma0/(kappa k_c) at a small slip angle, at a speed [m/s].</summary>
    public static double SideForceAfterRelaxationLength(double speed)
    {
        const double kappa = 100.0;
        const double load = 3.0;
        TyreSettings tyre = TestRobots.SoftTyre with { KineticFriction = 1.0, RollingRenewal = kappa, BodyStiffness = 5000.0, BodyDamping = 0.0, TreadMass = 1e-6 };
        double sigma0 = tyre.StaticFriction / tyre.BreakawayDeflection;
        double length = (1.0 / kappa) + (load * sigma0 / (kappa * tyre.BodyStiffness));
        RingBlock block = new(tyre, 0.02 * Math.Sqrt(sigma0), load) { SurfaceSpeed = speed, RimSpeed = _ => (0.0, 1e-4 * speed) };
        List<(double T, double[] Y)> run = RingBlock.Run(block, new double[6], 12.0 * length / speed, length / speed / 8.0, 1e-8);
        return run[8].Y[5] / run[^1].Y[5];
    }

    private static StickSlip RunStickSlip()
    {
        RingBlock block = new(LuGre(2.0), Sigma1) { RimSpeed = _ => (0.1, 0.0) };
        List<(double T, double[] Y)> run = RingBlock.Run(block, new double[6], 25.0, 0.0005, 1e-8);
        return new StickSlip(t => run[(int)Math.Round(t / 0.0005)].Y[0] + (0.1 * t), -2.0 * run.Min(s => s.Y[0]), run.Max(s => s.Y[2]));
    }
}
