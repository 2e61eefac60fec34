namespace PushSim.Tests.Problems;

/// <summary>Explicit only, depends on t and y.</summary>
public sealed class DrivenRiccati : ExactProblem
{
    public override string Name => "driven Riccati";

    public override string Equation => "y' = -2 t y^2; u' = y (1 + t^2) cos t - (u - sin t) u; y = 1/(1 + t^2), u = sin t";

    public override double End => 2.0;

    protected override double[] Exact(double t) => [1.0 / (1.0 + (t * t)), Math.Sin(t)];

    protected override void Rates(double t, double g, Span<double> y, Span<double> dy)
    {
        dy[0] = -2.0 * t * y[0] * y[0];
        dy[1] = (y[0] * (1.0 + (t * t)) * Math.Cos(t)) - ((y[1] - Math.Sin(t)) * y[1]);
    }
}
