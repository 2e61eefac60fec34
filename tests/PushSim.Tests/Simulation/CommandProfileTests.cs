using PushSim.Powertrain;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>The command that a controller follows: the deadband first, then the slew limit (model, driver and controller).</summary>
public class CommandProfileTests
{
    // 2 % lies in the deadband of 5 %: the slewed command starts from zero at 1 s, not from 2 %
    [Fact]
    public void A_command_within_the_deadband_does_not_charge_the_slew_limit()
    {
        CommandProfile profile = Profile(slew: 2.0, new CommandPoint(0.1, 0.02, 0.0), new CommandPoint(1.0, 1.0, 0.0));
        Assert.True(profile.At(0.9).IsZero);
        (double value, double slope, bool isZero) = profile.At(1.1);
        Assert.Equal((0.2, 2.0, false), (Math.Round(value, 12), slope, isZero));
    }

    // a slewed command on its way to zero is followed all the way down
    [Fact]
    public void A_slewed_command_falls_through_the_deadband_to_zero()
    {
        CommandProfile profile = Profile(slew: 1.0, new CommandPoint(0.0, 0.5, 0.0), new CommandPoint(1.0, 0.0, 0.0));
        Assert.Equal(0.02, profile.At(1.48).Value, 1e-12);
        Assert.False(profile.At(1.48).IsZero);
        Assert.True(profile.At(1.51).IsZero);
    }

    [Fact]
    public void A_ramp_jumps_to_the_edge_of_the_deadband()
    {
        CommandProfile profile = Profile(double.PositiveInfinity, new CommandPoint(0.0, 0.0, 0.0), new CommandPoint(2.0, 0.5, 0.0, Ramp: true));
        Assert.True(profile.At(0.19).IsZero);
        Assert.Equal(0.0525, profile.At(0.21).Value, 1e-12);
    }

    // 1 - 3 (1/3 s) leaves a rounding at most of these starts; a controller coasts or locks only at zero itself
    [Theory]
    [InlineData(3.0, 0.3)]
    [InlineData(3.0, 0.7)]
    [InlineData(7.0, 0.5)]
    [InlineData(12.0, 1.2)]
    public void A_slewed_command_ends_at_zero_itself(double slew, double stop)
    {
        CommandProfile profile = Profile(slew, new CommandPoint(0.0, 1.0, 0.0), new CommandPoint(stop, 0.0, 0.0));
        Assert.Equal((0.0, 0.0, true), profile.At(2.5));
    }

    // a ramp from 0 to 1 in the first second, 0.5 s later
    [Fact]
    public void A_delay_moves_the_start_of_a_first_ramp_too()
    {
        var manoeuvre = new ManoeuvreSettings
        {
            Kind = ManoeuvreKind.Timeline,
            Commands = [new CommandPoint(1.0, 1.0, 0.0, Ramp: true)],
            EndTime = 3.0,
            Driver = new DriverSettings { ReactionDelay = 0.5 },
        };
        var profile = new CommandProfile(manoeuvre, new ControllerSettings { Name = "left", Motors = [], Side = CommandSide.Left });
        Assert.True(profile.At(0.4).IsZero);
        Assert.Equal(0.25, profile.At(0.75).Value, 1e-12);
        Assert.Equal(1.0, profile.At(1.6).Value, 1e-12);
    }

    private static CommandProfile Profile(double slew, params CommandPoint[] points) => new(
        new ManoeuvreSettings { Kind = ManoeuvreKind.Timeline, Commands = points, EndTime = 3.0 },
        new ControllerSettings { Name = "left", Motors = [], Side = CommandSide.Left, Deadband = 0.05, SlewLimit = slew });
}
