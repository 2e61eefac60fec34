using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Tyres;

/// <summary>The numerical solution of the bonded layer against its limits, and the engine's table against that solution.</summary>
public class LayerContactTableTests
{
    // Small contact on a thick layer, k = pi E* w/(2 (ln(h/a) + c - 1/2)): Johnson, Contact Mechanics, ch. 5 (from memory); c computed here
    // by an independent solution, printed to four digits.
    [Theory]
    [InlineData(0.0, 0.8209)]
    [InlineData(0.3, 0.6667)]
    [InlineData(0.45, 0.3874)]
    [InlineData(0.49, 0.2558)]
    [InlineData(0.5, 0.2169)]
    public void A_short_contact_has_the_thick_layers_constant(double poisson, double c)
    {
        const double A = 0.002;
        double k = new LayerSolver(poisson, A, tangential: false).StripStiffness();
        Near(c, (Math.PI / k) + Math.Log(A) + 0.5, 3e-4);
    }

    // Load over the long contact's limit, P = (2/3) M a^3/(R h) and (2/15) G a^5/(R h^3): Johnson, ch. 5 (from memory); ratios computed
    // here by an independent solution
    [Theory]
    [InlineData(0.3, 2.0, 1.2110)]
    [InlineData(0.3, 8.0, 1.0468)]
    [InlineData(0.5, 4.0, 4.414)]
    [InlineData(0.5, 8.0, 2.279)]
    public void A_long_contact_goes_to_the_thin_layers_load(double nu, double a, double ratio)
    {
        // with E*/2 = G/(1 - nu) as the unit
        double limit = nu == 0.5 ? 2.0 / 15.0 * Math.Pow(a, 5.0) * (1.0 - nu) : 2.0 / 3.0 * (2.0 * (1.0 - nu) / (1.0 - (2.0 * nu))) * Math.Pow(a, 3.0) * (1.0 - nu);
        Near(ratio, new LayerSolver(nu, a, tangential: false).Parabola().Load / limit, 6e-4);
    }

    // Stuck strip, computed here by an independent solution to three digits
    [Theory]
    [InlineData(0.0, 0.05, 0.865)]
    [InlineData(0.0, 0.1, 0.836)]
    [InlineData(0.0, 0.2, 0.794)]
    [InlineData(0.0, 0.5, 0.707)]
    [InlineData(0.0, 1.0, 0.631)]
    [InlineData(0.3, 0.05, 0.770)]
    [InlineData(0.3, 0.1, 0.724)]
    [InlineData(0.3, 0.2, 0.660)]
    [InlineData(0.3, 0.5, 0.537)]
    [InlineData(0.3, 1.0, 0.438)]
    [InlineData(0.49, 0.05, 0.630)]
    [InlineData(0.49, 0.1, 0.562)]
    [InlineData(0.49, 0.2, 0.468)]
    [InlineData(0.49, 0.5, 0.302)]
    [InlineData(0.49, 1.0, 0.180)]
    [InlineData(0.5, 0.05, 0.619)]
    [InlineData(0.5, 0.1, 0.549)]
    [InlineData(0.5, 0.2, 0.453)]
    [InlineData(0.5, 0.5, 0.284)]
    [InlineData(0.5, 1.0, 0.160)]
    public void Tangential_over_normal_stiffness(double poisson, double a, double expected)
    {
        double solved = new LayerSolver(poisson, a, tangential: true).StripStiffness() / new LayerSolver(poisson, a, tangential: false).StripStiffness();
        Near(expected, solved, 5.1e-4);
        double table = Table(LayerContactTable.Tangential, poisson, a) / Table(LayerContactTable.Normal, poisson, a);
        Near(expected, table, 0.01 * expected);
    }

    // the kernel at long waves: a compressible layer yields as h/M, an incompressible one shears as h/G (from memory)
    [Fact]
    public void The_kernel_has_its_limits()
    {
        const double W = 1e-3, Nu = 0.3;
        double k = 3.0 - (4.0 * Nu);
        Near((1.0 - (2.0 * Nu)) / (2.0 * (1.0 - Nu) * (1.0 - Nu)), LayerSolver.Compliance(W, k, tangential: false) / W, 1e-5);
        Near(1.0 / (1.0 - Nu), LayerSolver.Compliance(W, k, tangential: true) / W, 1e-5);
        Near(1.0, LayerSolver.Compliance(40.0, k, tangential: false), 1e-12);
    }

