using PushSim.Contact;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Bodies;

/// <summary>What bodies do in whole runs, against statics computed here. Robots are the invented ones of the examples.</summary>
public class BodyRunTests(ITestOutputHelper output)
{
    private const double Degree = Math.PI / 180.0;
    private const double Gravity = 9.80665;

    public static TheoryData<string> All => [.. Shipped.Names];

    // Flush faces bear at their lower edge z once the noses rise: to lift one takes m g b/z (any textbook of statics), far more than these tyres push.
    [Fact]
    public void A_heavy_mole_wins_over_the_line_and_neither_rises()
    {
        RunResult run = Simulator.Run(Shipped.Read("shove-equals", ("floor.friction", "2.5"), ("chassis.mass", "1500 g"), ("opponent.chassis.mass", "1360 g")));
        double first = run.Trace.Body.Pitch.Max(Math.Abs) / Degree;
        double second = run.Opponent!.Trace.Body.Pitch.Max(Math.Abs) / Degree;
        output.WriteLine(FormattableString.Invariant($"{run.Shove!.Ending} {run.Shove.Winner} at {run.Shove.EndTime} s, {first} and {second} degrees"));
        Assert.Equal((ShoveEnding.Line, 0), (run.Shove.Ending, run.Shove.Winner));
        Assert.InRange(run.Shove.EndTime, 1.2, 1.4);
        Assert.InRange(first, 0.0, 1.0);
        Assert.InRange(second, 0.0, 1.0);
        RobotSettings mole = run.Scenario.Robot;
        double lift = mole.Chassis.Mass * Gravity * (mole.Chassis.CentreOfMassX - mole.Wheels.Min(w => w.X)) / mole.OutlineOrBox.Faces[0].LowerEdge;
        Assert.True(lift > 3.0 * run.Trace.Contact!.Push.TakeLast(100).Max(), $"{lift} N would lift it");
    }

    // Pushed at z by a smooth edge against a nose that leans back by the angle t, the edge pushes down, too: F (z - tan(t) l) = m g b about the lowest point of the rear
    // rims, at which the tyres' forces act, l and b ahead of it. Where the tail touches before, its height is 0: R - sink + (x_t - x_a) sin t + (z_t - z_a) cos t = -squash. Both by the push as it is.
    [Theory]
    [InlineData("30 mm", "30 %", false)]
    [InlineData("36 mm", "100 %", true)]
    public void A_robot_pushed_high_rises_to_the_static_angle(string clearance, string throttle, bool sits)
    {
        ScenarioSettings s = Shipped.Read(
            "shove-equals", ("floor.friction", "2.5"), ("contact.friction", "0"), ("shove.gap", "0.1 mm"), ("chassis.mass", "1500 g"), ("opponent.chassis.mass", "4 kg"),
            ("opponent.outline.clearance", clearance), ("opponent.outline.top", "60 mm"), ("opponent.throttle", throttle));
        RunResult run = Simulator.Run(s);
        RobotSettings robot = run.Scenario.Robot;
        double weight = robot.Chassis.Mass * Gravity;
        int count = run.Time.Length / 3;
        double Mean(IEnumerable<double> series) => series.TakeLast(count).Average();
        double push = Mean(run.Trace.Contact!.Push);
        double high = Mean(Heights(run.Opponent!.Robot, run.Opponent.Trace, x => x > 0.0));
        (double axle, double radius) = (robot.Wheels.Min(w => w.X) - robot.Chassis.CentreOfMassX, robot.Wheels[^1].Radius);
        double hub = radius - robot.Chassis.CentreOfMassHeight;
        OutlineSettings outline = robot.OutlineOrBox;
        double tail = outline.Corners.Min(c => c.X) - robot.Chassis.CentreOfMassX;
        double nose = outline.Corners.Max(c => c.X) - robot.Chassis.CentreOfMassX;
        double under = outline.Faces[0].LowerEdge - robot.Chassis.CentreOfMassHeight;
        double width = outline.Corners.Max(c => c.Y) - outline.Corners.Min(c => c.Y);
        double onTail = 0.0;
        double Sink(double angle) => (weight + (push * Math.Tan(angle)) - onTail) / (2.0 * robot.Wheels[^1].Tyre.VerticalStiffness);
        double Rising(double angle)
        {
            double ahead = (hub * Math.Sin(angle)) - (axle * Math.Cos(angle));
            return (push * (high + Sink(angle) - (Math.Tan(angle) * (ahead + (nose * Math.Cos(angle)))))) - (weight * ahead);
        }

        double Lowest(double angle)
        {
            (double sine, double cosine) = Math.SinCos(angle);
            onTail = Math.Max(0.0, Rising(angle) / (((axle - tail) * cosine) + ((under - hub) * sine)));
            return radius - Sink(angle) + ((tail - axle) * sine) + ((under - hub) * cosine) + (onTail / (outline.Underside.Stiffness * (width + EdgeProfile.CapLength)));
        }

        double low = 0.0;
        double angle = 0.3;
        for (int i = 0; i < 60; i++)
        {
            double middle = 0.5 * (low + angle);
            (low, angle) = Rising(middle) > 0.0 && Lowest(middle) > 0.0 ? (middle, angle) : (low, middle);
        }

        double measured = -Mean(run.Trace.Body.Pitch) / Degree;
        double lowest = Mean(Heights(robot, run.Trace, x => x < 0.0));
        output.WriteLine(FormattableString.Invariant($"push {push} N at {1e3 * high} mm, tail {onTail} N, static {angle / Degree} degrees, run {measured} degrees, tail {1e3 * lowest} mm high"));
        Assert.Equal(angle / Degree, measured, 0.3);
        Assert.Equal(sits, lowest < 1e-4);
        Assert.NotEqual(RunStatus.Tips, run.Status);
    }

