using System.Collections.Concurrent;
using System.Globalization;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Eight wheels, four to a side on one belt, stand for the ground pressure of two tracks; and where a turn loses its resistance.</summary>
public class ExternalTrackTests
{
    private const double Friction = 0.7;
    private const double Weight = 100.0;
    private const double Length = 0.2;

    private static readonly ConcurrentDictionary<double, (double Ratio, double Moment, double Thrust)> s_pivots = new();

    // Wheels in the middles of four equal parts of each track.
    private static RobotSettings Tracks(double length, double width, TyreSettings tyre, double forward = 0.0)
    {
        MotorSettings motor = ExternalRobots.WheelMotor(0.03, 0.1, 400.0);
        List<WheelSettings> wheels = [];
        foreach (int side in new[] { 1, -1 })
        {
            for (int i = 0; i < 4; i++)
            {
                wheels.Add(new WheelSettings
                {
                    Name = string.Create(CultureInfo.InvariantCulture, $"{(side > 0 ? "left" : "right")} {i + 1}"), X = length * (0.375 - (0.25 * i)), Y = 0.5 * side * width, Radius = 0.03, SpinInertia = 1e-5, Tyre = tyre,
                });
            }
        }

        return new RobotSettings
        {
            Name = "Tracks", Chassis = ExternalRobots.Body(Weight / 9.81, 0.0, forward), Wheels = wheels,
            Drives = [.. new[] { 0, 1 }.Select(s => new DriveSettings
            {
                Name = s == 0 ? "left" : "right", Wheels = [.. Enumerable.Range(4 * s, 4).Select(i => (i, 1.0))], Motors = [(motor, 1.0)],
            })],
            Controllers = [.. new[] { 0, 1 }.Select(s => new ControllerSettings { Name = s == 0 ? "left" : "right", Motors = [(s, 0)], Side = s == 0 ? CommandSide.Left : CommandSide.Right })],
            Battery = ExternalRobots.Source(ExternalRobots.Volts),
        };
    }

    private static TyreSettings Ground(double still, double sliding) => ExternalRobots.Coulomb(still) with
    {
        KineticFriction = sliding, SlipSpeed = 0.1, BodyStiffness = 2e4, BodyDamping = 20.0, TreadMass = 0.01, VerticalStiffness = 3e4, ReferenceLoad = 12.0,
    };

    // Full-sliding theory of the pivot turn (Wong, Theory of Ground Vehicles, sec. 7.3.3, read second-hand) summed over eight wheels instead of
    // integrated: computed here. With l = B the ratio is 1.2102 and the moment 0.9135 of mu W l/4
    [Theory]
    [InlineData(0.50)]
    [InlineData(0.75)]
    [InlineData(1.00)]
    [InlineData(1.25)]
    [InlineData(1.50)]
    [InlineData(2.00)]
    public void Eight_wheels_pivot_as_the_sliding_theory_says(double lengthOverWidth)
    {
        (double ratio, double moment, double thrust) = Sums(lengthOverWidth, 4);
        (double runRatio, double runMoment, double runThrust) = Pivot(lengthOverWidth);
        Assert.Equal(ratio, runRatio, 1e-4 * ratio);
        Assert.Equal(moment, runMoment, 1e-4 * moment);
        Assert.Equal(thrust, runThrust, 1e-4 * thrust);
    }

    [Fact]
    public void Eight_wheels_as_long_as_wide_have_the_stated_ratio_and_moment()
    {
        (double ratio, double moment, double _) = Pivot(1.0);
        Assert.Equal(1.2102, ratio, 5e-5);
        Assert.Equal(0.9135, moment, 1.0e-4);
    }

