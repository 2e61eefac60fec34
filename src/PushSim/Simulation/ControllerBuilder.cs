using PushSim.Powertrain;

namespace PushSim.Simulation;

/// <summary>Turns settings of controllers and of the motors behind them into numbers and switches of the equations. Motors stand in the order of the controllers.</summary>
internal static class ControllerBuilder
{
    /// <summary>Numbers of all motors.</summary>
    public static MotorParameters<T>[] Motors<T>(RobotSettings robot)
        where T : struct, IReal<T> => [.. InOrder(robot).Select(place => Motor<T>(robot.Drives[place.Drive], place.Motor))];

    /// <summary>What is no number of them.</summary>
    public static MotorShape[] MotorShapes(RobotSettings robot, StateLayout layout) => [.. InOrder(robot).Select((place, m) => new MotorShape
    {
        IsSensorless = robot.Drives[place.Drive].Motors[place.Motor].Motor.StandstillTorqueShare < 1.0,
        Drive = place.Drive,
        HeatIndex = layout.MotorHeat[m],
    })];

    /// <summary>Numbers of a controller.</summary>
    public static ControllerParameters<T> Numbers<T>(RobotSettings robot, ControllerSettings c)
        where T : struct, IReal<T>
    {
        bool hasHeat = c.ThermalResistance > 0.0;

        // no limit: far above any current, but finite so that fold-back can scale it
        double unlimited = c.Motors.Sum(m => 4.0 * DriveBuilder.PackVoltage(robot) / robot.Drives[m.Drive].Motors[m.Motor].Motor.Resistance);
        return new ControllerParameters<T>
        {
            CurrentLimit = double.IsPositiveInfinity(c.CurrentLimit) ? unlimited : c.CurrentLimit,
            OnResistance = c.OnResistance,
            PulseTimeOverInductance = 1.0 / ((c.PulseFrequency ?? ControllerSettings.UsualPulseFrequency) * Inductance(robot, c)),
            FoldBackTemperature = c.FoldBackTemperature,
            InverseFoldBackSpan = 1.0 / (c.ShutDownTemperature - c.FoldBackTemperature),
            ThermalConductance = hasHeat ? 1.0 / c.ThermalResistance : 0.0,
            InverseHeatCapacity = hasHeat ? 1.0 / c.HeatCapacity : 0.0,
            SideSign = c.Side == CommandSide.Left ? -1.0 : 1.0,
        };
    }

    /// <summary>What is no number of all controllers.</summary>
    public static ControllerShape[] Shapes(RobotSettings robot, StateLayout layout)
    {
        var list = new ControllerShape[robot.Controllers.Count];
        int first = 0;
        for (int k = 0; k < list.Length; k++)
        {
            ControllerSettings c = robot.Controllers[k];
            list[k] = new ControllerShape
            {
                Wiring = c.Wiring,
                BetweenPulses = c.BetweenPulses ?? BetweenPulses.Brake,
                HasPulses = c.HasPulses,
                LimitsEachPulse = c.LimitsEachPulse,
                Regeneration = c.Regeneration,
                HasBrushDrop = c.Motors.Any(m => robot.Drives[m.Drive].Motors[m.Motor].Motor.BrushDrop > 0.0),
                HeatIndex = layout.ControllerHeat[k],
                FirstMotor = first,
                MotorCount = c.Motors.Count,
            };
            first += c.Motors.Count;
        }

        return list;
    }

    private static IEnumerable<(int Drive, int Motor)> InOrder(RobotSettings robot) => robot.Controllers.SelectMany(c => c.Motors);

    private static MotorParameters<T> Motor<T>(DriveSettings drive, int index)
        where T : struct, IReal<T>
    {
        (MotorSettings motor, double ratio) = drive.Motors[index];
        double constant = motor.TorqueConstant * ratio;
        double from20 = motor.ReferenceTemperature - 20.0;
        bool hasHeat = motor.WindingToCaseThermalResistance > 0.0;
        return new MotorParameters<T>
        {
            Constant = constant,
            GearLoss = (1.0 - drive.GearEfficiency) * constant,
            Resistance = motor.Resistance,
            ResistanceRise = PowertrainEquations.CopperRise / (1.0 + (PowertrainEquations.CopperRise * from20)),
            ReferenceTemperature = motor.ReferenceTemperature,
            BrushDrop = motor.BrushDrop,
            StandstillShare = motor.StandstillTorqueShare,
            InverseFullTorqueSpeed = motor.FullTorqueSpeed > 0.0 ? ratio / motor.FullTorqueSpeed : 0.0,
            WindingToCaseConductance = hasHeat ? 1.0 / motor.WindingToCaseThermalResistance : 0.0,
            CaseToAirConductance = hasHeat ? 1.0 / motor.CaseToAirThermalResistance : 0.0,
            InverseWindingCapacity = hasHeat ? 1.0 / motor.WindingHeatCapacity : 0.0,
            InverseCaseCapacity = hasHeat ? 1.0 / motor.CaseHeatCapacity : 0.0,
        };
    }

    // Of all its motors: the sum in a row, the inverse of the sum of inverses side by side [H].
    private static double Inductance(RobotSettings robot, ControllerSettings c)
    {
        double[] all = [.. c.Motors.Select(m => PulseEquations.Inductance(robot.Drives[m.Drive].Motors[m.Motor].Motor))];
        return c.Wiring == Wiring.Parallel ? 1.0 / all.Sum(l => 1.0 / l) : all.Sum();
    }
}
