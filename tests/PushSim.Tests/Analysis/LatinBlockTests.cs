using PushSim.Analysis.Chance;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Draws in blocks: one in each of 32 parts, free of each other between quantities and between blocks.</summary>
public class LatinBlockTests
{
    [Theory]
    [InlineData(1, 0)]
    [InlineData(7, 31_250)]
    [InlineData(7, 1L << 35)]
    public void A_block_has_one_number_in_each_part(ulong seed, long block)
    {
        double[] u = [.. Enumerable.Range(0, 32).Select(i => LatinBlock.Uniform(seed, (32 * block) + i, 5, 6))];
        Assert.Equal(Enumerable.Range(0, 32), u.Select(x => (int)(32.0 * x)).Order());
        Assert.All(u, x => Assert.InRange(x, 1e-18, 1.0 - 1e-16));
    }

    // of 4000 blocks the correlation of two quantities has a standard deviation of 1/sqrt(31 x 4000) = 0.0028 (a permutation's, Kendall and Stuart, from memory)
    [Fact]
    public void Two_quantities_do_not_go_together()
    {
        double sum = 0.0;
        for (int n = 0; n < 128_000; n++)
        {
            sum += 12.0 * (LatinBlock.Uniform(3, n, 1, 2) - 0.5) * (LatinBlock.Uniform(3, n, 3, 4) - 0.5);
        }

        Assert.InRange(sum / 128_000, -0.012, 0.012);
    }

    // each place of a block is as likely in each part: chi-square of 1023 degrees of freedom over 8192 blocks lies below 1210 with probability 0.99995 (computed here)
    [Fact]
    public void Each_place_is_in_each_part_as_often()
    {
        int[,] counts = new int[32, 32];
        for (int n = 0; n < 8192 * 32; n++)
        {
            counts[n % 32, (int)(32.0 * LatinBlock.Uniform(11, n, 1, 2))]++;
        }

        double chi = counts.Cast<int>().Sum(c => (c - 256.0) * (c - 256.0) / 256.0);
        Assert.InRange(chi, 780.0, 1210.0);
    }

    [Fact]
    public void A_pair_fights_again_with_what_is_unknown_once()
    {
        (DrawFactor once, DrawFactor each) = (new("mass", 1.0), new("charge", 1.0, isEachTime: true));
        Assert.Equal(once.Uniform(4, 17), once.Uniform(4, 17 + (3 * DrawFactor.Again)));
        Assert.NotEqual(each.Uniform(4, 17), each.Uniform(4, 17 + (3 * DrawFactor.Again)));
        Assert.NotEqual(once.Uniform(4, 17), once.Uniform(4, 17, "mass"));
        Assert.Equal(once.Uniform(4, 17), once.Uniform(4, 17, "charge"));
    }
}