    // The same theory for uniform tracks; table computed here by its closed form. Four wheels a side stand for a track to 2 % where it is not
    // much longer than wide
    [Theory]
    [InlineData(0.50, 1.037441356, 0.984371686, 0.246092921)]
    [InlineData(0.75, 1.099435694, 0.960973054, 0.360364895)]
    [InlineData(1.00, 1.200729975, 0.926917273, 0.463458637)]
    [InlineData(1.25, 1.346316158, 0.884509666, 0.552818541)]
    [InlineData(1.50, 1.538757874, 0.837059909, 0.627794932)]
    public void Uniform_tracks_are_met_within_two_per_cent(double lengthOverWidth, double ratio, double moment, double thrust)
    {
        (double runRatio, double runMoment, double runThrust) = Pivot(lengthOverWidth);
        Assert.Equal(ratio, runRatio, 0.02 * ratio);
        Assert.Equal(moment, runMoment, 0.02 * moment);
        Assert.Equal(thrust, runThrust, 0.02 * thrust);
    }

    // The table's last row: moment and thrust to 2 %, but the ratio of four points a side is 2.2 % below that of a line, in the sum as in the run
    [Fact]
    public void Tracks_twice_as_long_as_wide_need_more_than_four_wheels_for_their_ratio()
    {
        (double ratio, double moment, double thrust) = Pivot(2.0);
        Assert.Equal(0.739188874, moment, 0.02 * 0.739188874);
        Assert.Equal(0.739188874, thrust, 0.02 * 0.739188874);
        Assert.Equal(0.9778, ratio / 2.065999737, 0.0005);
    }

    // Moment of turning resistance without slip along the tracks: mu W l/4 (Wong, Theory of Ground Vehicles); with the turning centre off by s0
    // (1 - (2 s0/l)^2) of it (from memory). Wheels in the middles of the parts make both sums exact where s0 lies between two of them
    [Theory]
    [InlineData(0.0, 3.5)]
    [InlineData(0.05, 3.5 * 0.75)]
    [InlineData(-0.05, 3.5 * 0.75)]
    public void Turning_resistance_of_tracks_without_slip_is_the_classic_one(double offset, double expected)
    {
        Assert.Equal(expected, -SideMoment(Tracks(Length, 0.2, Ground(Friction, Friction)), offset, 1.0), 1e-3 * expected);
    }

    // Sign test: a turn loses its resistance, and falling friction drives it, once the centre of rotation leaves the wheelbase
    // (Kozlowski and Pazderski, Int. J. Appl. Math. Comput. Sci. 14(4), 2004, read in part)
    [Theory]
    [InlineData(0.00, -1)]
    [InlineData(0.03, -1)]
    [InlineData(-0.06, -1)]
    [InlineData(0.11, 1)]
    [InlineData(0.15, 1)]
    [InlineData(-0.11, 1)]
    [InlineData(-0.20, 1)]
    public void Turning_resistance_changes_sign_where_the_centre_leaves_the_wheelbase(double centre, int sign)
    {
        foreach (double rate in new[] { 0.5, -0.5 })
        {
            double moment = SideMoment(Tracks(Length, 0.2, Ground(0.9, 0.5)), centre, rate);
            Assert.Equal(sign, Math.Sign(moment * rate));
        }
    }

    // v = (v_R + v_L)/2 and w = (v_R - v_L)/(chi B) of the same paper, in a slow arc
    [Fact]
    public void A_slow_arc_has_the_mean_speed_of_its_sides()
    {
        RobotSettings robot = Tracks(0.1, 0.2, Ground(Friction, Friction));
        RunResult run = ExternalRobots.Run(ExternalRobots.Scenario(robot, 4.0, throttle: 0.6, turn: 0.3, tolerance: 1e-6));
        double left = run.Trace.Wheel("left 1").SurfaceSpeed[^1];
        double right = run.Trace.Wheel("right 1").SurfaceSpeed[^1];
        Assert.Equal(0.5 * (left + right), run.Trace.Body.Speed[^1], 0.01 * right);
        double chi = (right - left) / (run.Trace.Body.YawRate[^1] * 0.2);
        Assert.InRange(chi, 1.0, 1.3);
    }