    // The low one's nose passes under the high one's and stops at its wheels, not before and not after. They reach into its width.
    [Fact]
    public void A_low_robot_under_a_high_one_touches_its_wheels()
    {
        ScenarioSettings s = Shipped.Read(
            "shove-equals", ("outline.clearance", "4 mm"), ("outline.top", "22 mm"), ("opponent.outline.clearance", "30 mm"), ("opponent.outline.top", "60 mm"), ("opponent.wheel.*.width", "24 mm"), ("manoeuvre.end", "0.8 s"));
        RunResult run = Simulator.Run(s);
        int touch = run.Trace.Contact!.Force.FindIndex(f => f > 0.5);
        Assert.True(touch > 0, "the robots never touch");
        RobotSettings low = run.Scenario.Robot;
        double nose = low.OutlineOrBox.Corners.Max(c => c.X) - low.Chassis.CentreOfMassX;
        double rim = run.Opponent!.Robot.Wheels.Max(w => w.X) - run.Opponent.Robot.Chassis.CentreOfMassX;
        double apart = -(run.Trace.Body.X[touch] + run.Opponent.Trace.Body.X[touch]) - nose - rim;

        // the nose's upper edge, 22 mm high, on a rim of radius R: sqrt(R^2 - (R - 22 mm)^2) before the axle
        double radius = run.Opponent.Robot.Wheels[0].Radius;
        double expected = Math.Sqrt((radius * radius) - ((radius - 0.022) * (radius - 0.022)));
        output.WriteLine(FormattableString.Invariant($"touch at {run.Time[touch]} s, {1e3 * apart} mm before the axle, circle {1e3 * expected} mm; ends {run.Shove!.Ending} {run.Shove.Winner} at {run.Shove.EndTime}"));
        Assert.Equal(expected, apart, 1.5e-3);
    }

