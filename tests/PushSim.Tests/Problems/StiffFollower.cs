namespace PushSim.Tests.Problems;

/// <summary>Explicit y, stiff z that is linear in itself given y: the shape of a tyre's bristle.</summary>
public sealed class StiffFollower(double lambda) : ExactProblem
{
    public override string Name => $"stiff follower {lambda:0}";

    public override string Equation => "y' = y z; z' = -lambda (z - y e^(-sin t) cos t) - sin t; y = e^(sin t), z = cos t";

    public override double End => 2.0;

    public override int ImplicitCount => 1;

    protected override double[] Exact(double t) => [Math.Exp(Math.Sin(t)), Math.Cos(t)];

    // z = z* + g (-lambda (z - w) - sin t), w = y e^(-sin t) cos t
    protected override void Rates(double t, double g, Span<double> y, Span<double> dy)
    {
        double w = y[0] * Math.Exp(-Math.Sin(t)) * Math.Cos(t);
        double known = y[1];
        y[1] = (known + (g * ((lambda * w) - Math.Sin(t)))) / (1.0 + (g * lambda));
        dy[0] = y[0] * y[1];
        dy[1] = g > 0.0 ? (y[1] - known) / g : (-lambda * (y[1] - w)) - Math.Sin(t);
    }
}
