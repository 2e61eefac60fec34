using PushSim.Powertrain;

namespace PushSim.Simulation;

/// <summary>Turns settings of a drive into numbers and switches of the equations.</summary>
internal static class DriveBuilder
{
    // Share of s_max that gear friction follows elastically, b [1]; as for the tread.
    private const double DriveElasticShare = 0.8;

    /// <summary>Its numbers.</summary>
    public static DriveParameters<T> Numbers<T>(RobotSettings robot, DriveSettings d)
        where T : struct, IReal<T>
    {
        double inertia = Inertia(robot, d);
        double dry = d.FrictionTorque + d.Motors.Sum(m => m.Motor.FrictionTorque * m.Ratio);
        double voltage = PackVoltage(robot);
        double greatest = dry + d.HoldTorque
            + d.Motors.Sum(m => (1.0 - d.GearEfficiency) * m.Motor.TorqueConstant * m.Ratio * voltage / m.Motor.Resistance);
        double damping = greatest > 0.0
            ? 2.0 * d.FrictionDamping * Math.Sqrt(inertia * d.FrictionWindUp / greatest)
            : 0.0;
        return new DriveParameters<T>
        {
            Inertia = inertia,
            InverseInertia = 1.0 / inertia,
            DryFriction = dry,
            HoldTorque = d.HoldTorque,
            WindUp = d.FrictionWindUp,
            InverseWindUp = 1.0 / d.FrictionWindUp,
            Low = DriveElasticShare * d.FrictionWindUp,
            InverseSpan = 1.0 / ((1.0 - DriveElasticShare) * d.FrictionWindUp),
            DampingTime = damping,
            Viscous = d.Motors.Sum(m => m.Motor.ViscousFriction * m.Ratio * m.Ratio),
        };
    }

    /// <summary>What is no number of it.</summary>
    public static DriveShape Shape(ScenarioSettings scenario, StateLayout layout, int index) => new()
    {
        BristleIndex = layout.DriveBristle[index] < 0 ? -1 : layout.DriveBristle[index] - layout.ExplicitCount,
        Motors = scenario.Robot.Drives[index].Motors.Count,
        Wheels = scenario.Robot.Drives[index].Wheels.Count,
        IsGiven = scenario.GivenSpeeds.Any(g => g.Drive == index),
    };

    /// <summary>I = sum ratio^2 I_wheel + sum G^2 J_rotor + extra [kg m^2].</summary>
    public static double Inertia(RobotSettings robot, DriveSettings d) =>
        d.Wheels.Sum(w => w.Ratio * w.Ratio * robot.Wheels[w.Wheel].SpinInertia)
        + d.Motors.Sum(m => m.Ratio * m.Ratio * m.Motor.RotorInertia)
        + d.ExtraInertia;

    /// <summary>Open-circuit pack voltage at full charge [V]; 0 without battery.</summary>
    public static double PackVoltage(RobotSettings robot) =>
        robot.Battery is null ? 0.0 : robot.Battery.Cells * robot.Battery.CellVoltage[^1].Voltage;
}
