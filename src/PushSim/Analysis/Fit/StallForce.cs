using PushSim.Powertrain;
using PushSim.Simulation;

namespace PushSim.Analysis.Fit;

/// <summary>What the motors give at the floor with the wheels held, at full or a given command u, cold and with the battery as charged:
/// <code>
/// i_c = min(I_lim, (u V_b - V_brush) / (R + R_on)),  P_c = i_c (i_c (R + R_on) + V_brush),  V_b = V_oc - R_b sum P_c / V_b
/// T = sum (eta Kt G i - tau0 G) - friction of the drive,   F = T / (ratio R_wheel)
/// </code>
/// R: one winding, all in series, or all in parallel. Rolling resistance is not taken off. A drive whose wheels differ in ratio times
/// radius counts with their mean.
/// Gear friction also holds: a chain that a jerk stretched further stays so up to
/// <code>
/// F_hold = (sum ((2 - eta) Kt G i + tau0 G) + friction of the drive) / (ratio R_wheel)
/// </code></summary>
/// <param name="Force">Sum over all driven wheels [N].</param>
/// <param name="Hold">Greatest force that motors and gear friction together can hold with the wheels standing [N].</param>
/// <param name="BatteryCurrent">Battery current then [A].</param>
/// <param name="OpenVoltage">Battery voltage without load [V].</param>
/// <param name="LoadedVoltage">Battery voltage then [V].</param>
public sealed record StallForce(double Force, double Hold, double BatteryCurrent, double OpenVoltage, double LoadedVoltage)
{
    private const int VoltageSteps = 400;
    private const int Halvings = 60;

    /// <summary>Command that this is for, 0..1 [1].</summary>
    public double Throttle { get; init; } = 1.0;

    /// <summary>Of a robot; null if it has no motors.</summary>
    /// <param name="robot">The robot.</param>
    /// <param name="throttle">Command, 0..1 [1].</param>
    public static StallForce? Of(RobotSettings robot, double throttle = 1.0)
    {
        if (robot.Battery is not BatterySettings battery || robot.Controllers.Count == 0)
        {
            return null;
        }

        double open = battery.Cells * battery.InitialCellVoltage;
        double Balance(double v) => v - open + (battery.Resistance * robot.Controllers.Sum(c => Power(robot, c, throttle * v)) / v);

        // the largest root: coming down from the open voltage, the first change of sign
        double high = open;
        double low = open;
        for (int k = 1; k < VoltageSteps && Balance(low) > 0.0; k++)
        {
            high = low;
            low = open * (1.0 - ((double)k / VoltageSteps));
        }

        for (int k = 0; k < Halvings; k++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Balance(middle) > 0.0 ? (low, middle) : (middle, high);
        }

        double[] torque = new double[robot.Drives.Count];
        double[] ideal = new double[torque.Length];
        for (int d = 0; d < torque.Length; d++)
        {
            torque[d] = -robot.Drives[d].FrictionTorque - robot.Drives[d].Motors.Sum(m => m.Motor.FrictionTorque * m.Ratio);
        }

        foreach (ControllerSettings c in robot.Controllers)
        {
            AddTorque(robot, c, throttle * high, torque, ideal);
        }

        double force = 0.0;
        double hold = 0.0;
        for (int d = 0; d < torque.Length; d++)
        {
            double arm = robot.Drives[d].Wheels.Average(w => w.Ratio * robot.Wheels[w.Wheel].Radius);
            force += robot.Drives[d].Motors.Count > 0 ? Math.Max(0.0, torque[d]) / arm : 0.0;
            hold += robot.Drives[d].Motors.Count > 0 ? ((2.0 * ideal[d]) - torque[d]) / arm : 0.0;
        }

        return new StallForce(force, hold, (open - high) / battery.Resistance, open, high) { Throttle = throttle };
    }

    private static (MotorSettings Motor, double Ratio)[] MotorsOf(RobotSettings robot, ControllerSettings c) =>
        [.. c.Motors.Select(m => robot.Drives[m.Drive].Motors[m.Motor])];

    private static (double Resistance, double Drop) Circuit(RobotSettings robot, ControllerSettings c)
    {
        (MotorSettings Motor, double Ratio)[] motors = MotorsOf(robot, c);
        return c.Wiring == Wiring.Series
            ? (motors.Sum(m => m.Motor.Resistance) + c.OnResistance, motors.Sum(m => m.Motor.BrushDrop))
            : ((1.0 / motors.Sum(m => 1.0 / m.Motor.Resistance)) + c.OnResistance, motors.Max(m => m.Motor.BrushDrop));
    }

    private static double Current(RobotSettings robot, ControllerSettings c, double voltage)
    {
        (double r, double drop) = Circuit(robot, c);
        double share = MotorsOf(robot, c).Min(m => m.Motor.StandstillTorqueShare);
        return share * Math.Min(c.CurrentLimit, Math.Max(0.0, voltage - drop) / r);
    }

    private static double Power(RobotSettings robot, ControllerSettings c, double voltage)
    {
        (double r, double drop) = Circuit(robot, c);
        double i = Current(robot, c, voltage);
        return i * ((i * r) + drop);
    }

    private static void AddTorque(RobotSettings robot, ControllerSettings c, double voltage, double[] torque, double[] ideal)
    {
        double i = Current(robot, c, voltage);
        double conductance = MotorsOf(robot, c).Sum(m => 1.0 / m.Motor.Resistance);
        foreach ((int drive, int motor) in c.Motors)
        {
            (MotorSettings m, double ratio) = robot.Drives[drive].Motors[motor];
            double own = c.Wiring == Wiring.Series ? i : i / (m.Resistance * conductance);
            ideal[drive] += m.TorqueConstant * ratio * own;
            torque[drive] += robot.Drives[drive].GearEfficiency * m.TorqueConstant * ratio * own;
        }
    }
}
