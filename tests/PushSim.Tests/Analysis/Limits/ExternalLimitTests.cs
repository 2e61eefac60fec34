using PushSim.Analysis.Limits;
using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Tests.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

/// <summary>The limits' own equations against textbook numbers.</summary>
public class ExternalLimitTests
{
    private static LimitModel<R1> Bench(MotorSettings motor, double volts, LimitCondition? condition = null)
    {
        RobotSettings robot = ExternalRobots.Bench(new DriveSettings { Name = "motor", Wheels = [], Motors = [(motor, 1.0)] }, 1e-5, volts);
        return new LimitModel<R1>(SceneBuilder.InCanonicalOrder(ExternalRobots.Scenario(robot, 1.0)), condition ?? new LimitCondition(), null, 1.0);
    }

    /// <summary>Torque at the drive [N m] at a spin [rad/s].</summary>
    internal static double Torque(LimitModel<R1> model, double omega)
    {
        R1[] torque = new R1[model.Drives.Length];
        R1[] spin = [.. model.Drives.Select(_ => (R1)omega)];
        model.Torques(spin, torque);
        return torque[model.MotorShapes[0].Drive].Value;
    }

    /// <summary>A motor of a given no-load speed [rad/s] and stall torque [N m] at 12 V.</summary>
    internal static LimitModel<R1> OfTwoEnds(double free, double stall)
    {
        double k = 12.0 / free;
        return Bench(new MotorSettings { Name = "m", TorqueConstant = k, Resistance = 12.0 * k / stall }, 12.0);
    }

    /// <summary>95 V of inner voltage at 1425 rpm, 0.05 ohm, at 100 V.</summary>
    internal static LimitModel<R1> LargeMotor() =>
        Bench(new MotorSettings { Name = "m", TorqueConstant = 95.0 / (1425.0 * Math.PI / 30.0), Resistance = 0.05 }, 100.0);

    /// <summary>A motor of 2 ohm at a reference temperature, its winding at another [C].</summary>
    internal static LimitModel<R1> Warm(double temperature, double reference)
    {
        var motor = new MotorSettings { Name = "m", TorqueConstant = 0.01, Resistance = 2.0, ReferenceTemperature = reference };
        return Bench(motor, 12.0, new LimitCondition { WindingTemperature = temperature });
    }

    // Most power at half speed and half torque, P = Ts wn/4: an MIT course on dc motors, printed 0.163, 0.0361 and 0.80 N m; power computed here
    [Theory]
    [InlineData(600, 0.325, 0.163, 5.105)]
    [InlineData(3750, 0.0722, 0.0361, 7.088)]
    [InlineData(92, 1.6, 0.80, 3.854)]
    public void Most_power_is_at_half_speed(double rpm, double stall, double halfTorque, double power)
    {
        double free = rpm * Math.PI / 30.0;
        LimitModel<R1> model = OfTwoEnds(free, stall);
        Assert.Equal(halfTorque, Torque(model, 0.5 * free), 0.004 * halfTorque);
        Assert.Equal(power, 0.5 * free * Torque(model, 0.5 * free), 2e-4 * power);
        double best = Enumerable.Range(1, 99).MaxBy(i => i * Torque(model, 0.01 * i * free));
        Assert.Equal(50.0, best);
    }

    // 100 V, 100 A, 0.05 ohm: Modelica Standard Library, DCPM_withLosses, no losses but R; torque computed here
    [Fact]
    public void A_large_motor_at_its_rating()
    {
        LimitModel<R1> model = LargeMotor();
        double omega = 1425.0 * Math.PI / 30.0;
        Assert.Equal(63.66198, Torque(model, omega), 1e-5);
        Assert.Equal(100.0, model.MotorWork[0].Current.Value, 1e-9);
        Assert.Equal(95.0, model.MotorWork[0].BackEmf.Value, 1e-9);
        Assert.Equal(500.0, model.MotorWork[0].CopperPower.Value, 1e-7);
        Assert.Equal(9500.0, omega * Torque(model, omega), 1e-6);
    }

