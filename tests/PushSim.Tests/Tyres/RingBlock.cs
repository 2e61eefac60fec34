using System.Runtime.InteropServices;
using PushSim.Numerics;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Tyres;

/// <summary>
/// The engine's own wheel with its rim moved as told: the tread ring is a block on the floor, the tyre body the spring that
/// pulls it. States: q_x, q_y, v_x, v_y; bristle z_x, z_y.
/// </summary>
internal sealed class RingBlock : IAdditiveSystem
{
    private readonly WheelParameters<R1> _p;
    private readonly WheelKind<R1> _kind;
    private WheelWork<R1> _work;

    public RingBlock(TyreSettings tyre, double sigma1 = 0.0, double load = 1.0, bool isLimited = false)
    {
        double sigma0 = tyre.StaticFriction / tyre.BreakawayDeflection;
        _p = new WheelParameters<R1>
        {
            TreadMass = tyre.TreadMass, InverseTreadMass = 1.0 / tyre.TreadMass,
            BodyStiffness = tyre.BodyStiffness, BodyDamping = tyre.BodyDamping, RingStep = Math.Sqrt(tyre.TreadMass / tyre.BodyStiffness),
            VerticalStiffness = 1.0, VerticalDamping = 0.0,
            Sigma0 = sigma0, Sigma1 = sigma1, Sigma1Over4Sigma0 = sigma1 / (4.0 * sigma0), Sigma2 = tyre.ViscousFriction,
            KineticFriction = tyre.KineticFriction, FrictionDrop = tyre.StaticFriction - tyre.KineticFriction,
            InverseSlipSpeed = 1.0 / tyre.SlipSpeed, ElasticShare = tyre.ElasticShare, InverseSigma0 = 1.0 / sigma0, InversePlasticShare = 1.0 / (1.0 - tyre.ElasticShare),
            Kappa = tyre.RollingRenewal, Radius = 1.0, LateralRatio = tyre.LateralFrictionRatio,
        };
        _kind = new WheelKind<R1>(new WheelShape
        {
            Plain = tyre.PlainFriction, LimitDamping = isLimited || !tyre.PlainFriction, Drive = -1, FoulingIndex = -1, WearIndex = 0, SpinIndex = -1,
        });
        Load = load;
    }

    public double Load { get; set; }

    public Func<double, (double X, double Y)> RimSpeed { get; set; } = _ => (0.0, 0.0);

    public double SurfaceSpeed { get; set; }

    /// <summary>Force of the tread on the rim at the last evaluation [N].</summary>
    public (double X, double Y) Force => (_work.Fx.Value, _work.Fy.Value);

    /// <summary>Slide of the bristle end over the floor at the last evaluation [m/s].</summary>
    public double WearSpeed { get; private set; }

    public double Friction(ReadOnlySpan<double> y, double t)
    {
        double[] copy = y.ToArray();
        double[] dy = new double[6];
        Evaluate(t, 0.0, copy, dy);
        return (dy[2] * _p.TreadMass.Value) + Force.X;
    }

    /// <summary>Whether the last stage slid.</summary>
    public bool Slides => _work.Alpha.Value > 0.0;

    public int ExplicitCount => 0;

    public int ImplicitCount => 6;

    public IReadOnlyList<(int From, int To)> PredictedRanges => [(2, 4)];

    public IReadOnlyList<(int From, int To)> CurveRanges => [(0, 2)];

    public double StepBound => TreadRing.StepBound(_p, _kind, _work).Value;

    public void Evaluate(double t, double g, Span<double> y, Span<double> dy) => Evaluate(t, g, y, y, dy);

    public void Evaluate(double t, double g, Span<double> y, ReadOnlySpan<double> predicted, Span<double> dy)
    {
        (double wx, double wy) = RimSpeed(t);
        var place = new WheelPlace<R1> { Rolling = wx + SurfaceSpeed, Lateral = wy, Height = -Load };
        WheelEquations.Evaluate(
            _p, _kind, place, 0.0, SurfaceSpeed, 1.0, g, 0, 2, MemoryMarshal.Cast<double, R1>(y), MemoryMarshal.Cast<double, R1>(predicted),
            MemoryMarshal.Cast<double, R1>(dy), ref _work, out R1 wear);
        WearSpeed = wear.Value;
    }

    /// <summary>Runs to an end time and returns samples of (t, state).</summary>
    public static List<(double T, double[] Y)> Run(RingBlock system, double[] y0, double end, double sampleStep, double tolerance = 1e-9, double maxStep = 0.01)
    {
        double[] absolute = [.. Enumerable.Repeat(tolerance, 4), tolerance * 1e-4, tolerance * 1e-4];
        var integration = new SingleRun<RingBlock>(system, AdditiveTableau.ByName("ARK4(3)"));
        var settings = new IntegrationSettings { RelativeTolerance = tolerance, AbsoluteTolerances = absolute, MaximumStep = maxStep };
        var sampler = new Sampler(sampleStep, y0);
        IntegrationReport report = integration.Run(0.0, end, [.. y0], [], settings, sampler);
        Assert.Equal(IntegrationStatus.Completed, report.Status);
        return sampler.Samples;
    }

    private sealed class Sampler(double step, double[] y0) : IStepObserver
    {
        public List<(double T, double[] Y)> Samples { get; } = [(0.0, y0)];

        public StepDecision OnStep(DenseOutput dense)
        {
            while (Samples.Count * step <= dense.T1 * (1.0 + 1e-14))
            {
                double[] y = new double[6];
                dense.Evaluate(Math.Min(Samples.Count * step, dense.T1), y);
                Samples.Add((Samples.Count * step, y));
            }

            return StepDecision.Continue;
        }
    }
}
