using PushSim.Chassis;
using PushSim.Powertrain;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>Turns checked settings into the equations' numbers: places relative to the centre of mass, reflected inertias.</summary>
internal static class ModelBuilder
{
    // Wheel speed over which rolling resistance changes sign, as rim speed [m/s]; smaller is stiffer, larger creeps.
    private const double RollingTransitionSpeed = 0.01;

    // Share of s_max that gear friction follows elastically, b [1]; as for the tread.
    private const double DriveElasticShare = 0.8;

    /// <summary>Gravity along floor x, y and down [m/s^2], from the slopes: the board rises by SlopeX towards +x.</summary>
    public static (double X, double Y, double Z) Gravity(FloorSettings floor)
    {
        double g = floor.Gravity;
        double x = -g * Math.Sin(floor.SlopeX);
        double y = -g * Math.Sin(floor.SlopeY);
        return (x, y, Math.Sqrt((g * g) - (x * x) - (y * y)));
    }

    /// <summary>Inertias about the centre of mass, given or those of a uniform body box [kg m^2].</summary>
    public static (double Roll, double Pitch, double Yaw) Inertia(ChassisSettings c)
    {
        double l2 = c.Length * c.Length;
        double w2 = c.Width * c.Width;
        double h2 = c.Height * c.Height;
        return (
            c.RollInertia ?? c.Mass * (w2 + h2) / 12.0,
            c.PitchInertia ?? c.Mass * (l2 + h2) / 12.0,
            c.YawInertia ?? c.Mass * (l2 + w2) / 12.0);
    }

    /// <summary>Canonical order of wheels: front to back, inner to outer, file order within a pair, so that left and right partners
    /// stand side by side in every sum and a symmetric robot stays exactly symmetric.</summary>
    public static RobotSettings InCanonicalOrder(RobotSettings robot)
    {
        double cy = robot.Chassis.CentreOfMassY;
        int[] order = [.. Enumerable.Range(0, robot.Wheels.Count)
            .OrderByDescending(i => robot.Wheels[i].X)
            .ThenBy(i => Math.Abs(robot.Wheels[i].Y - cy))
            .ThenBy(i => i)];
        int[] place = new int[order.Length];
        for (int i = 0; i < order.Length; i++)
        {
            place[order[i]] = i;
        }

        List<DriveSettings> drives = [.. robot.Drives.Select(d => d with
        {
            Wheels = [.. d.Wheels.Select(w => (place[w.Wheel], w.Ratio)).OrderBy(w => w.Item1)],
        })];

        // a wheel in no drive that is no skid turns freely: a drive of its own, without motors
        for (int i = 0; i < order.Length; i++)
        {
            if (!robot.Wheels[order[i]].IsSkid && !drives.Any(d => d.Wheels.Any(w => w.Wheel == i)))
            {
                drives.Add(new DriveSettings { Name = robot.Wheels[order[i]].Name, Wheels = [(i, 1.0)] });
            }
        }

        return robot with { Wheels = [.. order.Select(i => robot.Wheels[i])], Drives = drives };
    }

