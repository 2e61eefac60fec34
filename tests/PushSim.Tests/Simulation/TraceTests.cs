using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>What a run records, and that it costs nothing while it runs.</summary>
public class TraceTests
{
    private static readonly TyreSettings s_worn = TestRobots.SoftTyre with { SpecificWear = 5e-10, FoulingDistance = 2.0 };

    private static RobotSettings Rich => TestRobots.FourWheels(s_worn) is var robot
        ? robot with { Controllers = [.. robot.Controllers.Select((c, i) => i == 1 ? c with { ThermalResistance = 10.0, HeatCapacity = 5.0 } : c)] } : null!;

    // the order of the columns of a history, part by part; the motors of this robot have no heat of their own
    [Fact]
    public void All_lists_every_series_of_every_part_in_the_order_of_a_history()
    {
        Trace trace = Simulator.Run(TestRobots.Pull(Rich) with { Floor = new() { Dust = 1.0 } }).Trace;
        string[] body = ["x_m", "y_m", "heading_rad", "speed_m_per_s", "lateral_speed_m_per_s", "yaw_rate_rad_per_s", "acceleration_m_per_s2", "heave_m", "pitch_rad", "roll_rad", "scrub_moment_n_m"];
        string[] wheel = ["load_n", "longitudinal_force_n", "lateral_force_n", "surface_speed_m_per_s", "tread_slip_speed_m_per_s", "friction", "sliding", "wear_m3", "friction_work_j", "fouling"];
        string[] battery = ["battery_voltage_v", "battery_current_a", "battery_open_circuit_voltage_v", "charge_used_a_s"];
        string[] places = ["front_left", "front_right", "rear_left", "rear_right"];
        Assert.Equal(
            [
                .. body, "tether_force_n", .. places.SelectMany(p => wheel.Select(k => $"wheel_{p}_{k}")), .. battery,
                .. places.SelectMany((p, i) => new[] { $"command_{p}", $"controller_{p}_current_a", $"controller_{p}_limiting" }.Concat(i == 1 ? [$"controller_{p}_temperature_degc"] : [])),
                .. places.SelectMany(p => new[] { $"motor_{p}_1_current_a", $"motor_{p}_1_speed_rpm" }),
            ],
            trace.All.Select(s => s.Key).Where(k => !k.Contains("_winding_", StringComparison.Ordinal) && !k.Contains("_case_", StringComparison.Ordinal)));
        Assert.Equal(("N", "wheel_front_left_load_n"), (trace.Wheels[0].Load.Unit, trace.Wheels[0].Load.Key));
        Assert.Equal(("rear right 1", 3, 0), (trace.Motors[3].Name, trace.Motors[3].Drive, trace.Motors[3].Motor));
        Assert.All(trace.All, s => Assert.Equal(trace.Time.Length, s.Length));
    }

    [Fact]
    public void What_a_robot_does_not_have_is_null()
    {
        RunResult run = Simulator.Run(TestRobots.Shove(TestRobots.FourWheels(), Rich, end: 0.2));
        Assert.Null(run.Trace.Tether);
        Assert.Null(run.Trace.Wheels[0].Wear);
        Assert.Null(run.Trace.Wheels[0].Fouling);
        Assert.NotNull(run.Opponent!.Trace.Wheels[0].Wear);
        Assert.NotNull(run.Trace.Contact);
        Assert.Null(run.Opponent.Trace.Contact);
        Assert.Same(run.Trace.Time, run.Opponent.Trace.Time);
    }

    [Fact]
    public void Of_a_run_that_could_not_start_there_is_nothing()
    {
        Assert.Empty(Trace.Empty.All);
        Assert.Empty(Trace.Empty.Time);
        Assert.Empty(Trace.Empty.Body.X);
        Assert.Empty(Trace.Empty.Wheels);
    }

    [Fact]
    public void A_sample_allocates_nothing()
    {
        var scene = new SceneSystem(SceneBuilder.InCanonicalOrder(TestRobots.Shove(Rich, Rich)));
        var touch = new TouchSum(scene);
        double[] y = scene.InitialState();
        var tape = new TraceTape(scene.Robots[0], y, scene.FirstExplicit(0), 2, touch);
        var trace = new Trace(Trace.TimeOf([0.0, 1.0]), tape);
        touch.Read();
        tape.Sample(0);
        long before = GC.GetAllocatedBytesForCurrentThread();
        touch.Read();
        tape.Sample(1);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.Equal(y[scene.FirstExplicit(0)], trace.Body.X[1]);
    }
}