    // dP/d(delta) of the parabola is the stiffness of a flat strip of the same contact
    [Theory]
    [InlineData(0.0, 0.3)]
    [InlineData(0.5, 0.3)]
    [InlineData(0.5, 1.5)]
    public void Load_and_approach_belong_to_the_stiffness(double poisson, double a)
    {
        const double Step = 1e-3;
        (double load1, double squash1) = new LayerSolver(poisson, a * (1.0 - Step), tangential: false).Parabola();
        (double load2, double squash2) = new LayerSolver(poisson, a * (1.0 + Step), tangential: false).Parabola();
        double k = new LayerSolver(poisson, a, tangential: false).StripStiffness();
        Near(k, (load2 - load1) / (squash2 - squash1), 1e-5 * k);
    }

    public static TheoryData<int> Rows => [.. Enumerable.Range(0, LayerContactTable.Poisson.Length)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_table_is_the_solution(int row)
    {
        double nu = LayerContactTable.Poisson[row];
        for (int j = 0; j < LayerContactTable.LogRatio.Length; j++)
        {
            double[] solved = Solve(nu, Math.Exp(LayerContactTable.LogRatio[j]));
            double[] table = [LayerContactTable.Load[row][j], LayerContactTable.Squash[row][j], LayerContactTable.Normal[row][j], LayerContactTable.Tangential[row][j]];
            for (int q = 0; q < table.Length; q++)
            {
                Near(solved[q], table[q], 1e-5 * solved[q]);
            }
        }
    }

    [Theory]
    [InlineData(0.0, 0.012)]
    [InlineData(0.1, 2.8)]
    [InlineData(0.3, 0.2)]
    [InlineData(0.35, 0.035)]
    [InlineData(0.41, 1.6)]
    [InlineData(0.45, 0.5)]
    [InlineData(0.47, 0.9)]
    [InlineData(0.49, 0.3)]
    [InlineData(0.49, 2.0)]
    [InlineData(0.497, 1.2)]
    [InlineData(0.497, 2.9)]
    [InlineData(0.5, 0.17)]
    [InlineData(0.5, 2.2)]
    public void Between_its_nodes_the_table_is_good_to_one_per_cent(double poisson, double a)
    {
        double[] solved = Solve(poisson, a);
        Near(solved[0], Table(LayerContactTable.Load, poisson, a), 0.01 * solved[0]);
        Near(solved[1], Table(LayerContactTable.Squash, poisson, a), 0.01 * solved[1]);
        Near(solved[2], Table(LayerContactTable.Normal, poisson, a), 0.01 * solved[2]);
        Near(solved[3], Table(LayerContactTable.Tangential, poisson, a), 0.01 * solved[3]);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.25)]
    [InlineData(0.46)]
    [InlineData(0.5)]
    public void All_four_rise_with_the_contact(double poisson)
    {
        Assert.All(new[] { LayerContactTable.Load, LayerContactTable.Squash, LayerContactTable.Normal, LayerContactTable.Tangential }, table =>
        {
            double[] row = LayerContactTable.Row(table, poisson);
            double[] values = [.. Enumerable.Range(0, 200).Select(i => LayerContactTable.At(row, 0.01 * Math.Pow(300.0, i / 199.0)))];
            Assert.All(values.Zip(values.Skip(1)), p => Assert.True(p.Second > p.First, $"{p.First} {p.Second}"));
        });
    }

    private static double[] Solve(double poisson, double a)
    {
        var normal = new LayerSolver(poisson, a, tangential: false);
        (double load, double squash) = normal.Parabola();
        return [load, squash, normal.StripStiffness(), new LayerSolver(poisson, a, tangential: true).StripStiffness()];
    }

    /// <summary>A quantity of the table at Poisson's ratio and a/h.</summary>
    internal static double Table(double[][] table, double poisson, double a) => LayerContactTable.At(LayerContactTable.Row(table, poisson), a);

    private static void Near(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance, FormattableString.Invariant($"expected {expected:R}, got {actual:R}, difference {actual - expected:G3}, allowed {tolerance:G3}"));
}
