using PushSim.Numerics;
using PushSim.Tests.Tyres;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Tread friction never gives energy and never passes its circle, at constant load from a relaxed bristle. PUSHSIM_TREADS=40 tries so many cases a row, the usual run 16.</summary>
public class PropertyTreadTests(ITestOutputHelper output)
{
    private const double Load = 3.0;

    private static readonly int s_cases = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_TREADS"), out int n) ? n : 16;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Tread_only_takes_energy_and_stays_within_its_grip(bool isSwitched)
    {
        double nearest = double.NegativeInfinity;
        double grip = 0.0;
        foreach (int seed in Enumerable.Range(700, s_cases))
        {
            var random = new Random(seed);
            TyreSettings tyre = Tyre(random, isSwitched);
            double sigma0 = tyre.StaticFriction / tyre.BreakawayDeflection;
            double sigma1 = 2.0 * 0.1 * Math.Pow(200.0, random.NextDouble()) * Math.Sqrt(tyre.TreadMass * sigma0 / Load);
            var meter = new TreadMeter(tyre, sigma1, Load, RandomMotion(random), random.Next(2) * random.NextDouble());
            meter.Run(2.0);
            nearest = Math.Max(nearest, meter.GreatestWork / meter.LargestLoss);
            grip = Math.Max(grip, meter.GreatestGrip);

            // the bound on work is step error: a ten-millionth of what the case loses
            Assert.True(meter.LargestLoss > 0.0);
            Assert.True(meter.GreatestWork <= 1e-7 * meter.LargestLoss, $"case {seed}: the tread gave {meter.GreatestWork:e1} J of {meter.LargestLoss:e1} J");
            Assert.True(meter.GreatestGrip <= 1.0 + 1e-6, $"case {seed}: |T| is {meter.GreatestGrip:r} of mu_s N and the viscous parts");
        }

        output.WriteLine($"switched {isSwitched}: greatest work of the tread {nearest:e1} of the loss; greatest grip {grip:0.000}");
    }

    // With the load swinging the law is not passive: what a bristle stored under a light load it gives back under a heavy one.
    // No more than one bristle's energy at the heaviest load, N mu_s z_max/2. Measured, load swinging by 80 % at 3 to 60 Hz: at most
    // 2.8e-4 J given back in 40 cases of 2 s, each of which lost 0.6 J or more.
    [Fact]
    public void A_swinging_load_lets_the_tread_give_back_no_more_than_a_bristle_holds()
    {
        double given = 0.0;
        double least = double.PositiveInfinity;
        foreach (int seed in Enumerable.Range(800, s_cases))
        {
            var random = new Random(seed);
            TyreSettings tyre = Tyre(random, isSwitched: true);
            double sigma0 = tyre.StaticFriction / tyre.BreakawayDeflection;
            double sigma1 = 0.6 * Math.Sqrt(tyre.TreadMass * sigma0 / Load);
            double rate = 2.0 * Math.PI * 3.0 * Math.Pow(20.0, random.NextDouble());
            var meter = new TreadMeter(tyre, sigma1, Load, RandomMotion(random), 0.0) { LoadAt = t => Load * (1.0 + (0.8 * Math.Sin(rate * t))) };
            meter.Run(2.0);
            given = Math.Max(given, meter.GreatestWork);
            double bristle = 0.5 * 1.8 * Load * tyre.StaticFriction * tyre.BreakawayDeflection;
            Assert.True(meter.GreatestWork <= bristle, $"case {seed}: gave back {meter.GreatestWork:e1} J of {bristle:e1} J");
            least = Math.Min(least, meter.LargestLoss);
        }

        output.WriteLine($"given back {given:e1} J, least loss {least:e1} J");
    }

    private static TyreSettings Tyre(Random random, bool isSwitched) => new()
    {
        Name = "random",
        StaticFriction = 1.0,
        KineticFriction = 0.2 + (0.8 * random.NextDouble()),
        SlipSpeed = 0.05 + (0.5 * random.NextDouble()),
        BreakawayDeflection = 0.2e-3 + (0.6e-3 * random.NextDouble()),
        ViscousFriction = random.Next(2) * 0.1 * random.NextDouble(),
        PlainFriction = !isSwitched,
        RollingRenewal = 150.0 * random.NextDouble(),
        BodyStiffness = 1500.0 + (4000.0 * random.NextDouble()),
        BodyDamping = 0.1 + random.NextDouble(),
        TreadMass = 0.004,
        VerticalStiffness = 1.0,
    };