    /// <summary>The equations of a scenario whose robot is in canonical order.</summary>
    public static RobotEquations<T> Build<T>(ScenarioSettings scenario, StateLayout layout, bool hasLedger = true)
        where T : struct, IReal<T>
    {
        RobotSettings robot = scenario.Robot;
        ChassisSettings c = robot.Chassis;
        (double roll, double pitch, double yaw) = Inertia(c);
        (double gx, double gy, double gz) = Gravity(scenario.Floor);
        int motors = robot.Controllers.Sum(k => k.Motors.Count);
        var equations = new RobotEquations<T>
        {
            Layout = layout,
            HasLedger = hasLedger,
            Wheels = Aligned.Copy([.. robot.Wheels.Select((_, i) => Wheel<T>(scenario, layout, i))]),
            Drives = Aligned.Copy([.. robot.Drives.Select((_, d) => Drive<T>(robot, layout, d))]),
            Motors = BuildMotors<T>(robot, layout),
            Controllers = BuildControllers<T>(robot, layout),
            Battery = robot.Battery is null || robot.Controllers.Count == 0 ? null : new BatteryEquations<T>(robot.Battery),
            Tether = scenario.Tether is null ? null : Tether<T>(scenario.Tether, c, scenario.Manoeuvre.InitialHeading),
            Underside = Underside<T>(robot, scenario.Floor),
            Patches = [.. scenario.Floor.Patches.Select(p => new PatchParameters<T> { MinX = p.MinX, MaxX = p.MaxX, MinY = p.MinY, MaxY = p.MaxY, FrictionScale = p.FrictionScale })],
            WheelWork = Aligned.Array<WheelWork<T>>(robot.Wheels.Count),
            MotorWork = Aligned.Array<MotorWork<T>>(motors),
            ControllerWork = Aligned.Array<ControllerWork<T>>(robot.Controllers.Count),
            CommandValue = Aligned.Array<T>(robot.Controllers.Count),
            CommandSlope = Aligned.Array<T>(robot.Controllers.Count),
            IsHeld = Aligned.Array<T>(robot.Drives.Count),
            GivenRate = scenario.GivenSpeeds.Count == 0 ? null : new T[robot.Drives.Count],
            IsGiven = scenario.GivenSpeeds.Count == 0 ? null : [.. robot.Drives.Select((_, d) => scenario.GivenSpeeds.Any(g => g.Drive == d))],
            SideSign = [.. robot.Controllers.Select(k => (T)(k.Side == CommandSide.Left ? -1.0 : 1.0))],
            Driver = new DriverEquations<T>(scenario.Manoeuvre),
            DriveFriction = Aligned.Array<T>(robot.Drives.Count),
            DriveCapacity = Aligned.Array<T>(robot.Drives.Count),
            Mass = c.Mass,
            InverseMass = 1.0 / c.Mass,
            InverseRoll = 1.0 / roll,
            InversePitch = 1.0 / pitch,
            InverseYaw = 1.0 / yaw,
            GyroRoll = (yaw - pitch) / roll,
            GyroPitch = (roll - yaw) / pitch,
            GyroYaw = (pitch - roll) / yaw,
            Height = c.CentreOfMassHeight,
            GravityX = gx,
            GravityY = gy,
            GravityZ = gz,
            Downforce = c.Downforce,
            DownforceX = c.DownforceX - c.CentreOfMassX,
            DownforceY = c.DownforceY - c.CentreOfMassY,
            InverseDownforceGap = 1.0 / c.DownforceGap,
            FloorFriction = scenario.Floor.FrictionScale,
            AirTemperature = scenario.Floor.AirTemperature,
        };
        return equations;
    }

    private static Contact.FloorContact<T> Underside<T>(RobotSettings robot, FloorSettings floor)
        where T : struct, IReal<T>
    {
        Contact.UndersideSettings u = robot.OutlineOrBox.Underside;
        return new(SceneBuilder.Body(robot), u with { Friction = floor.FrictionScale * u.Friction });
    }

    /// <summary>Where a wheel stands and its radius; the rest is left empty.</summary>
    public static WheelParameters<T> WheelGeometry<T>(RobotSettings robot, int index)
        where T : struct, IReal<T>
    {
        WheelSettings w = robot.Wheels[index];
        return new WheelParameters<T>
        {
            X = w.X - robot.Chassis.CentreOfMassX,
            Y = w.Y - robot.Chassis.CentreOfMassY,
            HubZ = w.Radius + w.Height - robot.Chassis.CentreOfMassHeight,
            Radius = w.Radius,
        };
    }

