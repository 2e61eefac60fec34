using PushSim.Analysis.Fit;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Readings sorted by tyre, with loads and orders of their own.</summary>
public class PullTestsTests
{
    [Fact]
    public void Each_tyre_is_fitted_in_the_order_in_which_it_came()
    {
        PullTests tests = Of(("soft", new(9.0)), ("hard", new(3.0)), ("soft", new(11.0)));
        IReadOnlyList<TyreFit> fits = tests.Fit(GripLoad.Fixed(10.0));
        Assert.Equal(["soft", "hard"], fits.Select(f => f.Name));
        Assert.Equal([1.0, 0.3], fits.Select(f => f.KineticFriction!.Value.Value));
        Assert.Equal([1.0, 3.0], fits[0].Order);
    }

    [Fact]
    public void Between_tables_no_order_is_known() => Assert.Empty(Of(("soft", new(9.0)), ("soft", new(11.0))).Fit(GripLoad.Fixed(10.0), isOneTable: false)[0].Order);

    [Fact]
    public void Numbers_of_pulls_put_readings_in_order()
    {
        TyreFit fit = Of(("soft", new PullReading(9.0) { Pull = 2.0 }), ("soft", new PullReading(11.0) { Pull = 1.0 })).Fit(GripLoad.Fixed(10.0))[0];
        Assert.Equal([1.0, 2.0], fit.Order);
        Assert.Equal([11.0, 9.0], fit.Forces);
    }

    // 10 N on 10 N and 20 N on 20 N are one friction; brought to the mean load of 15 N each reads 15 N
    [Fact]
    public void Loads_of_their_own_count_before_the_given_one()
    {
        PullTests tests = Of(("soft", new(10.0, Load: 10.0)), ("soft", new(20.0, Load: 20.0)));
        Assert.True(tests.HasOwnLoads);
        Assert.Equal(1, tests.ReadingsOfOtherLoad(10.0));
        TyreFit fit = tests.Fit(GripLoad.Fixed(99.0))[0];
        Assert.Equal(1.0, fit.KineticFriction!.Value.Value, 1e-12);
        Assert.Equal(15.0, fit.Load, 1e-12);
    }

    [Fact]
    public void A_reading_without_a_load_needs_one() => Assert.False(Of(("soft", new(10.0, Load: 10.0)), ("soft", new(20.0))).HasOwnLoads);

    // a robot of about 1 kg with driven wheels in front, pulling on a tether behind it at 1 m
    [Theory]
    [InlineData(0.1, false)]
    [InlineData(50.0, true)]
    public void A_force_that_lifts_the_tested_tyres_is_told(double force, bool lifts)
    {
        PushSim.Simulation.RobotSettings robot = TestRobots.FourWheels();
        robot = robot with { Drives = [.. robot.Drives.Select(d => d with { Wheels = [.. d.Wheels.Where(w => robot.Wheels[w.Wheel].X > 0.0)] })] };
        Assert.Equal(lifts ? force : null, Of(("soft", new(force))).ForceThatLifts(GripLoad.Of(robot, 1.0, isDrag: false)));
    }

    private static PullTests Of(params (string Tyre, PullReading Reading)[] readings)
    {
        var tests = new PullTests();
        foreach ((string tyre, PullReading reading) in readings)
        {
            tests.Add(tyre, reading);
        }

        return tests;
    }
}
