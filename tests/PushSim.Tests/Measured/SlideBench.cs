using PushSim.Chassis;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Tests.Measured;

/// <summary>Slides of a cube on a board: one friction, the mean of the slower half, and the way to the stop of the faster half. A slide that slows down evenly begins at twice its mean speed.</summary>
internal static class SlideBench
{
    private const double Gravity = 9.81;

    private const int Runs = 8;

    /// <summary>Mean way to the stop of the faster slides [m], by their own slowing down and by PushSim with the slower ones' friction.</summary>
    public static (double Measured, double Model) StoppingDistance()
    {
        MeasuredData data = MeasuredData.Read("slides");
        (double Speed, double Friction)[] slides = [.. data["mean_speed_m_s"].Zip(data["friction"]).OrderBy(s => s.First)];
        double friction = slides[..(slides.Length / 2)].Average(s => s.Friction);
        (double Speed, double Friction)[] fast = slides[(slides.Length / 2)..];
        (double Speed, double Friction)[] run = [.. Enumerable.Range(0, Runs).Select(k => fast[(int)((k + 0.5) * fast.Length / Runs)])];
        return (run.Average(s => 2.0 * s.Speed * s.Speed / (s.Friction * Gravity)), run.Average(s => Stop(2.0 * s.Speed, friction)));
    }

    private static double Stop(double speed, double friction)
    {
        var board = new TyreSettings
        {
            Name = "board", StaticFriction = friction, KineticFriction = friction, BreakawayDeflection = 1e-5, RollingRenewal = 0.0, BodyStiffness = 5e3, BodyDamping = 2.0, TreadMass = 1e-4, VerticalStiffness = 2e4, VerticalDamping = 5.0, ReferenceLoad = 0.9,
        };
        (double X, double Y)[] corners = [(0.05, 0.05), (0.05, -0.05), (-0.05, 0.05), (-0.05, -0.05)];
        var robot = new RobotSettings
        {
            Name = "cube",
            Chassis = new ChassisSettings { Mass = 0.37, Length = 0.1, Width = 0.1, Height = 0.1, CentreOfMassHeight = 0.05 },
            Wheels = [.. corners.Select((c, i) => new WheelSettings { Name = $"corner {i}", X = c.X, Y = c.Y, Radius = 0.01, SpinInertia = 1e-7, Tyre = board, IsSkid = true })],
            Drives = [],
            Controllers = [],
        };
        RunResult run = Simulator.Run(new ScenarioSettings { Name = "slide", Robot = robot, Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.Timeline, Commands = [], EndTime = 1.0, InitialSpeed = speed } });
        return run.Trace.Body.X[^1];
    }
}
