using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Ground that two robots nose to nose gain and lose; sums by hand.</summary>
public class GroundCountTests
{
    // noses meet at 0.1 m, the contact is pushed on by 0.2 m
    [Fact]
    public void Ground_is_the_way_of_the_contact()
    {
        GroundCount ground = default;
        ground.Next(null, -0.05, 0.0, -0.25, 0.0);
        Assert.False(ground.HasTouched);
        ground.Next((0.1, 0.0), 0.0, 0.0, -0.2, 0.0);
        Assert.Equal(0.0, ground.Gained);
        ground.Next((0.3, 0.0), 0.2, 0.0, -0.4, 0.0);
        Assert.Equal(0.2, ground.Gained, 1e-15);
    }

    // struck off: the second robot slides on by 0.1 m while the first stands, so that the middle goes 0.05 m further
    [Fact]
    public void Ground_counts_to_the_end_and_not_to_the_last_touch()
    {
        GroundCount ground = default;
        ground.Next((0.1, 0.0), 0.0, 0.0, -0.2, 0.0);
        ground.Next((0.15, 0.0), 0.05, 0.0, -0.25, 0.0);
        ground.Next(null, 0.05, 0.0, -0.35, 0.0);
        Assert.Equal(0.1, ground.Gained, 1e-15);
    }

    // both backed off by 0.02 m and met again where they parted: the gap in between leaves no trace
    [Fact]
    public void A_bounce_leaves_the_way_of_the_contact()
    {
        GroundCount ground = default;
        ground.Next((0.1, 0.0), 0.0, 0.0, -0.2, 0.0);
        ground.Next(null, -0.02, 0.0, -0.22, 0.0);
        Assert.Equal(0.0, ground.Gained, 1e-15);
        ground.Next((0.14, 0.0), 0.04, 0.0, -0.24, 0.0);
        Assert.Equal(0.04, ground.Gained, 1e-15);
    }

    // the pair has turned by half a turn: the first robot drives the second towards negative x and gains
    [Fact]
    public void A_pair_that_has_turned_gains_the_other_way()
    {
        GroundCount ground = default;
        ground.Next((0.1, 0.0), 0.2, 0.0, 0.0, 0.0);
        ground.Next((0.0, 0.0), 0.1, 0.0, 0.1, 0.0);
        Assert.Equal(0.1, ground.Gained, 1e-15);
    }
}
