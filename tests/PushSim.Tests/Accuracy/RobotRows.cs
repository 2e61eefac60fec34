using PushSim.Chassis;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests.Analysis.Limits;
using PushSim.Tests.Contact;
using PushSim.Tests.Simulation;

namespace PushSim.Tests.Accuracy;

/// <summary>Whole robots and vehicles: launch, stop, turn, contact.</summary>
internal static class RobotRows
{
    private const string Lecture = "lecture slides on vehicle dynamics (slideshare.net, p3vehicle-dynamics); digits computed here";
    private const string Example = "textbook example 31.7 on a reference site (what-when-how.com, automobile); digits computed here";
    private const string Jazar = "Jazar, Vehicle Dynamics, ch. 2, exercise 10; digits computed here";
    private const string Closed = "closed form, computed here";
    private const string Wong = "Wong, Theory of Ground Vehicles, sec. 7.3.3, read second-hand; table computed here";
    private const double Friction = 0.8, Mass = 1.5, Weight = Mass * 9.81;

    private static readonly Lazy<(double Distance, double Time)> s_published = new(() => ExternalSlidingTests.LockedSlide(28.5, 9.81, 4.6315));
    private static readonly Lazy<(double Distance, double Time)> s_georgia = new(() => ExternalSlidingTests.LockedSlide(24.6, 9.80, 4.13776));
    private static readonly Lazy<(List<(double T, double[] Y)> Run, int Grip)> s_ball = new(() => ExternalSlidingTests.SlideToRoll(8.5, 0.21));
    private static readonly Lazy<RunResult> s_spin = new(() => ExternalSkidSteerTests.FourPoints(0.10, 0.16, Friction, Mass));
    private static readonly Lazy<RunResult> s_launch = new(() => ExternalRobots.Run(ExternalTractionTests.Light(double.PositiveInfinity, 0.3, 1.0, 0.0)));
    private static readonly Lazy<RunResult> s_limited = new(() => ExternalRobots.Run(ExternalTractionTests.Light(2.0, 0.6, 1.0, 0.0)));
    private static readonly Lazy<RunResult> s_brake = new(() => ExternalRobots.Run(ExternalTractionTests.Light(double.PositiveInfinity, 3.0, 0.0, 2.0)));

    private static readonly double s_diagonal = double.Hypot(0.10, 0.16);

    // a run holds 0.2 %, the estimate of the limits 2e-5
    private static AccuracyRow Run(string what, double expected, string source, Func<double> measure) => new(what, "m/s^2", expected, 0.002 * expected, source, measure);

    private static AccuracyRow Estimate(string what, double expected, string source, Func<double> measure) => new(what, "m/s^2", expected, 2e-5 * expected, source, measure);

    private static AccuracyRow Pivot(double length, double ratio, double moment, bool isMoment) => isMoment
        ? new($"pivot of tracks, l/B {length:0.0}, by four wheels a side: moment over mu W l/4", "1", moment, 0.02 * moment, Wong, () => ExternalTrackTests.Pivot(length).Moment)
        : new($"pivot of tracks, l/B {length:0.0}, by four wheels a side: track ratio", "1", ratio, 0.02 * ratio, Wong, () => ExternalTrackTests.Pivot(length).Ratio);

    private static double Cotangent(double degrees) => 1.0 / WedgeTests.Ratio(degrees * Math.PI / 180.0, 0.3, 0.0, 0.2);

