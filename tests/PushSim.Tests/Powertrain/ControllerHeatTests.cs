using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Powertrain;

/// <summary>
/// A controller that holds a current I loses R I^2 in its switches: T = T_air + R I^2 R_th (1 - exp(-t / (R_th C))). The closed form of a body of one temperature
/// (Incropera, DeWitt, Fundamentals of Heat and Mass Transfer, lumped capacitance); numbers computed here.
/// </summary>
public class ControllerHeatTests
{
    private const double Start = 0.1;
    private const double Limit = 0.5;
    private const double OnResistance = 0.8;
    private const double Air = 31.0;

    [Theory]
    [InlineData(40.0, 0.01)]
    [InlineData(60.0, 0.02)]
    public void A_held_current_warms_a_controller_by_the_closed_form(double resistance, double capacity)
    {
        RobotSettings robot = TestRobots.FourWheels(limit: Limit);
        robot = robot with
        {
            Controllers = [.. robot.Controllers.Select((c, i) => i == 1 ? c with { OnResistance = OnResistance, ThermalResistance = resistance, HeatCapacity = capacity } : c)],
        };
        ScenarioSettings s = TestRobots.Scenario(robot, ManoeuvreKind.Launch, 1.0, 0.0, 0.6, Start);
        RunResult run = Simulator.Run(s with { Floor = s.Floor with { AirTemperature = Air }, Numerics = s.Numerics with { Tolerance = 1e-7 } });
        Series temperature = run.Trace.Controllers[1].Temperature!;
        Series current = run.Trace.Controllers[1].Current;
        for (int i = 0; i < run.Time.Length; i++)
        {
            double time = run.Time[i] - Start;
            if (Math.Abs(time) > 1e-6)
            {
                Assert.Equal(time > 0.0 ? Limit : 0.0, current[i], 1e-9);
            }

            double rise = time > 0.0 ? OnResistance * Limit * Limit * resistance * (1.0 - Math.Exp(-time / (resistance * capacity))) : 0.0;
            Assert.Equal(Air + rise, temperature[i], 1e-4);
        }

        Assert.True(temperature[^1] > Air + 3.0);
        Assert.Null(run.Trace.Controllers[0].Temperature);
    }
}
