using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>Turns settings of a wheel and its tyre into numbers and switches of the equations.</summary>
internal static class WheelBuilder
{
    // Wheel speed over which rolling resistance changes sign, as rim speed [m/s]; smaller is stiffer, larger creeps.
    private const double RollingTransitionSpeed = 0.01;

    /// <summary>Where a wheel stands and its radius; the rest is left empty.</summary>
    public static WheelParameters<T> Geometry<T>(RobotSettings robot, int index)
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

    /// <summary>All its numbers.</summary>
    public static WheelParameters<T> Numbers<T>(ScenarioSettings scenario, int index)
        where T : struct, IReal<T>
    {
        RobotSettings robot = scenario.Robot;
        WheelSettings w = robot.Wheels[index];
        TyreSettings t = w.Tyre;
        double sigma0 = t.StaticFriction / t.BreakawayDeflection;
        double sigma1 = 2.0 * t.TreadDamping * Math.Sqrt(t.TreadMass * sigma0 / t.ReferenceLoad);
        (int _, double ratio) = DriveOf(robot, index);
        return Geometry<T>(robot, index) with
        {
            DriveRatio = ratio,
            LateralRatio = t.LateralFrictionRatio,
            SpinRadius = t.SpinRadius,
            TreadMass = t.TreadMass,
            InverseTreadMass = 1.0 / t.TreadMass,
            BodyStiffness = t.BodyStiffness,
            BodyDamping = t.BodyDamping,
            RingStep = Math.Sqrt(t.TreadMass / t.BodyStiffness),
            VerticalStiffness = t.VerticalStiffness,
            VerticalDamping = t.VerticalDamping,
            InverseLossSquared = Math.Pow((1.0 + t.Rebound) / (1.0 - t.Rebound), 2.0),
            Sigma0 = sigma0,
            Sigma1 = sigma1,
            Sigma1Over4Sigma0 = sigma1 / (4.0 * sigma0),
            Sigma2 = t.ViscousFriction,
            KineticFriction = t.KineticFriction,
            FrictionDrop = t.StaticFriction - t.KineticFriction,
            InverseSlipSpeed = 1.0 / t.SlipSpeed,
            ElasticShare = t.ElasticShare,
            InverseSigma0 = 1.0 / sigma0,
            InversePlasticShare = 1.0 / (1.0 - t.ElasticShare),
            Kappa = w.IsSkid ? 0.0 : t.RollingRenewal,
            RollingResistance = t.RollingResistance,
            InverseRollingSpeed = w.Radius / RollingTransitionSpeed,
            FrictionRise = t.FrictionRise,
            InverseRiseSpeed = 1.0 / t.FrictionRiseSpeed,
            LoadExponent = t.LoadExponent,
            InverseReferenceLoad = 1.0 / (t.TreadArea * t.ReferenceLoad),
            DustyRatio = t.DustyFriction,
            InverseFoulingDistance = t.FoulingDistance > 0.0 ? scenario.Floor.Dust / t.FoulingDistance : 0.0,
            WearRate = t.SpecificWear * scenario.Floor.Abrasiveness,
        };
    }

    /// <summary>What is no number of it.</summary>
    public static WheelKind<T> Kind<T>(ScenarioSettings scenario, StateLayout layout, int index)
        where T : struct, IReal<T>
    {
        WheelSettings w = scenario.Robot.Wheels[index];
        TyreSettings t = w.Tyre;
        (int drive, double _) = DriveOf(scenario.Robot, index);
        var shape = new WheelShape
        {
            Drive = drive,
            SpinIndex = layout.Spin[index],
            LimitDamping = !t.PlainFriction,
            Plain = t.PlainFriction,
            HasRolling = t.RollingResistance > 0.0 && drive >= 0,
            HasRise = t.FrictionRise != 0.0,
            HasLoadExponent = t.LoadExponent != 0.0,
            FoulingIndex = layout.Fouling[index],
            WearIndex = layout.Wear[index],
        };
        return new WheelKind<T>(shape, t.FrictionTable is null ? null : new FrictionTable<T>(t.FrictionTable));
    }

    // Its drive, -1 for a skid, and its speed over the drive's [1].
    private static (int Drive, double Ratio) DriveOf(RobotSettings robot, int index)
    {
        (int Drive, double Ratio) found = (-1, 1.0);
        for (int d = 0; d < robot.Drives.Count; d++)
        {
            foreach ((int wheel, double ratio) in robot.Drives[d].Wheels)
            {
                if (wheel == index)
                {
                    found = (d, ratio);
                }
            }
        }

        return found;
    }
}
