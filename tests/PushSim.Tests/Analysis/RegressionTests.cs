using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Least squares against the certified values of the NIST Statistical Reference Datasets (https://www.itl.nist.gov/div898/strd/, public domain, read second-hand in several test suites).</summary>
public class RegressionTests
{
    // y, x of Norris
    private static readonly double[] s_norris =
    [
        0.1, 0.2, 338.8, 337.4, 118.1, 118.2, 888.0, 884.6, 9.2, 10.1, 228.1, 226.5, 668.5, 666.3, 998.5, 996.3, 449.1, 448.6, 778.9, 777.0, 559.2, 558.2, 0.3, 0.4,
        0.1, 0.6, 778.1, 775.5, 668.8, 666.9, 339.3, 338.0, 448.9, 447.5, 10.8, 11.6, 557.7, 556.0, 228.3, 228.1, 998.0, 995.8, 888.8, 887.6, 119.6, 120.2, 0.3, 0.3,
        0.6, 0.3, 557.6, 556.8, 339.3, 339.1, 888.0, 887.2, 998.5, 999.0, 778.9, 779.0, 10.2, 11.1, 117.6, 118.3, 228.9, 229.2, 668.4, 669.1, 449.2, 448.9, 0.2, 0.5,
    ];

    private static readonly double[] s_misraX = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];
    private static readonly double[] s_misraY = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78];
    private static readonly double[] s_ratX = [9, 14, 21, 28, 42, 57, 63, 70, 79];
    private static readonly double[] s_ratY = [8.930, 10.800, 18.590, 22.330, 39.350, 56.110, 61.730, 64.620, 67.080];

    private static readonly double[] s_thurberX =
    [
        -3.067, -2.981, -2.921, -2.912, -2.840, -2.797, -2.702, -2.699, -2.633, -2.481, -2.363, -2.322, -1.501, -1.460, -1.274, -1.212, -1.100, -1.046, -0.915, -0.714, -0.566, -0.545,
        -0.400, -0.309, -0.109, -0.103, 0.010, 0.119, 0.377, 0.790, 0.963, 1.006, 1.115, 1.572, 1.841, 2.047, 2.200,
    ];

    private static readonly double[] s_thurberY =
    [
        80.574, 84.248, 87.264, 87.195, 89.076, 89.608, 89.868, 90.101, 92.405, 95.854, 100.696, 101.060, 401.672, 390.724, 567.534, 635.316, 733.054, 759.087, 894.206, 990.785, 1090.109,
        1080.914, 1122.643, 1178.351, 1260.531, 1273.514, 1288.339, 1327.543, 1353.863, 1414.509, 1425.208, 1421.384, 1442.962, 1464.350, 1468.705, 1447.894, 1457.628,
    ];

    // Leverages are the diagonal of the hat matrix: between 1/n and 1, and their sum is the number of parameters. From memory.
    [Fact]
    public void Leverages_of_a_line_sum_to_two()
    {
        double[] x = [-3.0, 0.5, 1.0, 2.5, 7.0, 7.5];
        LineFit fit = LineFit.Of(x, [1.0, 2.0, 2.5, 2.0, 5.0, 4.0]);
        Assert.Equal(2.0, x.Sum(fit.LeverageAt), 1e-12);
        Assert.Equal(1.0 / 6.0, fit.LeverageAt(x.Average()), 1e-12);
        Assert.Equal((1.0 / 6.0) + (Math.Pow(-3.0 - x.Average(), 2) / x.Sum(v => Math.Pow(v - x.Average(), 2))), fit.LeverageAt(-3.0), 1e-12);
    }

    // Norris, points from memory, confirmed by an exact rational fit
    [Fact]
    public void A_line_with_intercept_Norris()
    {
        Assert.Equal(72, s_norris.Length);
        LineFit fit = Norris();
        Relative(-0.262323073774029, fit.Intercept, 1e-11);
        Relative(1.00211681802045, fit.Slope, 1e-13);
        Relative(0.884796396144373, fit.ResidualDeviation, 1e-12);
    }

    [Theory]
    [InlineData(500, 1e-4)]
    [InlineData(250, 5e-4)]
    public void A_curve_Misra1a(double b1, double b2)
    {
        CurveFit fit = Misra1a(b1, b2);
        Certified(fit, [2.3894212918e2, 5.5015643181e-4], [2.7070075241, 7.2668688436e-6], 1.2455138894e-1);
        Relative(1.0187876330e-1, fit.ResidualDeviation, 1e-8);
        Assert.Equal(12, fit.Freedom);
    }

    // starts from memory; the deviation of b2 is not in the list of values
    [Theory]
    [InlineData(100, 1, 0.1)]
    [InlineData(75, 2.5, 0.07)]
    public void A_curve_Rat42(double b1, double b2, double b3)
    {
        CurveFit fit = Assert.IsType<CurveFit>(CurveFit.Fit((x, b) => b[0] / (1.0 + Math.Exp(b[1] - (b[2] * x))), s_ratX, s_ratY, [b1, b2, b3]));
        Certified(fit, [7.2462237576e1, 2.6180768402, 6.7359200066e-2], [1.7340283401, double.NaN, 3.4465663377e-3], 8.0565229338);
    }

    [Theory]
    [InlineData(1000.0, 1000.0, 400.0, 40.0, 0.7, 0.3, 0.03)]
    [InlineData(1300.0, 1500.0, 500.0, 75.0, 1.0, 0.4, 0.05)]
    public void A_curve_Thurber(params double[] start)
    {
        CurveFit fit = Thurber(start);
        Certified(
            fit,
            [1.2881396800e3, 1.4910792535e3, 5.8323836877e2, 7.5416644291e1, 9.6629502864e-1, 3.9797285797e-1, 4.9727297349e-2],
            [4.6647963344, 3.9571156086e1, 2.8698696102e1, 5.5675370270, 3.1333340687e-2, 1.4984928198e-2, 6.5842344623e-3],
            5.6427082397e3);
        Relative(1.3714600784e1, fit.ResidualDeviation, 1e-8);
        Assert.Equal(30, fit.Freedom);
    }

    // computed here: pulls of mu0 N (N/N0)^-p with a known error come back within it
    [Fact]
    public void Friction_that_falls_with_load_comes_back()
    {
        double[] loads = [2.0, 2.0, 4.0, 4.0, 8.0, 8.0, 16.0, 16.0];
        double[] misread = [1.01, 0.99, 0.985, 1.015, 1.01, 0.99, 0.99, 1.01];
        double[] forces = [.. loads.Select((n, i) => misread[i] * 0.9 * n * Math.Pow(n / 5.0, -0.12))];
        LoadDependence fit = Assert.IsType<LoadDependence>(LoadDependence.Fit(loads, forces, 5.0));
        Assert.InRange(0.9, fit.Friction.Low, fit.Friction.High);
        Assert.InRange(0.12, fit.Exponent.Low, fit.Exponent.High);
        Assert.InRange(fit.Exponent.High - fit.Exponent.Low, 0.0, 0.04);
        Assert.Null(LoadDependence.Fit([3, 3, 3, 3], [1, 1, 1, 1], 3.0));
    }

    /// <summary>Line of Norris.</summary>
    internal static LineFit Norris() => LineFit.Of([.. s_norris.Where((_, i) => i % 2 == 1)], [.. s_norris.Where((_, i) => i % 2 == 0)]);

    /// <summary>Curve of Misra1a from a start.</summary>
    internal static CurveFit Misra1a(params double[] start) =>
        Assert.IsType<CurveFit>(CurveFit.Fit((x, b) => b[0] * (1.0 - Math.Exp(-b[1] * x)), s_misraX, s_misraY, start));

    /// <summary>Curve of Thurber from a start.</summary>
    internal static CurveFit Thurber(params double[] start) => Assert.IsType<CurveFit>(CurveFit.Fit(
        (x, b) => (b[0] + (x * (b[1] + (x * (b[2] + (x * b[3])))))) / (1.0 + (x * (b[4] + (x * (b[5] + (x * b[6])))))), s_thurberX, s_thurberY, start));

    private static void Certified(CurveFit fit, double[] parameters, double[] deviations, double sum)
    {
        for (int i = 0; i < parameters.Length; i++)
        {
            Relative(parameters[i], fit.Parameters[i], 1e-7);
            if (double.IsFinite(deviations[i]))
            {
                Relative(deviations[i], fit.Deviations[i], 1e-6);
            }
        }

        Relative(sum, fit.ResidualSum, 1e-9);
    }

    private static void Relative(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance * Math.Abs(expected), FormattableString.Invariant($"expected {expected:R}, got {actual:R}, relative {(actual / expected) - 1.0:E2}"));
}
