using PushSim.Numerics;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Tyres;

/// <summary>The closed forms of a bristle's stage against the equations they solve.</summary>
public class BristleStageTests
{
    // m (1 + g K + g A alpha(m)) = |q| with alpha linear from 0 at low to 1 at zMax, solved here by bisection
    [Theory]
    [InlineData(0.3)]
    [InlineData(1.05)]
    [InlineData(1.3)]
    [InlineData(2.0)]
    [InlineData(6.0)]
    [InlineData(30.0)]
    public void The_stage_solves_its_equation_on_every_branch(double length)
    {
        foreach ((double g, double slide, double roll, double low) in new[] { (0.1, 5.0, 0.0, 0.7), (0.1, 5.0, 3.0, 0.7), (1.0, 20.0, 2.0, 0.5), (0.01, 1.0, 0.0, 0.95), (0.5, 0.0, 4.0, 0.7) })
        {
            double below = 0.0, above = length;
            for (int i = 0; i < 200; i++)
            {
                double m = 0.5 * (below + above);
                bool isLow = m * (1.0 + (g * roll) + (g * slide * Math.Clamp((m - low) / (1.0 - low), 0.0, 1.0))) < length;
                (below, above) = isLow ? (m, above) : (below, m);
            }

            // lengths in another unit change neither factor nor switch
            foreach (double unit in new[] { 1.0, 3e-4 })
            {
                R1 f = BristleLaw.Switched<R1>(unit * length, g, slide, 1.0 + (g * roll), unit, unit * low, 1.0 / (unit * (1.0 - low)), out R1 alpha);
                Assert.Equal(below, f.Value * length, 1e-12 * Math.Max(1.0, length));
                Assert.Equal(Math.Clamp((below - low) / (1.0 - low), 0.0, 1.0), alpha.Value, 1e-10);
            }
        }
    }

    // sigma1 / (1 + sigma1 a / (4 sigma0)): of 8 with sigma1/(4 sigma0) = 0.5 and a = 6, 8/4. Computed here.
    [Theory]
    [InlineData(0.0, 8.0)]
    [InlineData(6.0, 2.0)]
    [InlineData(14.0, 1.0)]
    public void Damping_is_limited_by_the_decay(double decay, double limited) =>
        Assert.Equal(limited, BristleLaw.LimitedDamping<R1>(8.0, 0.5, decay).Value, 1e-14);
}