    // A low one that fits between the high one's wheels stops where its own meet them, an axle two radii before the other, and does not drive through; rims that turn can climb each other a little.
    [Fact]
    public void A_low_robot_between_the_wheels_of_a_high_one_stops_at_its_own()
    {
        RunResult run = Simulator.Run(Shipped.Read(
            "shove-equals", ("outline.clearance", "4 mm"), ("outline.top", "22 mm"), ("opponent.outline.clearance", "30 mm"), ("opponent.outline.top", "60 mm"), ("manoeuvre.end", "1 s")));
        double Front(RobotSettings r) => r.Wheels.Max(w => w.X) - r.Chassis.CentreOfMassX;
        double axles = Front(run.Scenario.Robot) + Front(run.Opponent!.Robot);
        double[] apart = [.. run.Trace.Body.X.Zip(run.Opponent.Trace.Body.X, (a, b) => -(a + b) - axles)];
        double expected = run.Scenario.Robot.Wheels[0].Radius + run.Opponent.Robot.Wheels[0].Radius;
        int touch = run.Trace.Contact!.Force.FindIndex(f => f > 0.5);
        Assert.True(touch > 0, "the robots never touch");
        output.WriteLine(FormattableString.Invariant($"touch at {run.Time[touch]} s, axles {1e3 * apart[touch]} mm apart, radii {1e3 * expected} mm; least {1e3 * apart.Min()} mm; {run.Shove!.Ending} {run.Shove.Winner} at {run.Shove.EndTime}"));
        Assert.Equal(expected, apart[touch], 1.5e-3);
        Assert.InRange(apart.Min(), 0.8 * expected, expected);
        Assert.Equal(ShoveEnding.Stalemate, run.Shove.Ending);
    }

    // The hop of one line of contact is gone: nothing in the air, the push steady.
    [Fact]
    public void A_heavy_push_is_steady_and_keeps_its_wheels_down()
    {
        RunResult run = Simulator.Run(Shipped.Read("shove-heavy-grippy"));
        double[] push = [.. run.Trace.Contact!.Push.Zip(run.Time).Where(p => p.Second > 0.4).Select(p => p.First)];
        double mean = push.Average();
        double sd = Math.Sqrt(push.Average(p => (p - mean) * (p - mean)));
        double least = run.Trace.Wheels.Concat(run.Opponent!.Trace.Wheels).Min(w => w.Load.Zip(run.Time).Where(p => p.Second > 0.4).Min(p => p.First));
        output.WriteLine(FormattableString.Invariant($"push {mean} N, sd {sd} N, least load {least} N, ends at {run.Shove!.EndTime} s"));
        Assert.InRange(sd, 0.0, 0.5);
        Assert.True(least > 0.0);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void No_point_of_a_body_is_deeper_in_the_floor_than_its_squash(string name)
    {
        RunResult run = Simulator.Run(Shipped.Read(name));
        Hold(name, run.Scenario.Robot, run.Trace);
        if (run.Opponent is OpponentRun other)
        {
            Hold(name + ", opponent", other.Robot, other.Trace);
        }
    }

    // the whole weight on two edges' ends, which are the softest stand
    private void Hold(string name, RobotSettings robot, Trace trace)
    {
        double squash = ((robot.Chassis.Mass * Gravity) + robot.Chassis.Downforce) / (robot.OutlineOrBox.Underside.Stiffness * 2.0 * 0.25 * EdgeProfile.CapLength);
        double deepest = -Heights(robot, trace, _ => true).Min();
        output.WriteLine(FormattableString.Invariant($"{name}: deepest {1e3 * deepest} mm, squash {1e3 * squash} mm"));
        Assert.True(deepest <= squash + 0.3e-3, $"{name}: {1e3 * deepest} mm deep, squash {1e3 * squash} mm");
    }

    // Height of the lowest of some corners of the body at each sample [m]: from the leans P and R of its x and y axes, z_z = 1/sqrt(1 + tan^2 P + tan^2 R).
    private static double[] Heights(RobotSettings robot, Trace trace, Func<double, bool> along)
    {
        (double X, double Y, double Z)[] corners = [.. SceneBuilder.Body(robot).Parts.SelectMany(p => p.Corners).Where(c => along(c.X))];
        return
        [
            .. trace.Body.Heave.Select((heave, i) =>
            {
                (double pitch, double roll) = (Math.Tan(trace.Body.Pitch[i]), Math.Tan(trace.Body.Roll[i]));
                double upright = 1.0 / Math.Sqrt(1.0 + (pitch * pitch) + (roll * roll));
                return robot.Chassis.CentreOfMassHeight + heave + (upright * corners.Min(c => c.Z - (pitch * c.X) + (roll * c.Y)));
            }),
        ];
    }
}
