namespace PushSim.Tests.Problems;

/// <summary>
/// Chemical reaction of eight species. Split: y7 and y8, which exchange at a rate up to 280, are implicit and linear in
/// themselves given y6; the rest is explicit.
/// </summary>
public sealed class Hires : Problem
{
    public override string Name => "HIRES";

    public override string Equation =>
        "y1' = -1.71y1+0.43y2+8.32y3+0.0007; y2' = 1.71y1-8.75y2; y3' = -10.03y3+0.43y4+0.035y5; y4' = 8.32y2+1.71y3-1.12y4; "
        + "y5' = -1.745y5+0.43(y6+y7); y6' = -280y6y8+0.69y4+1.71y5-0.43y6+0.69y7; y7' = 280y6y8-1.81y7; y8' = -y7'";

    public override string Source => "end values as in published test sets for initial value problems";

    public override double[] Start => [1, 0, 0, 0, 0, 0, 0, 0.0057];

    public override double End => 321.8122;

    public override int ImplicitCount => 2;

    public override double[] Reference =>
    [
        0.7371312573325668e-3, 0.1442485726316185e-3, 0.5888729740967575e-4, 0.1175651343283149e-2,
        0.2386356198831331e-2, 0.6238968252742796e-2, 0.2849998395185769e-2, 0.2850001604814231e-2,
    ];

    // r = 280 y6 y8 - 1.81 y7 with y7 = y7* + g r, y8 = y8* - g r
    protected override void Rates(double t, double g, Span<double> y, Span<double> dy)
    {
        double r = ((280.0 * y[5] * y[7]) - (1.81 * y[6])) / (1.0 + (g * ((280.0 * y[5]) + 1.81)));
        y[6] += g * r;
        y[7] -= g * r;
        dy[0] = (-1.71 * y[0]) + (0.43 * y[1]) + (8.32 * y[2]) + 0.0007;
        dy[1] = (1.71 * y[0]) - (8.75 * y[1]);
        dy[2] = (-10.03 * y[2]) + (0.43 * y[3]) + (0.035 * y[4]);
        dy[3] = (8.32 * y[1]) + (1.71 * y[2]) - (1.12 * y[3]);
        dy[4] = (-1.745 * y[4]) + (0.43 * (y[5] + y[6]));
        dy[5] = (-280.0 * y[5] * y[7]) + (0.69 * y[3]) + (1.71 * y[4]) - (0.43 * y[5]) + (0.69 * y[6]);
        dy[6] = r;
        dy[7] = -r;
    }
}
