using PushSim.Binding;
using PushSim.Powertrain;
using PushSim.Runs;
using Xunit;

namespace PushSim.Tests.Powertrain;

/// <summary>What a sensorless motor leaves out at standstill is its own doing, not that of a current limit.</summary>
public class SensorlessTests
{
    // 12.6 V across 2.5 ohm are 5 A: a limit of 0.5 A acts, none does not, though both robots get 30 % of the torque
    [Theory]
    [InlineData(double.PositiveInfinity, BindingKind.Motor, 0.0)]
    [InlineData(0.5, BindingKind.CurrentLimit, 1.0)]
    public void Torque_left_out_at_standstill_is_no_current_limit(double limit, BindingKind by, double limiting)
    {
        MotorSettings motor = TestRobots.Motor with { StandstillTorqueShare = 0.3, FullTorqueSpeed = 300.0 };
        RunResult run = Simulator.Run(TestRobots.Pull(TestRobots.FourWheels(motor: motor, limit: limit, ratio: 5.0)));
        Assert.Equal(RunStatus.Finished, run.Status);
        Assert.Equal(limiting, run.Trace.Controllers[0].Limiting[^1]);
        Assert.Equal(by, run.Answers.LimitedBy);
        Assert.Single(run.Warnings, w => w is RunWarning.Sensorless);
    }
}