    // Copper: IEC 60028 (from memory), 95 against 20 degrees; 20 against 80 degrees as in Modelica's DCPM_Temperature, whose 0.80921 is not quite
    // 1/(1 + 0.00393 x 60) = 0.80919: its coefficient differs in the fourth digit
    [Theory]
    [InlineData(95.0, 20.0, 1.29475)]
    [InlineData(20.0, 80.0, 0.80921)]
    public void A_warm_winding_has_more_resistance(double temperature, double reference, double ratio)
    {
        LimitModel<R1> model = Warm(temperature, reference);
        double stall = Torque(model, 0.0);
        Assert.Equal(ratio, model.MotorWork[0].Resistance.Value / 2.0, 2e-5);
        Assert.Equal(12.0 * 0.01 / (2.0 * ratio), stall, 2e-6);
    }

    // eta = (1 - sqrt(I0/Is))^2 at I = sqrt(I0 Is): a maker's formulae (from memory); Is 20 A, I0 0.8 A: 0.64 at 4 A
    [Fact]
    public void Best_efficiency_with_a_constant_loss()
    {
        (double eta, double current) = BestEfficiency();
        Assert.Equal(0.64, eta, 1e-5);
        Assert.Equal(4.0, current, 0.02);
    }

    /// <summary>Best efficiency and its current [A] of a motor of 20 A stall and 0.8 A no-load current.</summary>
    internal static (double Eta, double Current) BestEfficiency()
    {
        const double k = 0.02;
        LimitModel<R1> model = Bench(new MotorSettings { Name = "m", TorqueConstant = k, Resistance = 12.0 / 20.0, FrictionTorque = k * 0.8 }, 12.0);
        return Enumerable.Range(1, 5990).Select(i =>
        {
            double omega = 0.1 * i;
            double shaft = omega * Torque(model, omega);
            double current = model.MotorWork[0].Current.Value;
            return (shaft / (12.0 * current), current);
        }).MaxBy(p => p.Item1);
    }

    // dT = x/(1 - alpha x), x = I^2 R Rth: 2 A, 1 ohm, 17.5 K/W; 96.565 K, computed here
    [Fact]
    public void Heat_feeds_back_on_resistance() => Assert.Equal(96.565, WarmedByHeldCurrent(), 0.02);

    /// <summary>Rise of a winding [K] of 1 ohm and 17.5 K/W at 2 A, settled, the resistance following.</summary>
    internal static double WarmedByHeldCurrent()
    {
        var motor = new MotorSettings
        {
            Name = "m", TorqueConstant = 0.01, Resistance = 1.0, ReferenceTemperature = 20.0, WindingToCaseThermalResistance = 17.5, CaseToAirThermalResistance = 1e-3,
            WindingHeatCapacity = 1.0, CaseHeatCapacity = 1e4,
        };
        var node = new ThermalNodes(motor, 20.0) { Power = 4.0 };
        for (int n = 0; n < 4000; n++)
        {
            node.Warm(0.2);
        }

        return node.Winding - 20.0;
    }

    // winding time constants of small motors, 23 s at 9.5 K/W and 14.3 s, from makers' sheets quoted in public sources: 63.2 % of the rise over the case
    [Theory]
    [InlineData(23.0, 9.5)]
    [InlineData(25.0, 2.0)]
    public void The_winding_rises_with_its_time_constant(double tau, double resistance)
    {
        var motor = new MotorSettings
        {
            Name = "m", TorqueConstant = 0.01, Resistance = 1.0, ReferenceTemperature = 20.0, WindingToCaseThermalResistance = resistance, CaseToAirThermalResistance = 8.0,
            WindingHeatCapacity = tau / resistance, CaseHeatCapacity = 1e6,
        };
        var node = new ThermalNodes(motor, 20.0);
        for (int n = 0; n < 1000; n++)
        {
            node.Power = 1.0;
            node.Warm(tau / 1000.0);
        }

        Assert.Equal(1.0 - Math.Exp(-1.0), (node.Winding - node.Case) / resistance, 0.001);
    }