    private static WheelParameters<T> Wheel<T>(ScenarioSettings scenario, StateLayout layout, int index)
        where T : struct, IReal<T>
    {
        RobotSettings robot = scenario.Robot;
        WheelSettings w = robot.Wheels[index];
        TyreSettings t = w.Tyre;
        double sigma0 = t.StaticFriction / t.BreakawayDeflection;
        double sigma1 = 2.0 * t.TreadDamping * Math.Sqrt(t.TreadMass * sigma0 / t.ReferenceLoad);
        int drive = -1;
        double ratio = 1.0;
        for (int d = 0; d < robot.Drives.Count; d++)
        {
            foreach ((int wheel, double r) in robot.Drives[d].Wheels)
            {
                if (wheel == index)
                {
                    (drive, ratio) = (d, r);
                }
            }
        }

        return WheelGeometry<T>(robot, index) with
        {
            DriveRatio = ratio,
            Drive = drive,
            LateralRatio = t.LateralFrictionRatio,
            SpinRadius = t.SpinRadius,
            SpinIndex = layout.Spin[index],
            TreadMass = t.TreadMass,
            InverseTreadMass = 1.0 / t.TreadMass,
            BodyStiffness = t.BodyStiffness,
            BodyDamping = t.BodyDamping,
            RingStep = Math.Sqrt(t.TreadMass / t.BodyStiffness),
            VerticalStiffness = t.VerticalStiffness,
            VerticalDamping = t.VerticalDamping,
            Sigma0 = sigma0,
            Sigma1 = sigma1,
            Sigma1Over4Sigma0 = sigma1 / (4.0 * sigma0),
            Sigma2 = t.ViscousFriction,
            LimitDamping = !t.PlainFriction,
            KineticFriction = t.KineticFriction,
            FrictionDrop = t.StaticFriction - t.KineticFriction,
            InverseSlipSpeed = 1.0 / t.SlipSpeed,
            ElasticShare = t.ElasticShare,
            InverseSigma0 = 1.0 / sigma0,
            InversePlasticShare = 1.0 / (1.0 - t.ElasticShare),
            Plain = t.PlainFriction,
            Kappa = w.IsSkid ? 0.0 : t.RollingRenewal,
            HasRolling = t.RollingResistance > 0.0 && drive >= 0,
            RollingResistance = t.RollingResistance,
            InverseRollingSpeed = w.Radius / RollingTransitionSpeed,
            HasRise = t.FrictionRise != 0.0,
            FrictionRise = t.FrictionRise,
            InverseRiseSpeed = 1.0 / t.FrictionRiseSpeed,
            HasLoadExponent = t.LoadExponent != 0.0,
            LoadExponent = t.LoadExponent,
            InverseReferenceLoad = 1.0 / (t.TreadArea * t.ReferenceLoad),
            FoulingIndex = layout.Fouling[index],
            DustyRatio = t.DustyFriction,
            InverseFoulingDistance = layout.Fouling[index] >= 0 ? scenario.Floor.Dust / t.FoulingDistance : 0.0,
            Table = t.FrictionTable is null ? null : new FrictionTable<T>(t.FrictionTable),
            WearIndex = layout.Wear[index],
            WearRate = t.SpecificWear * scenario.Floor.Abrasiveness,
        };
    }

