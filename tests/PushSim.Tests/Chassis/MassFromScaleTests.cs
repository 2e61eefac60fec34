using PushSim.Chassis;
using Xunit;

namespace PushSim.Tests.Chassis;

public class MassFromScaleTests
{
    [Fact]
    public void The_centre_divides_the_distance_as_the_weights() =>
        Assert.Equal(-0.01, MassFromScale.Centre(0.4, 0.6, 0.05, -0.05), 1e-15);

    // Equal wheels, h = r + (m_f - m_f') L/(m tan t): 1 kg, L 100 mm, r 25 mm, raised by 60 mm (tan t = 0.75), 500 g level, 440 g raised: 33 mm (by hand)
    [Fact]
    public void Equal_wheels_give_the_usual_formula()
    {
        TiltResult t = MassFromScale.Height(new AxlePair(0.05, 0.025, -0.05, 0.025), 0.0, 0.44, 0.06);
        Assert.Equal(0.033, t.Height, 1e-12);
        Assert.Equal(0.75, Math.Tan(t.Angle), 1e-12);

        // one per cent of the mass moves it by L/tan t / 100
        Assert.Equal(0.1 / 0.75, t.Sensitivity, 1e-12);
    }

    // A robot turned nose up about its rear axle, the loads by moments about the rear contact, written out in coordinates
    [Theory]
    [InlineData(0.025, 0.025, 0.03, 0.01)]
    [InlineData(0.035, 0.020, 0.045, -0.02)]
    [InlineData(0.020, 0.035, 0.012, 0.0)]
    public void The_test_finds_the_height_it_was_made_from(double frontRadius, double rearRadius, double height, double centre)
    {
        const double FrontX = 0.06, RearX = -0.05, Angle = 0.4;
        (double x, double z) front = Turned(FrontX - RearX, frontRadius - rearRadius);
        (double x, double z) mass = Turned(centre - RearX, height - rearRadius);

        // the front wheel stands on a block: it was at z = r_f on the floor
        double rise = front.z + rearRadius - frontRadius;
        TiltResult t = MassFromScale.Height(new AxlePair(FrontX, frontRadius, RearX, rearRadius), centre, mass.x / front.x, rise);
        Assert.Equal(height, t.Height, 1e-12);
        Assert.Equal(Angle, t.Angle, 1e-12);

        static (double X, double Z) Turned(double x, double z) => ((x * Math.Cos(Angle)) - (z * Math.Sin(Angle)), (x * Math.Sin(Angle)) + (z * Math.Cos(Angle)));
    }

    [Fact]
    public void A_rise_beyond_the_wheelbase_gives_no_height() =>
        Assert.True(double.IsNaN(MassFromScale.Height(new AxlePair(0.05, 0.025, -0.05, 0.025), 0.0, 0.44, 0.12).Height));
}