    private const double CarRadius = 0.3;

    /// <summary>Launch of a vehicle with grip as its only limit.</summary>
    internal static LaunchEstimate<R1> Car(double mass, double wheelbase, double height, double behindFront, double friction, bool front, bool rear, double gravity)
    {
        PushSim.Tyres.TyreSettings tyre = ExternalRobots.Coulomb(friction) with { TreadMass = 0.1, BodyStiffness = 2e5, VerticalStiffness = 2e5, ReferenceLoad = 4000.0 };
        MotorSettings motor = ExternalRobots.WheelMotor(CarRadius, 100.0, 40000.0);
        RobotSettings robot = ExternalRobots.FourCorners(
            ExternalRobots.Body(mass, height, (wheelbase / 2) - behindFront, wheelbase), tyre, wheelbase, 1.5, CarRadius, 1e-6, front ? motor : null, rear ? motor : null);
        ScenarioSettings scenario = ExternalRobots.Scenario(robot, 1.0, throttle: 1.0, gravity: gravity);
        return new LaunchEstimate<R1>(new LimitModel<R1>(SceneBuilder.InCanonicalOrder(scenario), new LimitCondition(), null, 1.0));
    }

    // 1800 kg: slides of a lecture on vehicle dynamics; 1150 mm behind the front axle: a textbook example 31.7 on a reference site; 1550 kg and 1.47321:
    // Jazar, Vehicle Dynamics, ch. 2, exercises 10 and 11; 48 % on driven wheels: a tutor's answer. Numbers computed here
    [Theory]
    [InlineData(1800, 2.60, 0.70, 1.300, 0.7, true, false, 9.81, 2.88903)]
    [InlineData(1800, 2.60, 0.70, 1.300, 0.7, false, true, 9.81, 4.23085)]
    [InlineData(1800, 2.60, 0.70, 1.300, 0.7, true, true, 9.81, 6.867)]
    [InlineData(1500, 2.75, 0.85, 1.150, 0.6, true, false, 9.81, 2.88883)]
    [InlineData(1500, 2.75, 0.85, 1.150, 0.6, false, true, 9.81, 3.02183)]
    [InlineData(1500, 2.75, 0.85, 1.150, 0.6, true, true, 9.81, 5.886)]
    [InlineData(1550, 2.62, 0.72, 1.310, 0.8, false, true, 9.81, 5.02978)]
    [InlineData(1550, 2.62, 0.72, 1.310, 0.8, true, false, 9.81, 3.21680)]
    [InlineData(1550, 2.62, 0.72, 1.310, 0.8, true, true, 9.81, 7.848)]
    [InlineData(1000, 2.286, 0.26, 1.143, 1.47321, false, true, 9.81, 8.68056)]
    [InlineData(1500, 2.60, 0.0, 1.352, 0.6, true, false, 9.8, 2.8224)]
    public void Load_transfer_sets_the_acceleration(
        double mass, double wheelbase, double height, double behindFront, double friction, bool front, bool rear, double gravity, double expected) =>
        Assert.Equal(expected, Car(mass, wheelbase, height, behindFront, friction, front, rear, gravity).Acceleration(1.0).Value, 2e-5 * expected);

    /// <summary>Launch of 1.36 kg without slip: 3 m/s, 20 N at stall, limited to a force per wheel [N].</summary>
    internal static LaunchEstimate<R1> Light(double limit)
    {
        const double radius = 0.03;
        MotorSettings motor = ExternalRobots.WheelMotor(radius, 3.0, 5.0);
        RobotSettings robot = ExternalRobots.FourCorners(
            ExternalRobots.Body(1.36 - 0.16, 0.0), ExternalRobots.Coulomb(20.0), 0.12, 0.15, radius, 0.04 * radius * radius, motor, motor, limit * radius / motor.TorqueConstant);
        return new LaunchEstimate<R1>(new LimitModel<R1>(SceneBuilder.InCanonicalOrder(ExternalRobots.Scenario(robot, 1.0, 1.0)), new LimitCondition(), null, 1.0));
    }