    /// <summary>Ratio, moment over mu W l/4 and thrust over mu W/2 of a pivot on eight wheels.</summary>
    internal static (double Ratio, double Moment, double Thrust) Pivot(double lengthOverWidth) => s_pivots.GetOrAdd(lengthOverWidth, RunPivot);

    private static (double Ratio, double Moment, double Thrust) RunPivot(double lengthOverWidth)
    {
        const double width = 0.2;
        double length = lengthOverWidth * width;
        RobotSettings robot = Tracks(length, width, Ground(Friction, Friction));
        RunResult run = ExternalRobots.Run(ExternalRobots.Scenario(robot, 1.5, turn: 1.0, tolerance: 1e-6));
        double difference = run.Trace.Wheel("right 1").SurfaceSpeed[^1] - run.Trace.Wheel("left 1").SurfaceSpeed[^1];
        double thrust = Enumerable.Range(1, 4).Sum(i => run.Trace.Wheel($"right {i}").LongitudinalForce[^1]);
        return (
            difference / (run.Trace.Body.YawRate[^1] * width),
            -run.Trace.Body.ScrubMoment[^1] / (Friction * Weight * length / 4.0),
            thrust / (Friction * Weight / 2.0));
    }

    // B q S(1/r) /2 = S(x^2/r), r = sqrt(q^2 + x^2), by halving; moment over mu W l/4, thrust of a track over mu W/2
    private static (double Ratio, double Moment, double Thrust) Sums(double length, int n)
    {
        double[] x = [.. Enumerable.Range(0, n).Select(i => length * (((i + 0.5) / n) - 0.5))];
        (double low, double high) = (1e-9, 10.0);
        for (int k = 0; k < 200; k++)
        {
            double q = 0.5 * (low + high);
            bool isTooFar = x.Sum(a => 0.5 * q / double.Hypot(q, a)) > x.Sum(a => a * a / double.Hypot(q, a));
            (low, high) = isTooFar ? (low, q) : (q, high);
        }

        return (1.0 + (2.0 * low), x.Average(a => a * a / double.Hypot(low, a)) / (length / 4.0), x.Average(a => low / double.Hypot(low, a)));
    }

    // Moment of the sideways tread forces about the centre of mass, belts running with the floor, the body turning about a point ahead of its middle
    // by the engine's own law: treads slide with their rims, bristles at the end of their grip
    private static double SideMoment(RobotSettings robot, double centre, double rate)
    {
        ScenarioSettings scenario = ExternalRobots.Scenario(robot, 1.0);
        var system = new RobotSystem(scenario with { Robot = ModelBuilder.InCanonicalOrder(robot) });
        system.EnterSegment(0);
        double[] y = system.InitialState();
        y[StateLayout.YawRate] = rate;
        y[StateLayout.V] = -centre * rate;
        for (int i = 0; i < 8; i++)
        {
            WheelParameters<R1> p = system.Equations.Wheels[i];
            y[system.Layout.FirstDrive + system.Equations.Kinds[i].Shape.Drive] = -rate * p.Y.Value / p.Radius.Value;
            y[system.Layout.Tread(i) + 1] = rate * (p.X.Value - centre);
        }

        double[] dy = new double[y.Length];
        double moment = 0.0;
        system.Evaluate(0.0, 0.0, [.. y], dy);
        for (int i = 0; i < 8; i++)
        {
            double side = Math.Sign(y[system.Layout.Tread(i) + 1]);
            y[system.Layout.Bristle(i) + 1] = side * system.Equations.WheelWork[i].Friction.Value / system.Equations.Wheels[i].Sigma0.Value;
        }

        // with the tyre bodies unloaded m_t v' is the tread's force alone
        system.Evaluate(0.0, 0.0, [.. y], dy);
        for (int i = 0; i < 8; i++)
        {
            Assert.Equal(0.0, dy[system.Layout.Bristle(i) + 1], 1e-9);
            moment += system.Equations.Wheels[i].X.Value * system.Equations.Wheels[i].TreadMass.Value * dy[system.Layout.Tread(i) + 1];
        }

        return moment;
    }
}