    public static readonly AccuracyRow[] All =
    [
        Run("launch, front drive, 1550 kg: acceleration in the run", 3.21680, Jazar, () => ExternalTractionTests.Acceleration(1550, 2.62, 0.72, 1.310, 0.8, true, false)),
        Run("launch, rear drive, 1800 kg: acceleration in the run", 4.23085, Lecture, () => ExternalTractionTests.Acceleration(1800, 2.60, 0.70, 1.300, 0.7, false, true)),
        Estimate("launch, front drive, centre of mass ahead: acceleration, limits", 2.88883, Example, () => ExternalLimitTests.Car(1500, 2.75, 0.85, 1.150, 0.6, true, false, 9.81).Acceleration(1.0).Value),
        Estimate("launch, rear drive, centre of mass ahead: acceleration, limits", 3.02183, Example, () => ExternalLimitTests.Car(1500, 2.75, 0.85, 1.150, 0.6, false, true, 9.81).Acceleration(1.0).Value),
        Estimate("launch, all wheels, 1550 kg: acceleration, limits", 7.848, Jazar, () => ExternalLimitTests.Car(1550, 2.62, 0.72, 1.310, 0.8, true, true, 9.81).Acceleration(1.0).Value),
        Estimate("launch, 48 % on driven wheels, no load transfer: acceleration, limits", 2.8224, "a tutor's answer (wyzant.com, answer 5249; printed 2.82); digits computed here", () => ExternalLimitTests.Car(1500, 2.60, 0.0, 1.352, 0.6, true, false, 9.8).Acceleration(1.0).Value),
        new("motor and 1.36 kg without slip: speed at 0.2 s", "m/s", 1.874508159, 0.0005 * 1.8745, Closed, () => s_launch.Value.At(t => t.Body.Speed, 0.2)),
        new("motor and 1.36 kg without slip: way at 0.2 s", "m", 0.217600335, 0.001 * 0.2176, Closed, () => s_launch.Value.At(t => t.Body.X, 0.2)),
        new("motor and 1.36 kg without slip: way at 0.2 s, limits", "m", 0.217600335, 1e-8, Closed, () => ExternalLimitTests.Light(double.PositiveInfinity).DistanceAt(0.2).Value),
        new("the same with a current limit: speed at 0.5 s", "m/s", 2.536365538, 0.0005 * 2.5364, Closed, () => s_limited.Value.At(t => t.Body.Speed, 0.5)),
        new("shorted motors from 2 m/s: way to the stop", "m", 0.408, 0.001 * 0.408, Closed, () => s_brake.Value.Trace.Body.X[^1]),
        new("locked wheels from 28.5 m/s: way", "m", 51.7489, 0.0005 * 51.7489, "published exercise (science-mathematics.com, Physics 201107, 9088; printed 51.7); digits computed here", () => s_published.Value.Distance),
        new("locked wheels from 24.6 m/s: way", "m", 38.5944, 0.0005 * 38.5944, "HyperPhysics, Georgia State University, exercise; digits computed here", () => s_georgia.Value.Distance),
        new("locked wheels from 24.6 m/s: time", "s", 3.13776, 0.001 * 3.13776, "HyperPhysics, Georgia State University, exercise; digits computed here", () => s_georgia.Value.Time),
        new("sliding ball of 8.5 m/s: time until it rolls", "s", 1.18006, 0.002 * 1.18006, "Halliday, Resnick, from memory (1.2); digits computed here", () => s_ball.Value.Run[s_ball.Value.Grip].T),
        new("sliding ball of 8.5 m/s: way until it rolls", "m", 8.59761, 0.002 * 8.59761, "Halliday, Resnick, from memory (8.6); digits computed here", () => s_ball.Value.Run[s_ball.Value.Grip].Y[StateLayout.X]),
        new("sliding ball of 8.5 m/s: speed when it rolls", "m/s", 6.07143, 0.0005 * 6.07143, "Halliday, Resnick, from memory (6.1); digits computed here", () => s_ball.Value.Run[^1].Y[StateLayout.U]),
        new("slow spin on four points: track ratio", "1", 1.390625, 1e-6 * 1.390625, Closed, () => ExternalSkidSteerTests.TrackRatio(s_spin.Value, 0.16)),
        new("slow spin on four points: force of a side", "N", Friction * (Weight / 2.0) * 0.10 / s_diagonal, 1e-6 * Friction * (Weight / 2.0) * 0.10 / s_diagonal, Closed, () => 2.0 * ExternalSkidSteerTests.Mean(s_spin.Value, w => w.LongitudinalForce, "right")),
        new("track ratio of an outdoor robot, air tyres, asphalt (tyre invented)", "1", 1.406, 0.06 * 1.406, "Mandow and others, IROS 2007, Tables I and II, measured, read second-hand", () => ExternalSkidSteerTests.Measured(ExternalSkidSteerTests.Outdoor(0.9, 0.75), 0.268, 0.40, 0.11, 14.0, null)),
        new("track ratio of the same robot, smooth tile (tyre invented)", "1", 1.41, 0.06 * 1.41, "Wang and others, Sensors 15(5), 2015, measured, read second-hand", () => ExternalSkidSteerTests.Measured(ExternalSkidSteerTests.Outdoor(0.6, 0.50), 0.268, 0.40, 0.11, 14.0, null)),
        new("track ratio of a 17 kg robot (tyre invented)", "1", 1.5, 0.06 * 1.5, "the maker's calibrated track multiplier, in its published configuration files", () => ExternalSkidSteerTests.Measured(ExternalSkidSteerTests.Outdoor(0.9, 0.75), 0.262, 0.37559, 0.098, 17.0, 0.4485)),
        Pivot(0.5, 1.037441356, 0.984371686, false),
        Pivot(1.0, 1.200729975, 0.926917273, false),
        Pivot(1.0, 1.200729975, 0.926917273, true),
        Pivot(1.5, 1.538757874, 0.837059909, false),
        new("head-on impact, Hunt and Crossley's factor at nominal 0.8: restitution", "1", 0.832870, 1e-6, "Hunt, Crossley, J. Appl. Mech. 42, 1975, factor read second-hand; exact restitution computed here", () => ImpactTests.Returned(0.3)),
        new("wedge of 20 degrees, friction 0.3: lift over push", "1", 1.3416398563478251, 2e-5 * 1.3416398563478251, "statics of the inclined plane, computed here", () => Cotangent(20.0)),
        new("wedge of 50 degrees, friction 0.3: lift over push", "1", 0.4306836768560772, 2e-5 * 0.4306836768560772, "statics of the inclined plane, computed here", () => Cotangent(50.0)),
        new("height of the centre of mass from two weighings, raised by 60 mm", "m", 0.033, 1e-12, Closed, () => MassFromScale.Height(new AxlePair(0.05, 0.025, -0.05, 0.025), 0.0, 0.44, 0.06).Height),
    ];
}
