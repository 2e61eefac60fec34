namespace PushSim.Tests.Problems;

/// <summary>Oscillating reaction of two species.</summary>
public sealed class Brusselator : Problem
{
    public override string Name => "Brusselator";

    public override string Equation => "y1' = 1 + y1^2 y2 - 4 y1; y2' = 3 y1 - y1^2 y2";

    public override string Source => "Hairer, Norsett, Wanner, Solving Ordinary Differential Equations I, from memory; computed again here";

    public override double[] Start => [1.5, 3.0];

    public override double End => 20.0;

    public override double[] Reference => [0.4986370712683478, 4.596780349452011];

    protected override void Rates(double t, double g, Span<double> y, Span<double> dy)
    {
        double reaction = y[0] * y[0] * y[1];
        dy[0] = 1.0 + reaction - (4.0 * y[0]);
        dy[1] = (3.0 * y[0]) - reaction;
    }
}
