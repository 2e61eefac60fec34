namespace PushSim.Tests.Problems;

/// <summary>Closed orbit of a small body about two large ones.</summary>
public sealed class Arenstorf : Problem
{
    private const double Mu = 0.012277471;

    public override string Name => "Arenstorf orbit";

    public override string Equation =>
        "x'' = x + 2y' - (1-mu)(x+mu)/D1 - mu(x-1+mu)/D2; y'' = y - 2x' - (1-mu)y/D1 - mu y/D2; D1 = ((x+mu)^2+y^2)^1.5, D2 = ((x-1+mu)^2+y^2)^1.5";

    public override string Source => "Hairer, Norsett, Wanner, Solving Ordinary Differential Equations I, p. 129";

    public override double[] Start => [0.994, 0.0, 0.0, -2.00158510637908252240537862224];

    public override double End => 17.0652165601579625588917206249;

    public override double[] Reference => Start;

    protected override void Rates(double t, double g, Span<double> y, Span<double> dy)
    {
        double a = y[0] + Mu;
        double b = y[0] - 1.0 + Mu;
        double d1 = Math.Pow((a * a) + (y[1] * y[1]), 1.5);
        double d2 = Math.Pow((b * b) + (y[1] * y[1]), 1.5);
        dy[0] = y[2];
        dy[1] = y[3];
        dy[2] = y[0] + (2.0 * y[3]) - ((1.0 - Mu) * a / d1) - (Mu * b / d2);
        dy[3] = y[1] - (2.0 * y[2]) - ((1.0 - Mu) * y[1] / d1) - (Mu * y[1] / d2);
    }
}
