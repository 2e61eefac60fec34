using PushSim.Analysis.Chance;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>What drawn values have in common: the material of both robots, the two frictions of a tyre, the lot of a part; and what is another in each match. Correlations of 3200 draws are
/// within 4/sqrt(3200) = 0.07 of the true ones (Fisher's variance of a correlation, from memory).</summary>
public class ErrorCausesTests
{
    private const int Draws = 3200;

    // shares of variance and least correlation as ErrorCauses states them
    [Theory]
    [InlineData("tyre.soft.static_friction", "opponent.tyre.soft.static_friction", 0.7)]
    [InlineData("tyre.soft.static_friction", "tyre.soft.kinetic_friction", 0.92)]
    [InlineData("tyre.soft.kinetic_friction", "opponent.tyre.soft.kinetic_friction", 0.59)]
    [InlineData("chassis.mass", "opponent.chassis.mass", 0.0)]
    [InlineData("chassis.mass", "tyre.soft.static_friction", 0.0)]
    public void Two_robots_on_one_silicone(string one, string other, double correlation)
    {
        using ShelfPair pair = new("shelf = \"silicone\"");
        Assert.Equal(correlation, pair.Correlation(one, other, Draws), 0.07);
    }

    // own numbers of two robots are their own, whatever the tyres are called
    [Theory]
    [InlineData("tyre.soft.static_friction", "opponent.tyre.soft.static_friction", 0.0)]
    [InlineData("tyre.soft.static_friction", "tyre.soft.kinetic_friction", 0.5)]
    public void Two_robots_with_tests_of_their_own(string one, string other, double correlation)
    {
        using ShelfPair pair = new("static_friction = \"1.0 ± 0.05\"\nkinetic_friction = \"0.9 ± 0.05\"");
        Assert.Equal(correlation, pair.Correlation(one, other, Draws), 0.07);
    }

    // 19.8 of 100 draws had it above when the two were drawn apart
    [Fact]
    public void Sliding_friction_hardly_ever_lies_above_static()
    {
        using ShelfPair pair = new("static_friction = \"1.0 ± 0.15\"\nkinetic_friction = \"0.93 ± 0.14\"");
        int above = Enumerable.Range(0, Draws).Count(n => pair.Value("tyre.soft.kinetic_friction", n) > pair.Value("tyre.soft.static_friction", n));
        Assert.InRange(above, 0, 0.11 * Draws);
        Assert.All(Enumerable.Range(0, 64), n => Assert.True(pair.Source.Match(n, out _)!.Robot.Wheels.All(w => w.Tyre.KineticFriction <= w.Tyre.StaticFriction)));
    }

    [Theory]
    [InlineData("floor.friction", false)]
    [InlineData("chassis.mass", false)]
    [InlineData("tyre.soft.static_friction", false)]
    [InlineData("battery.charge", true)]
    [InlineData("opponent.battery.charge", true)]
    [InlineData("floor.dust", true)]
    [InlineData("manoeuvre.driver.reaction", true)]
    [InlineData("opponent.heading", true)]
    [InlineData("shove.offset", true)]
    public void Each_time_or_once(string key, bool isEachTime)
    {
        using ShelfPair pair = new("shelf = \"silicone\"");
        Assert.Equal(isEachTime, pair.Value(key, 5) != pair.Value(key, 5 + DrawFactor.Again));
    }
}
