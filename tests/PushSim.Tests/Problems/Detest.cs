namespace PushSim.Tests.Problems;

/// <summary>Class A of the DETEST set: T. E. Hull and others, SIAM J. Numer. Anal. 9 (1972) 603-637, equations from memory.</summary>
public sealed class Detest(int number) : Problem
{
    public override string Name => $"DETEST A{number}";

    public override string Equation => number switch
    {
        1 => "y' = -y",
        2 => "y' = -y^3/2",
        3 => "y' = y cos t",
        4 => "y' = (y/4)(1 - y/20)",
        _ => "y' = (y - t)/(y + t)",
    };

    public override string Source => "end values computed here";

    public override double End => 20.0;

    public override double[] Start => [number == 5 ? 4.0 : 1.0];

    public override double[] Reference => number switch
    {
        1 => [2.061153622438558e-9],
        2 => [0.2182178902359924],
        3 => [2.4916502718504145],
        4 => [17.73016648131484],
        _ => [-0.7887826688958],
    };

    public override bool TryExact(double t, Span<double> y)
    {
        y[0] = number switch
        {
            1 => Math.Exp(-t),
            2 => 1.0 / Math.Sqrt(1.0 + t),
            3 => Math.Exp(Math.Sin(t)),
            4 => 20.0 / (1.0 + (19.0 * Math.Exp(-0.25 * t))),
            _ => double.NaN,
        };
        return number != 5;
    }

    protected override void Rates(double t, double g, Span<double> y, Span<double> dy) => dy[0] = number switch
    {
        1 => -y[0],
        2 => -0.5 * y[0] * y[0] * y[0],
        3 => y[0] * Math.Cos(t),
        4 => 0.25 * y[0] * (1.0 - (y[0] / 20.0)),
        _ => (y[0] - t) / (y[0] + t),
    };
}
