using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Tyres;

/// <summary>
/// The lumped bristle beside the brush model with parabolic pressure (Pacejka, Tyre and Vehicle Dynamics, ch. 3, read second-hand; Fiala 1954, the same
/// sideways). Equal are the slope at no slip, C = N sigma0/kappa = 2 c_p a^2, and the full slide at mu N along the slip; between them the lumped law differs.
/// A pneumatic trail it does not have at all: its force acts in the middle of the contact, as the brush's does once it slides.
/// </summary>
public class BrushLimitTests
{
    private const double Mu = 0.9, Load = 3.0, Kappa = 120.0, Surface = 1.0;

    private static readonly TyreSettings s_tyre = TestRobots.SoftTyre with { StaticFriction = Mu, KineticFriction = Mu, RollingRenewal = Kappa, ViscousFriction = 0.0 };

    private static double Stiffness => Load * Mu / s_tyre.BreakawayDeflection / Kappa;

    // F/(mu N) of the brush at ts = C sigma/(3 mu N), printed; the lumped law's largest distance from it, 0.172 at 0.25, measured here
    [Theory]
    [InlineData(0.1, 0.271)]
    [InlineData(0.25, 0.578125)]
    [InlineData(0.5, 0.875)]
    [InlineData(0.75, 0.984375)]
    [InlineData(0.9, 0.999)]
    [InlineData(1.0, 1.0)]
    public void Between_its_limits_it_stays_within_a_sixth(double ts, double brush)
    {
        Assert.Equal(brush, 1.0 - Math.Pow(1.0 - ts, 3.0), 1e-12);
        double lumped = Share(ts);
        Assert.Equal(Steady(ts), lumped, 1e-4);
        Assert.InRange(lumped - brush, -0.061, 0.173);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(Math.PI / 2.0)]
    [InlineData(2.5)]
    public void At_little_slip_both_have_the_same_stiffness(double direction)
    {
        const double ts = 0.001;
        Assert.Equal(1.0, StiffnessOverBrush(ts, direction), 1e-3);
        Assert.Equal(1.0, (1.0 - Math.Pow(1.0 - ts, 3.0)) / (3.0 * ts), 1.001e-3);
    }

    // combined slip, isotropic: along the slip, against it, never more than mu N, and mu N once all of it slides
    [Theory]
    [InlineData(0.2, 0.4)]
    [InlineData(0.6, 1.2)]
    [InlineData(1.0, 3.6)]
    [InlineData(60.0, 0.0)]
    [InlineData(60.0, 1.1)]
    [InlineData(60.0, Math.PI / 2.0)]
    public void The_friction_circle_holds_in_every_direction(double ts, double direction)
    {
        (double x, double y) = Force(ts, direction);
        double size = double.Hypot(x, y);
        Assert.Equal(-Math.Cos(direction), x / size, 1e-3);
        Assert.Equal(-Math.Sin(direction), y / size, 1e-3);
        Assert.True(size <= Mu * Load * (1.0 + 1e-9));
        if (ts > 50.0)
        {
            Assert.Equal(Mu * Load, size, 0.002 * Mu * Load);
        }
    }

    /// <summary>Force of the lumped bristle over mu N at ts = C sigma/(3 mu N).</summary>
    internal static double Share(double ts)
    {
        (double x, double y) = Force(ts, 0.0);
        return double.Hypot(x, y) / (Mu * Load);
    }

    /// <summary>Force over slip at ts, divided by the brush's stiffness 2 c_p a^2.</summary>
    internal static double StiffnessOverBrush(double ts, double direction)
    {
        (double x, double y) = Force(ts, direction);
        return double.Hypot(x, y) / (3.0 * ts * Mu * Load);
    }

    // rho = kappa mu |omega R|/(sigma0 |v|); s^2 - (b - (1 - b) rho) s - (1 - b) = 0 where rho <= 1/b, else s = 1/rho
    private static double Steady(double ts)
    {
        double b = s_tyre.ElasticShare;
        double rho = 1.0 / (3.0 * ts);
        double half = 0.5 * (b - ((1.0 - b) * rho));
        return rho > 1.0 / b ? 1.0 / rho : half + Math.Sqrt((half * half) + 1.0 - b);
    }

    // Force on the rim at a practical slip sigma = |v|/(omega R), settled.
    private static (double X, double Y) Force(double ts, double direction)
    {
        double slip = 3.0 * ts * Mu * Load / Stiffness;
        RingBlock block = new(s_tyre, 0.05, Load) { SurfaceSpeed = Surface, RimSpeed = _ => (slip * Surface * Math.Cos(direction), slip * Surface * Math.Sin(direction)) };
        double[] end = RingBlock.Run(block, new double[6], 1.0, 0.5, 1e-8)[^1].Y;
        _ = block.Friction(end, 1.0);
        return block.Force;
    }
}
