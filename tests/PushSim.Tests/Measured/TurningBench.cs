using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Tests.Measured;

/// <summary>
/// Two four-wheel robots at constant side speeds, replayed by wheels that turn at the measured speeds. Told with the data: wheel radius, track, wheelbase. Guessed: stiff tyres whose friction does not hang on
/// speed, soft ground that shears by 10 mm before it slides (Wong, Theory of Ground Vehicles, gives 10 to 25 mm for loose soils, from memory), masses in the middle, body sizes. On the hard ground friction and height of the mass are identified on the windows with 1 to 2.5 times as much way ahead as in turning; on the soft one the ratio of
/// sideways friction and the friction, on every second window. All else is judged. The yaw rate is the gyro's: windows of one step repeat each other to 2.5 % by the gyro and to 4.3 % by the lidar's pose
/// (300 kg, 21 repeats), with 0.7 % between their medians. Effective track ratio: difference of the side speeds over track times yaw rate; q: their mean over half their difference.
/// </summary>
internal static class TurningBench
{
    // Windows whose side speeds waver more than this are not steady [m/s]; slower turns have too much noise in their ratio [m/s], [rad/s].
    private const double MostSpread = 0.08;
    private const double LeastDifference = 0.3;
    private const double LeastYawRate = 0.1;

    // Windows that stand for a bin; more would only take time [1].
    private const int MostWindows = 12;

    public static readonly Lazy<(double Friction, double Height)> Hard = new(IdentifyHard);

    public static readonly Lazy<(double Lateral, double Friction)> Soft = new(IdentifySoft);

    /// <summary>Median track ratio of the windows of a bin, measured and by PushSim, on the hard ground.</summary>
    public static (double Measured, double Model) OfHard(double from, double to) => Medians(Windows("300kg", from, to), w => Ratio(w, HardRobot(Hard.Value.Friction, Hard.Value.Height)));

    /// <summary>The same on the soft ground, of the windows that were not used to identify.</summary>
    public static (double Measured, double Model) OfSoft(double from, double to) => Medians([.. Windows("46kg", from, to).Where(w => w.IsJudged)], w => Ratio(w, SoftRobot(Soft.Value.Lateral, Soft.Value.Friction)));

    private static (double Friction, double Height) IdentifyHard()
    {
        Window[] used = Thinned(Windows("300kg", 1.0, 2.5));
        return new[] { 0.7, 0.8, 0.9, 1.0, 1.1 }.SelectMany(f => new[] { 0.45, 0.5, 0.55, 0.6, 0.65 }.Select(h => (Friction: f, Height: h))).MinBy(p => used.Sum(w => Square((Ratio(w, HardRobot(p.Friction, p.Height)) / w.Ratio) - 1.0)));
    }

    private static (double Lateral, double Friction) IdentifySoft()
    {
        Window[] used = [.. new[] { (0.0, 0.15), (0.15, 1.0), (1.0, 2.0), (2.0, 4.0), (4.0, 8.0) }.SelectMany(b => Thinned([.. Windows("46kg", b.Item1, b.Item2).Where(w => !w.IsJudged)]))];
        return new[] { 1.22, 1.24, 1.26, 1.28, 1.3 }.SelectMany(r => new[] { 0.07, 0.1, 0.14, 0.2 }.Select(f => (Lateral: r, Friction: f))).MinBy(p => used.Sum(w => Math.Abs((Ratio(w, SoftRobot(p.Lateral, p.Friction)) / w.Ratio) - 1.0)));
    }

    private static RobotSettings HardRobot(double friction, double height) => Robot(300.0, 0.30, 1.08, 0.914, height, friction, 1.0, 1e-3);

    // its mass stands low; a third of the wheel's radius either way makes no difference at its low speeds
    private static RobotSettings SoftRobot(double lateral, double friction) => Robot(46.0, 0.165, 0.571, 0.512, 0.15, friction, lateral, 1e-2);

