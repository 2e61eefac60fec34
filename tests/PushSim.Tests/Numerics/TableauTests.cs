using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>
/// Conditions on the method data, for every table the engine knows. Order conditions of additive pairs: one per rooted
/// tree whose edges are coloured with the half (explicit or implicit) they pass through, so both halves and their coupling.
/// Source of the theory: Hairer, Norsett, Wanner, Solving Ordinary Differential Equations I, sections II.2 and II.15 (from memory).
/// </summary>
public class TableauTests
{
    public static TheoryData<string> Names => new(AdditiveTableau.All.Select(t => t.Name));

    public static TheoryData<string, string> Conditions => Rows(t => t.Order);

    public static TheoryData<string, string> EmbeddedConditions => Rows(t => t.EmbeddedOrder);

    [Fact]
    public void All_three_pairs_are_known() =>
        Assert.Equal(["ARK3(2)", "ARK4(3)", "ARK5(4)"], AdditiveTableau.All.Select(t => t.Name));

    [Theory]
    [InlineData("ark4(3)", 6, 4, 3)]
    [InlineData("ARK3(2)", 4, 3, 2)]
    [InlineData("ARK5(4)", 8, 5, 4)]
    public void By_name_finds_whatever_the_case(string name, int stages, int order, int embedded)
    {
        AdditiveTableau tableau = AdditiveTableau.ByName(name);
        Assert.Equal((stages, order, embedded), (tableau.Stages, tableau.Order, tableau.EmbeddedOrder));
    }

    [Fact]
    public void By_name_of_an_unknown_pair_names_the_known_ones() =>
        Assert.Contains("ARK4(3)", Assert.Throws<ArgumentException>(() => AdditiveTableau.ByName("RK9")).Message);

    [Theory]
    [MemberData(nameof(Names))]
    public void Weights_sum_to_one(string name)
    {
        AdditiveTableau t = AdditiveTableau.ByName(name);
        Assert.InRange(CompensatedSum(t.B) - 1.0, -1e-15, 1e-15);
        Assert.InRange(CompensatedSum(t.BHat) - 1.0, -1e-15, 1e-15);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Rows_sum_to_the_nodes_in_both_halves(string name)
    {
        AdditiveTableau t = AdditiveTableau.ByName(name);
        for (int i = 0; i < t.Stages; i++)
        {
            Assert.InRange(CompensatedSum(t.AE.Slice(i * t.Stages, t.Stages)) - t.C[i], -1e-14, 1e-14);
            Assert.InRange(CompensatedSum(t.AI.Slice(i * t.Stages, t.Stages)) - t.C[i], -1e-14, 1e-14);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Shape_is_explicit_and_singly_diagonal(string name)
    {
        AdditiveTableau t = AdditiveTableau.ByName(name);
        for (int i = 0; i < t.Stages; i++)
        {
            Assert.Equal(i == 0 ? 0.0 : t.Gamma, t.AI[(i * t.Stages) + i]);
            for (int j = i; j < t.Stages; j++)
            {
                Assert.Equal(0.0, t.AE[(i * t.Stages) + j]);
                Assert.True(j == i || t.AI[(i * t.Stages) + j] == 0.0);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Implicit_half_is_stiffly_accurate_to_the_bit(string name)
    {
        AdditiveTableau t = AdditiveTableau.ByName(name);
        Assert.Equal(t.B.ToArray(), t.AI[^t.Stages..].ToArray());
        Assert.Equal(1.0, t.C[^1]);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Implicit_half_damps_an_infinitely_stiff_decay(string name) =>
        Assert.InRange(Magnitude(AdditiveTableau.ByName(name), new(-1e9, 0.0)), 0.0, 1e-7);

    [Theory]
    [MemberData(nameof(Names))]
    public void Implicit_half_is_stable_on_the_imaginary_axis(string name)
    {
        AdditiveTableau t = AdditiveTableau.ByName(name);
        for (double w = 0.01; w < 1e4; w *= 1.05)
        {
            Assert.InRange(Magnitude(t, new(0.0, w)), 0.0, 1.0 + 1e-12);
        }
    }

    [Theory]
    [MemberData(nameof(Conditions))]
    public void Advancing_weights_meet_the_condition(string name, string tree)
    {
        AdditiveTableau t = AdditiveTableau.ByName(name);
        Assert.InRange(ColouredTree.Parse(tree).Defect(t, t.B), -2e-14, 2e-14);
    }

    [Theory]
    [MemberData(nameof(EmbeddedConditions))]
    public void Embedded_weights_meet_the_condition(string name, string tree)
    {
        AdditiveTableau t = AdditiveTableau.ByName(name);
        Assert.InRange(ColouredTree.Parse(tree).Defect(t, t.BHat), -2e-14, 2e-14);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Embedded_weights_are_not_of_higher_order(string name)
    {
        // A difference that vanished one order higher would estimate nothing.
        AdditiveTableau t = AdditiveTableau.ByName(name);
        double worst = ColouredTree.OfSize(t.EmbeddedOrder + 1).Max(tree => Math.Abs(tree.Defect(t, t.BHat)));
        Assert.InRange(worst, 1e-3, 0.1);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 2)]
    [InlineData(3, 7)]
    [InlineData(4, 26)]
    [InlineData(5, 107)]
    public void Number_of_coloured_trees_is_right(int size, int count) =>
        Assert.Equal(count, ColouredTree.OfSize(size).Count); // rooted trees with edges of two colours: 1, 2, 7, 26, 107 (from memory)

    private static TheoryData<string, string> Rows(Func<AdditiveTableau, int> order)
    {
        TheoryData<string, string> rows = new();
        foreach (AdditiveTableau t in AdditiveTableau.All)
        {
            for (int size = 1; size <= order(t); size++)
            {
                foreach (ColouredTree tree in ColouredTree.OfSize(size))
                {
                    rows.Add(t.Name, tree.ToString());
                }
            }
        }

        return rows;
    }

    // |R(z)| of the implicit half on y' = z y.
    private static double Magnitude(AdditiveTableau t, System.Numerics.Complex z)
    {
        System.Numerics.Complex[] k = new System.Numerics.Complex[t.Stages];
        System.Numerics.Complex y = 1.0;
        for (int i = 0; i < t.Stages; i++)
        {
            System.Numerics.Complex sum = 1.0;
            for (int j = 0; j < i; j++)
            {
                sum += t.AI[(i * t.Stages) + j] * k[j];
            }

            k[i] = z * sum / (1.0 - (z * t.AI[(i * t.Stages) + i]));
            y += t.B[i] * k[i];
        }

        return System.Numerics.Complex.Abs(y);
    }

    private static double CompensatedSum(ReadOnlySpan<double> values)
    {
        (double sum, double rest) = (0.0, 0.0);
        foreach (double value in values)
        {
            double next = sum + value;
            rest += Math.Abs(sum) >= Math.Abs(value) ? sum - next + value : value - next + sum;
            sum = next;
        }

        return sum + rest;
    }
}