    // x = vf (t - tau (1 - e^(-t/tau))), tau = M vf/F: motor and mass without slip; computed here
    [Fact]
    public void Motor_and_mass_approach_their_speed_exponentially()
    {
        LaunchEstimate<R1> launch = Light(double.PositiveInfinity);
        Assert.Equal(3.0, launch.TopSpeed.Value, 1e-9);
        Assert.Equal(0.217600335, launch.DistanceAt(0.2).Value, 1e-8);
        Assert.Equal(0.2, launch.TimeFor(0.217600335).Value, 1e-8);
    }

    // the same with 8 N of current limit: straight to 1.8 m/s at 0.306 s, then exponential; computed here
    [Fact]
    public void Current_limit_makes_the_start_a_straight_line()
    {
        LaunchEstimate<R1> launch = Light(2.0);
        Assert.Equal(8.0 / 1.36, launch.Acceleration(1.0).Value, 1e-9);
        Assert.Equal(0.707181430, launch.DistanceAt(0.5).Value, 1e-5);
        Assert.Equal(0.5 * 8.0 / 1.36 * 0.09, launch.DistanceAt(0.3).Value, 1e-6);
    }

    // pushing force of a robot = min(motors' limit, mu N); computed here
    [Theory]
    [InlineData(0.5, 2.0)]
    [InlineData(0.5, 1.0)]
    [InlineData(0.5, 20.0)]
    [InlineData(1.2, 3.0)]
    [InlineData(1.2, 5.0)]
    public void A_push_is_the_lesser_of_motors_and_traction(double friction, double stallPerWheel)
    {
        MotorSettings motor = ExternalRobots.WheelMotor(0.03, 3.0, stallPerWheel);
        RobotSettings robot = ExternalRobots.FourCorners(ExternalRobots.Body(1.36, 0.03), ExternalRobots.Coulomb(friction), 0.12, 0.15, 0.03, 1e-6, motor, motor);
        LimitReport report = LimitFinder.Find(ExternalRobots.Scenario(robot, 1.0, 1.0));
        double expected = Math.Min(4.0 * stallPerWheel, friction * 1.36 * 9.81);
        double perWheel = Math.Min(stallPerWheel, friction * 1.36 * 9.81 / 4.0);
        Assert.Equal(4.0 * stallPerWheel, report.Now.MotorForce, 1e-6);
        Assert.Equal(friction * 1.36 * 9.81, report.Now.TractionPeak, 1e-6);

        // each wheel by itself: the front ones are lighter while it pulls and may slide where those behind stand
        Assert.All(report.Wheels, w => Assert.Equal(stallPerWheel > friction * w.Load ? BindingKind.Tyre : BindingKind.Motor, w.Binding));
        Assert.Equal(report.Wheels.Select(w => w.Binding!.Value).Distinct().Order(), report.Now.Bound.Select(b => b.Kind).Order());

        // load transfer lets front wheels slide first, so that motor-limited wheels behind can leave some grip unused
        Assert.InRange(report.Now.Pull!.Value, 0.85 * Math.Min(expected, 4.0 * perWheel), expected * (1.0 + 1e-9));
        if (4.0 * stallPerWheel > friction * 1.36 * 9.81)
        {
            // F(v) = F_stall (1 - v/v_free)
            Assert.Equal(3.0 * (1.0 - (friction * 1.36 * 9.81 / (4.0 * stallPerWheel))), report.Now.CrossingSpeed!.Value, 1e-6);
        }
        else
        {
            Assert.Null(report.Now.CrossingSpeed);
        }
    }
}
