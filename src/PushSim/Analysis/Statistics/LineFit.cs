namespace PushSim.Analysis.Statistics;

/// <summary>A straight line by least squares, y = b0 + b1 x. Sums are taken about the means, so that data far from the origin lose no digits.</summary>
public sealed record LineFit
{
    /// <summary>b0 [unit of y].</summary>
    public double Intercept { get; private init; }

    /// <summary>b1 [unit of y per unit of x].</summary>
    public double Slope { get; private init; }

    /// <summary>Residual standard deviation [unit of y].</summary>
    public double ResidualDeviation { get; private init; }

    /// <summary>Degrees of freedom of the residual [1].</summary>
    public int Freedom { get; private init; }

    private double MeanX { get; init; }

    private double SumXX { get; init; }

    private int Count { get; init; }

    /// <summary>y = b0 + b1 x, at least three points.</summary>
    public static LineFit Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        int n = x.Count;
        double mx = Sample.Mean(x);
        double my = Sample.Mean(y);
        double xx = 0.0;
        double xy = 0.0;
        for (int i = 0; i < n; i++)
        {
            xx += (x[i] - mx) * (x[i] - mx);
            xy += (x[i] - mx) * (y[i] - my);
        }

        double b1 = xx > 0.0 ? xy / xx : 0.0;
        double sse = 0.0;
        for (int i = 0; i < n; i++)
        {
            double r = y[i] - my - (b1 * (x[i] - mx));
            sse += r * r;
        }

        double s = Math.Sqrt(sse / (n - 2));
        return new LineFit
        {
            Intercept = my - (b1 * mx),
            Slope = b1,
            ResidualDeviation = s,
            Freedom = n - 2,
            MeanX = mx,
            SumXX = xx,
            Count = n,
        };
    }

    /// <summary>The line at x.</summary>
    /// <param name="x">Place [unit of x].</param>
    public double At(double x) => Intercept + (Slope * x);

    /// <summary>Variance of the line with intercept at x, for residuals of unit variance.</summary>
    /// <param name="x">Place [unit of x].</param>
    public double LeverageAt(double x) => (1.0 / Count) + (SumXX > 0.0 ? (x - MeanX) * (x - MeanX) / SumXX : 0.0);
}