    // Three sines an axis, 0.5 to 60 Hz, and now and then a steady drift
    private static Func<double, (double X, double Y)> RandomMotion(Random random)
    {
        (double A, double B, double W, double P)[] parts = [.. Enumerable.Range(0, 3).Select(_ => (
            0.3 * random.NextDouble(), 0.3 * random.NextDouble(), 2.0 * Math.PI * 0.5 * Math.Pow(120.0, random.NextDouble()), 6.0 * random.NextDouble()))];
        double drift = random.Next(2) * (random.NextDouble() - 0.5);

        // half of them load the bristle slowly and then tear it off, where an unlimited sigma1 gives energy
        double preload = 2e-3 * random.NextDouble();
        double jerk = 2.0 + (6.0 * random.NextDouble());
        if (random.Next(2) == 0)
        {
            return t => (t < 0.3 ? preload / 0.3 : jerk, 0.0);
        }

        return t => (
            drift + parts.Sum(p => p.A * Math.Sin((p.W * t) + p.P)),
            parts.Sum(p => p.B * Math.Sin((1.3 * p.W * t) + (2.0 * p.P))));
    }

    /// <summary>The block on its spring with one more state, the work of the tread force; watches work and force at every step.</summary>
    private sealed class TreadMeter : IAdditiveSystem, IStepObserver
    {
        private readonly TyreSettings _tyre;
        private readonly double _sigma1, _load;
        private readonly RingBlock _block;
        private readonly double[] _y = new double[7];
        private readonly double[] _state = new double[6];
        private readonly double[] _rates = new double[6];

        public TreadMeter(TyreSettings tyre, double sigma1, double load, Func<double, (double X, double Y)> motion, double surface)
        {
            _tyre = tyre;
            _load = load;
            _sigma1 = sigma1;
            _block = new RingBlock(tyre, sigma1, load, isLimited: true) { RimSpeed = motion, SurfaceSpeed = surface };
        }

        /// <summary>Load over time [N]; null: constant.</summary>
        public Func<double, double>? LoadAt { get; init; }

        public int ExplicitCount => 1;

        public int ImplicitCount => 6;

        public IReadOnlyList<(int From, int To)> PredictedRanges => _block.PredictedRanges;

        public IReadOnlyList<(int From, int To)> CurveRanges => _block.CurveRanges;

        /// <summary>Greatest integral of T.v since the start [J]; passive friction keeps it at 0.</summary>
        public double GreatestWork { get; private set; } = double.NegativeInfinity;

        public double LargestLoss { get; private set; }

        /// <summary>Greatest |T| over mu_s N + N sigma1 |z'| + N sigma2 |v| [1].</summary>
        public double GreatestGrip { get; private set; }

        public void Run(double end)
        {
            double[] absolute = [double.PositiveInfinity, .. Enumerable.Repeat(1e-9, 4), 1e-13, 1e-13];
            var integration = new SingleRun<TreadMeter>(this, AdditiveTableau.ByName("ARK4(3)"));
            var settings = new IntegrationSettings { RelativeTolerance = 1e-9, AbsoluteTolerances = absolute, MaximumStep = 0.002 };
            TreadMeter observer = this;
            IntegrationOutcome report = integration.Run(0.0, end, new double[7], [], settings, observer);
            Assert.Equal(IntegrationStatus.Completed, report.Status);
        }

        public void Evaluate(double t, double g, Span<double> y, Span<double> dy) => Evaluate(t, g, y, y[1..], dy);

        public void Evaluate(double t, double g, Span<double> y, ReadOnlySpan<double> predicted, Span<double> dy)
        {
            _block.Load = LoadAt?.Invoke(t) ?? _load;
            _block.Evaluate(t, g, y[1..], predicted, dy[1..]);
            dy[1..].CopyTo(_rates);
            y[1..].CopyTo(_state);
            (double x, double yForce) = Tread();
            dy[0] = (x * y[3]) + (yForce * y[4]);
        }

        public StepDecision OnStep(DenseOutput step)
        {
            step.Evaluate(step.T1, _y);
            GreatestWork = Math.Max(GreatestWork, _y[0]);
            LargestLoss = Math.Max(LargestLoss, -_y[0]);
            Evaluate(step.T1, 0.0, _y, new double[7]);
            (double x, double y) = Tread();
            double limited = _sigma1 * double.Hypot(_rates[4], _rates[5]);
            double most = _load * (_tyre.StaticFriction + limited + (_tyre.ViscousFriction * double.Hypot(_y[3], _y[4])));
            GreatestGrip = Math.Max(GreatestGrip, double.Hypot(x, y) / most);
            return StepDecision.Continue;
        }

        // T = m_t v' + F, from what the engine's wheel returned
        private (double X, double Y) Tread() =>
            ((_tyre.TreadMass * _rates[2]) + _block.Force.X, (_tyre.TreadMass * _rates[3]) + _block.Force.Y);
    }
}
