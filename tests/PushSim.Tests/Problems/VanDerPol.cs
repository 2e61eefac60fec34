namespace PushSim.Tests.Problems;

/// <summary>Relaxation oscillator; y2 is implicit, linear in itself given y1.</summary>
public sealed class VanDerPol : Problem
{
    private const double Mu = 1000.0;

    public override string Name => "van der Pol 1000";

    public override string Equation => "y1' = y2; y2' = 1000 (1 - y1^2) y2 - y1";

    public override string Source => "end values as in published test sets for initial value problems";

    public override double[] Start => [2.0, 0.0];

    public override double End => 2000.0;

    public override int ImplicitCount => 1;

    public override double[] Reference => [1.706167732170469, -0.8928097010248125e-3];

    protected override void Rates(double t, double g, Span<double> y, Span<double> dy)
    {
        double rate = Mu * (1.0 - (y[0] * y[0]));
        double slope = ((rate * y[1]) - y[0]) / (1.0 - (g * rate));
        y[1] += g * slope;
        dy[0] = y[1];
        dy[1] = slope;
    }
}