    private static DriveParameters<T> Drive<T>(RobotSettings robot, StateLayout layout, int index)
        where T : struct, IReal<T>
    {
        DriveSettings d = robot.Drives[index];
        double inertia = DriveInertia(robot, d);
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
            BristleIndex = layout.DriveBristle[index] < 0 ? -1 : layout.DriveBristle[index] - layout.ExplicitCount,
        };
    }

    /// <summary>I = sum ratio^2 I_wheel + sum G^2 J_rotor + extra [kg m^2].</summary>
    public static double DriveInertia(RobotSettings robot, DriveSettings d) =>
        d.Wheels.Sum(w => w.Ratio * w.Ratio * robot.Wheels[w.Wheel].SpinInertia)
        + d.Motors.Sum(m => m.Ratio * m.Ratio * m.Motor.RotorInertia)
        + d.ExtraInertia;

    /// <summary>Open-circuit pack voltage at full charge [V]; 0 without battery.</summary>
    public static double PackVoltage(RobotSettings robot) =>
        robot.Battery is null ? 0.0 : robot.Battery.Cells * robot.Battery.CellVoltage[^1].Voltage;

    private static MotorParameters<T>[] BuildMotors<T>(RobotSettings robot, StateLayout layout)
        where T : struct, IReal<T>
    {
        List<MotorParameters<T>> list = [];
        foreach (ControllerSettings controller in robot.Controllers)
        {
            foreach ((int d, int m) in controller.Motors)
            {
                (MotorSettings motor, double ratio) = robot.Drives[d].Motors[m];
                double constant = motor.TorqueConstant * ratio;
                double from20 = motor.ReferenceTemperature - 20.0;
                bool hasHeat = motor.WindingToCaseThermalResistance > 0.0;
                list.Add(new MotorParameters<T>
                {
                    Constant = constant,
                    GearLoss = (1.0 - robot.Drives[d].GearEfficiency) * constant,
                    Resistance = motor.Resistance,
                    ResistanceRise = PowertrainEquations.CopperRise / (1.0 + (PowertrainEquations.CopperRise * from20)),
                    ReferenceTemperature = motor.ReferenceTemperature,
                    BrushDrop = motor.BrushDrop,
                    IsSensorless = motor.StandstillTorqueShare < 1.0,
                    StandstillShare = motor.StandstillTorqueShare,
                    InverseFullTorqueSpeed = motor.FullTorqueSpeed > 0.0 ? ratio / motor.FullTorqueSpeed : 0.0,
                    WindingToCaseConductance = hasHeat ? 1.0 / motor.WindingToCaseThermalResistance : 0.0,
                    CaseToAirConductance = hasHeat ? 1.0 / motor.CaseToAirThermalResistance : 0.0,
                    InverseWindingCapacity = hasHeat ? 1.0 / motor.WindingHeatCapacity : 0.0,
                    InverseCaseCapacity = hasHeat ? 1.0 / motor.CaseHeatCapacity : 0.0,
                    Drive = d,
                    HeatIndex = layout.MotorHeat[list.Count],
                });
            }
        }

        return Aligned.Copy([.. list]);
    }

    private static ControllerParameters<T>[] BuildControllers<T>(RobotSettings robot, StateLayout layout)
        where T : struct, IReal<T>
    {
        ControllerParameters<T>[] list = Aligned.Array<ControllerParameters<T>>(robot.Controllers.Count);
        int first = 0;
        for (int k = 0; k < list.Length; k++)
        {
            ControllerSettings c = robot.Controllers[k];
            bool hasHeat = c.ThermalResistance > 0.0;

            // no limit: far above any current, but finite so that fold-back can scale it
            double unlimited = c.Motors.Sum(m => 4.0 * PackVoltage(robot) / robot.Drives[m.Drive].Motors[m.Motor].Motor.Resistance);
            list[k] = new ControllerParameters<T>
            {
                CurrentLimit = double.IsPositiveInfinity(c.CurrentLimit) ? unlimited : c.CurrentLimit,
                OnResistance = c.OnResistance,
                Wiring = c.Wiring,
                BetweenPulses = c.BetweenPulses ?? BetweenPulses.Brake,
                HasPulses = c.HasPulses,
                LimitsEachPulse = c.LimitsEachPulse,
                PulseTimeOverInductance = 1.0 / ((c.PulseFrequency ?? ControllerSettings.UsualPulseFrequency) * Inductance(robot, c)),
                Regeneration = c.Regeneration,
                HasBrushDrop = c.Motors.Any(m => robot.Drives[m.Drive].Motors[m.Motor].Motor.BrushDrop > 0.0),
                FoldBackTemperature = c.FoldBackTemperature,
                InverseFoldBackSpan = 1.0 / (c.ShutDownTemperature - c.FoldBackTemperature),
                ThermalConductance = hasHeat ? 1.0 / c.ThermalResistance : 0.0,
                InverseHeatCapacity = hasHeat ? 1.0 / c.HeatCapacity : 0.0,
                HeatIndex = layout.ControllerHeat[k],
                FirstMotor = first,
                MotorCount = c.Motors.Count,
            };
            first += c.Motors.Count;
        }

        return list;
    }

    // Of all its motors: the sum in a row, the inverse of the sum of inverses side by side [H].
    private static double Inductance(RobotSettings robot, ControllerSettings c)
    {
        double[] all = [.. c.Motors.Select(m => PulseEquations.Inductance(robot.Drives[m.Drive].Motors[m.Motor].Motor))];
        return c.Wiring == Wiring.Parallel ? 1.0 / all.Sum(l => 1.0 / l) : all.Sum();
    }

    private static TetherEquations<T> Tether<T>(TetherSettings t, ChassisSettings c, double heading)
        where T : struct, IReal<T>
    {
        double hookX = t.HookX - c.CentreOfMassX;
        double hookY = t.HookY - c.CentreOfMassY;
        (double sine, double cosine) = Math.SinCos(heading);
        double gapX = t.AnchorX - ((cosine * hookX) - (sine * hookY));
        double gapY = t.AnchorY - ((sine * hookX) + (cosine * hookY));
        double gapZ = t.AnchorHeight - t.HookHeight;
        return new TetherEquations<T>
        {
            HookX = hookX,
            HookY = hookY,
            HookZ = t.HookHeight - c.CentreOfMassHeight,
            AnchorY = t.AnchorY,
            AnchorHeight = t.AnchorHeight,
            FreeLength = Math.Sqrt((gapX * gapX) + (gapY * gapY) + (gapZ * gapZ)) + t.Slack,
            Stiffness = t.Stiffness,
            Damping = t.Damping,
            CentreHeight = c.CentreOfMassHeight,
        };
    }
}