    private static RobotSettings Robot(double mass, double radius, double track, double wheelbase, double height, double friction, double lateral, double give)
    {
        double load = mass * 9.81 / 4.0;
        var tyre = new TyreSettings
        {
            Name = "air", StaticFriction = friction, KineticFriction = friction, LateralFrictionRatio = lateral, BreakawayDeflection = give, RollingRenewal = 1.0 / (0.5 * radius), ReferenceLoad = load, BodyStiffness = 150.0 * load,
            BodyDamping = 2.0 * Math.Sqrt(150.0 * load * 2e-3 * mass), TreadMass = 2e-3 * mass, VerticalStiffness = 150.0 * load, VerticalDamping = 2.0,
        };
        (string Name, double X, double Y)[] places = [("front left", 0.5, 0.5), ("front right", 0.5, -0.5), ("rear left", -0.5, 0.5), ("rear right", -0.5, -0.5)];
        var chassis = new ChassisSettings { Mass = mass, Length = 1.3 * wheelbase, Width = 0.8 * track, Height = 0.4 * track, CentreOfMassHeight = height };
        return new RobotSettings
        {
            Name = "turner",
            Chassis = chassis,

            // an underside far above the ground: nothing of the body rubs
            Outline = OutlineSettings.Box(chassis, 0.3 * track, chassis.Height),
            Wheels = [.. places.Select(p => new WheelSettings { Name = p.Name, X = p.X * wheelbase, Y = p.Y * track, Radius = radius, SpinInertia = 0.01 * mass * radius * radius, Tyre = tyre })],
            Controllers = [],
            Drives = [new DriveSettings { Name = "left", Wheels = [(0, 1.0), (2, 1.0)] }, new DriveSettings { Name = "right", Wheels = [(1, 1.0), (3, 1.0)] }],
        };
    }

    private static double Ratio(Window w, RobotSettings robot)
    {
        const double rise = 0.8, end = 3.0;
        double radius = robot.Wheels[0].Radius, track = 2.0 * robot.Wheels[0].Y, mean = 0.5 * (w.Left + w.Right);
        var scenario = new ScenarioSettings
        {
            Name = "turn", Robot = robot, Numerics = NumericsSettings.OfDraws,
            Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.Timeline, Commands = [], EndTime = end, InitialSpeed = mean },
            GivenSpeeds = [new GivenSpeed(0, [(0.0, mean / radius), (rise, w.Left / radius)]), new GivenSpeed(1, [(0.0, mean / radius), (rise, w.Right / radius)])],
        };
        RunResult run = Simulator.Run(scenario);
        int from = run.Trace.IndexAt(0.8 * end);

        // a robot that hops on its springs is none of these
        return run.Status != RunStatus.Finished || run.Answers.Chatter is not null ? double.PositiveInfinity : (w.Right - w.Left) / (track * run.Trace.Body.YawRate.Mean(from, run.Time.Length - 1));
    }

    private static (double Measured, double Model) Medians(Window[] windows, Func<Window, double> model) => (Median(windows.Select(w => w.Ratio)), Median(Thinned(windows).Select(model)));

    private static Window[] Windows(string robot, double from, double to)
    {
        MeasuredData data = MeasuredData.Read("turning-" + robot);
        double track = robot == "300kg" ? 1.08 : 0.571;
        return
        [
            .. Enumerable.Range(0, data.Rows)
                .Where(i => data["side_speed_sd_m_s"][i] <= MostSpread && Math.Abs(data["gyro_rad_s"][i]) >= LeastYawRate && Math.Abs(data["right_speed_m_s"][i] - data["left_speed_m_s"][i]) >= LeastDifference)
                .Select((i, n) => new Window(data["left_speed_m_s"][i], data["right_speed_m_s"][i], (data["right_speed_m_s"][i] - data["left_speed_m_s"][i]) / (track * data["gyro_rad_s"][i]), n % 2 == 1))
                .Where(w => w.Q >= from && w.Q < to).OrderBy(w => w.Ratio),
        ];
    }

    // evenly through the windows in order of their ratio
    private static Window[] Thinned(Window[] windows, int most = MostWindows) => windows.Length <= most ? windows : [.. Enumerable.Range(0, most).Select(k => windows[(int)((k + 0.5) * windows.Length / most)])];

    private static double Median(IEnumerable<double> values)
    {
        double[] v = [.. values.Order()];
        return v.Length % 2 == 1 ? v[v.Length / 2] : 0.5 * (v[(v.Length / 2) - 1] + v[v.Length / 2]);
    }

    private static double Square(double v) => v * v;

    private sealed record Window(double Left, double Right, double Ratio, bool IsJudged)
    {
        public double Q => Math.Abs(Left + Right) / Math.Abs(Right - Left);
    }
}
