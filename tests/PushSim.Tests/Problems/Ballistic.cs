namespace PushSim.Tests.Problems;

/// <summary>A body thrown up in constant gravity.</summary>
public sealed class Ballistic(double height, double speed, double gravity, double end) : ExactProblem
{
    public override string Name => $"ballistic {height} {speed} {gravity}";

    public override string Equation => "x' = v; v' = -g; x = x0 + v0 t - g t^2/2";

    public override double End => end;

    protected override double[] Exact(double t) =>
        [height + (t * (speed - (0.5 * gravity * t))), speed - (gravity * t)];

    protected override void Rates(double t, double g, Span<double> y, Span<double> dy)
    {
        dy[0] = y[1];
        dy[1] = -gravity;
    }
}
