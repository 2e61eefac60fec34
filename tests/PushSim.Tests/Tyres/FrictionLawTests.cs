using Xunit;

namespace PushSim.Tests.Tyres;

/// <summary>The engine's bristle law against published friction experiments; the tread ring is the block, the tyre body its spring.</summary>
public class FrictionLawTests
{
    // Stick-slip of the same paper, Fig. 6 (1 kg, 2 N/m, 0.1 m/s); digits computed here by two stiff integrators
    [Fact]
    public void Stick_slip_follows_the_published_experiment()
    {
        StickSlip run = FrictionExperiments.StickSlip;
        double X(double t) => run.X(t);
        Assert.Equal(0.001032, X(7.5), 2e-5);
        Assert.Equal(0.412940, X(9.0), 1e-4);
        Assert.Equal(0.627583, X(10.0), 5e-5);
        Assert.Equal(0.918280, X(15.0), 2e-4);
        Assert.Equal(1.272596, X(20.0), 2e-4);
        Assert.Equal(1.908839, X(25.0), 3e-4);
        Assert.Equal(1.507987, run.PeakSpringForce, 2e-5);
        Assert.Equal(0.369816, run.TopSpeed, 2e-5);
    }

    // Presliding, Fig. 2: force ramp 0.1425 N/s to 95 % of Fs; computed here
    [Fact]
    public void Presliding_follows_the_published_ramp()
    {
        Func<double, double> X = FrictionExperiments.Presliding();
        Assert.Equal(9.6568e-6, X(5.0), 1e-8);
        Assert.Equal(4.48579e-5, X(10.0), 1e-7);
        Assert.Equal(4.53119e-5, X(15.0), 1e-7);
    }

    // Break-away falls with the force rate, Fig. 4; computed here (largest friction before gross slip)
    [Theory]
    [InlineData(1.0, 1.4324)]
    [InlineData(2.0, 1.3944)]
    [InlineData(5.0, 1.3132)]
    [InlineData(10.0, 1.2200)]
    [InlineData(20.0, 1.0986)]
    [InlineData(50.0, 1.0075)]
    public void Breakaway_falls_with_force_rate(double rate, double expected) => Assert.Equal(expected, FrictionExperiments.Breakaway(rate), 0.004);

    // Friction against a speed that swings, Fig. 3 of the same paper: v = 0.001 (1.5 + cos w t). It lags the speed, and more so the faster that
    // swings; numbers by a second writing of the law, here, integrated by RK4
    [Fact]
    public void Friction_lags_a_swinging_speed()
    {
        double[] widths = [.. new[] { 1.0, 10.0, 25.0 }.Select(LoopWidth)];
        Assert.True(widths[0] > 1e-3, "no loop at 1 rad/s");
        Assert.True(widths[1] > 2.0 * widths[0] && widths[2] > 1.5 * widths[1], string.Join(", ", widths));
    }

    // Greatest gap between friction while the speed falls and while it rises, at the same speed; checks the engine against the second writing on the way.
    private static double LoopWidth(double w)
    {
        const int Steps = 20000;
        double h = 2.0 * Math.PI / w / Steps;
        RingBlock block = new(FrictionExperiments.LuGre(1.0), FrictionExperiments.Sigma1);
        double V(double t) => 0.001 * (1.5 + Math.Cos(w * t));
        double Rate(double t, double z)
        {
            double[] dy = new double[6];
            block.Evaluate(t, 0.0, new double[] { 0, 0, V(t), 0, z, 0 }, dy);
            return dy[4];
        }

        // sigma0 z + sigma1 z' + sigma2 v, z' = v - |v| z/g, sigma0 g = Fc + (Fs - Fc) exp(-(v/vs)^2)
        static double Own(double v, double z) => v - (1e5 * Math.Abs(v) * z / (1.0 + (0.5 * Math.Exp(-v * v / 1e-6))));
        double z = 0.0;
        double[] friction = new double[Steps + 1];
        for (int i = 0; i < 3 * Steps; i++)
        {
            double t = i * h;
            double k1 = Rate(t, z);
            double k2 = Rate(t + (0.5 * h), z + (0.5 * h * k1));
            double k3 = Rate(t + (0.5 * h), z + (0.5 * h * k2));
            double k4 = Rate(t + h, z + (h * k3));
            z += h * (k1 + (2.0 * k2) + (2.0 * k3) + k4) / 6.0;
            if (i >= 2 * Steps)
            {
                friction[i - (2 * Steps)] = -block.Friction([0, 0, V(t + h), 0, z, 0], t + h);
                double own = (1e5 * z) + (FrictionExperiments.Sigma1 * Own(V(t + h), z)) + (0.4 * V(t + h));
                Assert.Equal(own, friction[i - (2 * Steps)], 1e-12);
            }
        }

        return Enumerable.Range(0, Steps / 2).Max(i => Math.Abs(friction[i] - friction[Steps - 2 - i]));
    }

    // Coulomb-damped spring and mass: amplitude lost per half cycle 2 mu N/k, period 2 pi sqrt(m/k) (Thomson, Rao, from memory)
    [Fact]
    public void Coulomb_damping_loses_a_fixed_amplitude_per_cycle()
    {
        double half = Math.PI / 10.0;
        Func<double, double> Q = FrictionExperiments.CoulombSpring();
        Assert.Equal(-0.18, Q(half), 2e-4);
        Assert.Equal(0.16, Q(2.0 * half), 2e-4);
        Assert.Equal(0.12, Q(4.0 * half), 2e-4);
    }

    // Ideal stick-slip with extra viscous 0 in the limit of stiff bristles: jump 0.761125925 m, period 7.61125925 s
    // (Rabinowicz; Bowden and Tabor, classical, from memory; digits computed here)
    [Fact]
    public void Stick_slip_reaches_the_ideal_limit()
    {
        (double period, double top) = FrictionExperiments.IdealStickSlip();
        Assert.Equal(7.61125925, period, 0.01 * 7.611);
        Assert.Equal(0.467423461, top, 0.01 * 0.4674);
    }

    // Dahl 1968/1976, from memory: from rest F/Fc = 1 - exp(-sigma x/Fc)
    [Fact]
    public void Slow_slide_from_rest_is_dahls_exponential()
    {
        Func<int, double> share = FrictionExperiments.Dahl();
        Assert.Equal(1.0 - Math.Exp(-1.0), share(1), 1e-7);
        Assert.Equal(1.0 - Math.Exp(-4.0), share(4), 1e-7);
    }

    // Relaxation length, Pacejka ch. 1 and 7, from memory: 63.212 % of the steady side force after 1/kappa + N sigma0/(kappa k_c)
    [Theory]
    [InlineData(0.3)]
    [InlineData(2.0)]
    public void Side_force_builds_over_the_relaxation_length(double speed) =>
        Assert.Equal(1.0 - Math.Exp(-1.0), FrictionExperiments.SideForceAfterRelaxationLength(speed), 0.005);
}
