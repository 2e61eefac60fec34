using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>Integrals of a clipped linear depth, computed here.</summary>
public class DepthProfileTests
{
    // The integrals over a stretch are those of its parts together: what is left beyond a cut is the profile of the rest.
    [Theory]
    [InlineData(0.02, 0.05, 0.003, 0.001, 0.03)]
    [InlineData(-0.07, -0.01, 0.0, 0.004, -0.05)]
    [InlineData(-0.03, 0.06, 0.002, -0.001, 0.01)]
    [InlineData(-0.03, 0.06, -0.001, 0.005, 0.03)]
    public void Taking_away_the_part_before_a_cut_leaves_the_part_behind_it(double s0, double s1, double a, double b, double cut)
    {
        double atCut = a + ((b - a) * (cut - s0) / (s1 - s0));
        DepthProfile<R1>.Integrate(s0, s1, a, b, out DepthProfile<R1> whole);
        DepthProfile<R1>.Integrate(s0, cut, a, atCut, out DepthProfile<R1> before);
        DepthProfile<R1>.Integrate(cut, s1, atCut, b, out DepthProfile<R1> behind);
        whole.Subtract(before);
        Assert.True(before.Area.Value > 0.0 && behind.Area.Value > 0.0);
        Assert.Equal(behind.Area.Value, whole.Area.Value, 1e-12 * behind.Area.Value);
        Assert.Equal(behind.Along.Value, whole.Along.Value, 1e-12 * Math.Abs(behind.Along.Value));
        Assert.Equal(behind.Across.Value, whole.Across.Value, 1e-12 * behind.Across.Value);
    }

    // A triangle of 2 mm at the far end of 60 mm: area a b / 2, middle at 2/3, moment across a b^2 / 6.
    [Fact]
    public void A_triangle_has_its_middle_at_two_thirds()
    {
        DepthProfile<R1>.Integrate(-0.01, 0.05, 0.0, 0.002, out DepthProfile<R1> p);
        Assert.Equal(6e-5, p.Area.Value, 1e-17);
        Assert.Equal(0.03, p.Along.Value / p.Area.Value, 1e-14);
        Assert.Equal(0.06 * 0.002 * 0.002 / 6.0, p.Across.Value, 1e-20);
    }

    // rounding may make a part larger than the whole: nothing pushes then, and nothing pulls
    [Fact]
    public void Taking_away_more_than_there_is_leaves_no_negative_area()
    {
        DepthProfile<R1>.Integrate(0.0, 0.01, 0.001, 0.001, out DepthProfile<R1> p);
        DepthProfile<R1>.Integrate(0.0, 0.01, 0.002, 0.002, out DepthProfile<R1> more);
        p.Subtract(more);
        Assert.Equal(0.0, p.Area.Value);
    }
}
