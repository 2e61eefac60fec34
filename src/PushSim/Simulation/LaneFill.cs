using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>Puts the numbers of a scalar scene into one lane of a scene of the same structure. What is no number (indices, switches of
/// optional terms) is the structure's and stays. A test walks all fields, so that none is forgotten.</summary>
internal static class LaneFill<T>
    where T : struct, ILanes<T>
{
    /// <summary>All numbers of a run.</summary>
    public static void Scene(SceneEquations<T> to, int lane, SceneEquations<R1> from)
    {
        for (int k = 0; k < to.Robots.Length; k++)
        {
            Robot(to.Robots[k], lane, from.Robots[k]);
        }

        for (int k = 0; k < to.Contacts.Length; k++)
        {
            Pair(to.Contacts[k].Pair, lane, from.Contacts[k].Pair);
            Pose(ref to.Contacts[k].WallPose, lane, from.Contacts[k].WallPose);
        }
    }

    /// <summary>The numbers that jump with the commands.</summary>
    public static void Commands(RobotEquations<T> to, int lane, RobotEquations<R1> from)
    {
        Lane.Set(ref to.SegmentStart, lane, from.SegmentStart);
        Lane.Set(ref to.AnchorSpeed, lane, from.AnchorSpeed);
        Lane.Set(ref to.AnchorSlope, lane, from.AnchorSlope);
        Lane.Set<T>(to.CommandValue, lane, from.CommandValue);
        Lane.Set<T>(to.CommandSlope, lane, from.CommandSlope);
        Lane.Set<T>(to.IsHeld, lane, from.IsHeld);
        if (to.GivenRate is not null)
        {
            Lane.Set<T>(to.GivenRate, lane, from.GivenRate!);
        }

        for (int k = 0; k < to.ControllerWork.Length; k++)
        {
            Lane.Set(ref to.ControllerWork[k].IsZero, lane, from.ControllerWork[k].IsZero);
            Lane.Set(ref to.ControllerWork[k].IsOpen, lane, from.ControllerWork[k].IsOpen);
        }
    }

    private static void Robot(RobotEquations<T> to, int lane, RobotEquations<R1> from)
    {
        Body(to, lane, from);
        Driver(to.Driver, lane, from.Driver);
        Commands(to, lane, from);
        Floor(to.Underside, lane, from.Underside);
        Lane.Set<T>(to.SideSign, lane, from.SideSign);
        for (int i = 0; i < to.Wheels.Length; i++)
        {
            Wheel(ref to.Wheels[i], lane, from.Wheels[i]);
            if (to.Wheels[i].Table is FrictionTable<T> table)
            {
                Table(table, lane, from.Wheels[i].Table!);
            }
        }

        for (int i = 0; i < to.Drives.Length; i++)
        {
            Drive(ref to.Drives[i], lane, from.Drives[i]);
        }

        for (int i = 0; i < to.Motors.Length; i++)
        {
            Motor(ref to.Motors[i], lane, from.Motors[i]);
        }

        for (int i = 0; i < to.Controllers.Length; i++)
        {
            Controller(ref to.Controllers[i], lane, from.Controllers[i]);
        }

        for (int i = 0; i < to.Patches.Length; i++)
        {
            Patch(ref to.Patches[i], lane, from.Patches[i]);
        }

        if (to.Battery is not null)
        {
            Battery(to.Battery, lane, from.Battery!);
        }

        if (to.Tether is not null)
        {
            Tether(to.Tether, lane, from.Tether!);
        }
    }

    private static void Body(RobotEquations<T> to, int lane, RobotEquations<R1> from)
    {
        Lane.Set(ref to.Mass, lane, from.Mass);
        Lane.Set(ref to.InverseMass, lane, from.InverseMass);
        Lane.Set(ref to.InverseRoll, lane, from.InverseRoll);
        Lane.Set(ref to.InversePitch, lane, from.InversePitch);
        Lane.Set(ref to.InverseYaw, lane, from.InverseYaw);
        Lane.Set(ref to.GyroRoll, lane, from.GyroRoll);
        Lane.Set(ref to.GyroPitch, lane, from.GyroPitch);
        Lane.Set(ref to.GyroYaw, lane, from.GyroYaw);
        Lane.Set(ref to.Height, lane, from.Height);
        Lane.Set(ref to.GravityX, lane, from.GravityX);
        Lane.Set(ref to.GravityY, lane, from.GravityY);
        Lane.Set(ref to.GravityZ, lane, from.GravityZ);
        Lane.Set(ref to.Downforce, lane, from.Downforce);
        Lane.Set(ref to.DownforceX, lane, from.DownforceX);
        Lane.Set(ref to.DownforceY, lane, from.DownforceY);
        Lane.Set(ref to.InverseDownforceGap, lane, from.InverseDownforceGap);
        Lane.Set(ref to.FloorFriction, lane, from.FloorFriction);
        Lane.Set(ref to.AirTemperature, lane, from.AirTemperature);
    }

    private static void Driver(DriverEquations<T> to, int lane, DriverEquations<R1> from)
    {
        Lane.Set(ref to.HoldGain, lane, from.HoldGain);
        Lane.Set(ref to.InverseHoldLag, lane, from.InverseHoldLag);
        Lane.Set(ref to.HoldHeadingAt, lane, from.HoldHeadingAt);
        Lane.Set(ref to.SteeringGain, lane, from.SteeringGain);
        Lane.Set(ref to.SteeringLimit, lane, from.SteeringLimit);
        Lane.Set(ref to.SteeringRate, lane, from.SteeringRate);
        Lane.Set(ref to.InverseLag, lane, from.InverseLag);
        Lane.Set(ref to.EasedShare, lane, from.EasedShare);
        Lane.Set(ref to.EasingRate, lane, from.EasingRate);
        Lane.Set(ref to.Patience, lane, from.Patience);
    }

    private static void Wheel(ref WheelParameters<T> to, int lane, in WheelParameters<R1> from)
    {
        Lane.Set(ref to.X, lane, from.X);
        Lane.Set(ref to.Y, lane, from.Y);
        Lane.Set(ref to.HubZ, lane, from.HubZ);
        Lane.Set(ref to.Radius, lane, from.Radius);
        Lane.Set(ref to.DriveRatio, lane, from.DriveRatio);
        Lane.Set(ref to.TreadMass, lane, from.TreadMass);
        Lane.Set(ref to.InverseTreadMass, lane, from.InverseTreadMass);
        Lane.Set(ref to.BodyStiffness, lane, from.BodyStiffness);
        Lane.Set(ref to.BodyDamping, lane, from.BodyDamping);
        Lane.Set(ref to.RingStep, lane, from.RingStep);
        Lane.Set(ref to.LateralRatio, lane, from.LateralRatio);
        Lane.Set(ref to.SpinRadius, lane, from.SpinRadius);
        Lane.Set(ref to.VerticalStiffness, lane, from.VerticalStiffness);
        Lane.Set(ref to.VerticalDamping, lane, from.VerticalDamping);
        Lane.Set(ref to.Sigma0, lane, from.Sigma0);
        Lane.Set(ref to.Sigma1, lane, from.Sigma1);
        Lane.Set(ref to.Sigma1Over4Sigma0, lane, from.Sigma1Over4Sigma0);
        Lane.Set(ref to.Sigma2, lane, from.Sigma2);
        Lane.Set(ref to.KineticFriction, lane, from.KineticFriction);
        Lane.Set(ref to.FrictionDrop, lane, from.FrictionDrop);
        Lane.Set(ref to.InverseSlipSpeed, lane, from.InverseSlipSpeed);
        Lane.Set(ref to.ElasticShare, lane, from.ElasticShare);
        Lane.Set(ref to.Kappa, lane, from.Kappa);
        Lane.Set(ref to.InverseSigma0, lane, from.InverseSigma0);
        Lane.Set(ref to.InversePlasticShare, lane, from.InversePlasticShare);
        Lane.Set(ref to.RollingResistance, lane, from.RollingResistance);
        Lane.Set(ref to.InverseRollingSpeed, lane, from.InverseRollingSpeed);
        Lane.Set(ref to.FrictionRise, lane, from.FrictionRise);
        Lane.Set(ref to.InverseRiseSpeed, lane, from.InverseRiseSpeed);
        Lane.Set(ref to.LoadExponent, lane, from.LoadExponent);
        Lane.Set(ref to.InverseReferenceLoad, lane, from.InverseReferenceLoad);
        Lane.Set(ref to.DustyRatio, lane, from.DustyRatio);
        Lane.Set(ref to.InverseFoulingDistance, lane, from.InverseFoulingDistance);
        Lane.Set(ref to.WearRate, lane, from.WearRate);
    }

    private static void Table(FrictionTable<T> to, int lane, FrictionTable<R1> from)
    {
        Lane.Set<T>(to.Speed, lane, from.Speed);
        Lane.Set<T>(to.Friction, lane, from.Friction);
        Lane.Set<T>(to.Inverse, lane, from.Inverse);
        Lane.Set<T>(to.First, lane, from.First);
        Lane.Set<T>(to.Second, lane, from.Second);
    }

    private static void Drive(ref DriveParameters<T> to, int lane, in DriveParameters<R1> from)
    {
        Lane.Set(ref to.InverseInertia, lane, from.InverseInertia);
        Lane.Set(ref to.Inertia, lane, from.Inertia);
        Lane.Set(ref to.DryFriction, lane, from.DryFriction);
        Lane.Set(ref to.HoldTorque, lane, from.HoldTorque);
        Lane.Set(ref to.WindUp, lane, from.WindUp);
        Lane.Set(ref to.InverseWindUp, lane, from.InverseWindUp);
        Lane.Set(ref to.Low, lane, from.Low);
        Lane.Set(ref to.InverseSpan, lane, from.InverseSpan);
        Lane.Set(ref to.DampingTime, lane, from.DampingTime);
        Lane.Set(ref to.Viscous, lane, from.Viscous);
    }

    private static void Motor(ref MotorParameters<T> to, int lane, in MotorParameters<R1> from)
    {
        Lane.Set(ref to.Constant, lane, from.Constant);
        Lane.Set(ref to.GearLoss, lane, from.GearLoss);
        Lane.Set(ref to.Resistance, lane, from.Resistance);
        Lane.Set(ref to.ResistanceRise, lane, from.ResistanceRise);
        Lane.Set(ref to.ReferenceTemperature, lane, from.ReferenceTemperature);
        Lane.Set(ref to.BrushDrop, lane, from.BrushDrop);
        Lane.Set(ref to.StandstillShare, lane, from.StandstillShare);
        Lane.Set(ref to.InverseFullTorqueSpeed, lane, from.InverseFullTorqueSpeed);
        Lane.Set(ref to.WindingToCaseConductance, lane, from.WindingToCaseConductance);
        Lane.Set(ref to.CaseToAirConductance, lane, from.CaseToAirConductance);
        Lane.Set(ref to.InverseWindingCapacity, lane, from.InverseWindingCapacity);
        Lane.Set(ref to.InverseCaseCapacity, lane, from.InverseCaseCapacity);
    }

    private static void Controller(ref ControllerParameters<T> to, int lane, in ControllerParameters<R1> from)
    {
        Lane.Set(ref to.CurrentLimit, lane, from.CurrentLimit);
        Lane.Set(ref to.OnResistance, lane, from.OnResistance);
        Lane.Set(ref to.PulseTimeOverInductance, lane, from.PulseTimeOverInductance);
        Lane.Set(ref to.FoldBackTemperature, lane, from.FoldBackTemperature);
        Lane.Set(ref to.InverseFoldBackSpan, lane, from.InverseFoldBackSpan);
        Lane.Set(ref to.ThermalConductance, lane, from.ThermalConductance);
        Lane.Set(ref to.InverseHeatCapacity, lane, from.InverseHeatCapacity);
    }

    private static void Battery(BatteryEquations<T> to, int lane, BatteryEquations<R1> from)
    {
        Lane.Set(ref to.Resistance, lane, from.Resistance);
        Lane.Set(ref to.InitialCharge, lane, from.InitialCharge);
        Lane.Set(ref to.InverseCapacity, lane, from.InverseCapacity);
        Lane.Set(ref to.FirstVoltage, lane, from.FirstVoltage);
        Lane.Set(ref to.SlowResistance, lane, from.SlowResistance);
        Lane.Set(ref to.InverseSlowTime, lane, from.InverseSlowTime);
        Lane.Set(ref to.Fall, lane, from.Fall);
        Lane.Set(ref to.EmptyResistance, lane, from.EmptyResistance);
        Lane.Set(ref to.InverseEmptyShare, lane, from.InverseEmptyShare);
        Lane.Set(ref to.InverseHeatCapacity, lane, from.InverseHeatCapacity);
        Lane.Set(ref to.HeatConductance, lane, from.HeatConductance);
        Lane.Set<T>(to.Charge, lane, from.Charge);
        Lane.Set<T>(to.Span, lane, from.Span);
        Lane.Set<T>(to.Slope, lane, from.Slope);
    }

    private static void Tether(TetherEquations<T> to, int lane, TetherEquations<R1> from)
    {
        Lane.Set(ref to.HookX, lane, from.HookX);
        Lane.Set(ref to.HookY, lane, from.HookY);
        Lane.Set(ref to.HookZ, lane, from.HookZ);
        Lane.Set(ref to.AnchorY, lane, from.AnchorY);
        Lane.Set(ref to.AnchorHeight, lane, from.AnchorHeight);
        Lane.Set(ref to.FreeLength, lane, from.FreeLength);
        Lane.Set(ref to.Stiffness, lane, from.Stiffness);
        Lane.Set(ref to.Damping, lane, from.Damping);
        Lane.Set(ref to.CentreHeight, lane, from.CentreHeight);
    }

    private static void Patch(ref PatchParameters<T> to, int lane, in PatchParameters<R1> from)
    {
        Lane.Set(ref to.MinX, lane, from.MinX);
        Lane.Set(ref to.MaxX, lane, from.MaxX);
        Lane.Set(ref to.MinY, lane, from.MinY);
        Lane.Set(ref to.MaxY, lane, from.MaxY);
        Lane.Set(ref to.FrictionScale, lane, from.FrictionScale);
    }

    private static void Pair(ContactPair<T> to, int lane, ContactPair<R1> from)
    {
        Lane.Set(ref to.Reach, lane, from.Reach);
        Lane.Set(ref to.Stiffness, lane, from.Stiffness);
        Lane.Set(ref to.Damping, lane, from.Damping);
        Lane.Set(ref to.Friction, lane, from.Friction);
        Lane.Set(ref to.DeflectionLimit, lane, from.DeflectionLimit);
        Lane.Set(ref to.Forget, lane, from.Forget);
        for (int i = 0; i < to.ShapesA.Length; i++)
        {
            Shape(to.ShapesA[i], lane, from.ShapesA[i]);
        }

        for (int i = 0; i < to.ShapesB.Length; i++)
        {
            Shape(to.ShapesB[i], lane, from.ShapesB[i]);
        }

        Rims(to.WheelsA, lane, from.WheelsA);
        Rims(to.WheelsB, lane, from.WheelsB);
    }

    private static void Rims(WheelRims<T> to, int lane, WheelRims<R1> from)
    {
        Lane.Set<T>(to.X, lane, from.X);
        Lane.Set<T>(to.Y, lane, from.Y);
        Lane.Set<T>(to.Z, lane, from.Z);
        Lane.Set<T>(to.Radius, lane, from.Radius);
        Lane.Set<T>(to.HalfWidth, lane, from.HalfWidth);
        Lane.Set<T>(to.Stiffness, lane, from.Stiffness);
        Lane.Set<T>(to.Friction, lane, from.Friction);
    }

    private static void Floor(FloorContact<T> to, int lane, FloorContact<R1> from)
    {
        Lane.Set(ref to.Stiffness, lane, from.Stiffness);
        Lane.Set(ref to.Damping, lane, from.Damping);
        Lane.Set(ref to.Friction, lane, from.Friction);
        Lane.Set(ref to.DeflectionLimit, lane, from.DeflectionLimit);
        for (int i = 0; i < to.Shapes.Length; i++)
        {
            Shape(to.Shapes[i], lane, from.Shapes[i]);
        }
    }

    private static void Shape(PartShape<T> to, int lane, PartShape<R1> from)
    {
        Lane.Set<T>(to.X, lane, from.X);
        Lane.Set<T>(to.Y, lane, from.Y);
        Lane.Set<T>(to.Z, lane, from.Z);
        Lane.Set<T>(to.NormalX, lane, from.NormalX);
        Lane.Set<T>(to.NormalY, lane, from.NormalY);
        Lane.Set<T>(to.NormalZ, lane, from.NormalZ);
        Lane.Set<T>(to.Offset, lane, from.Offset);
        Lane.Set<T>(to.Length, lane, from.Length);
    }

    private static void Pose(ref BodyPose<T> to, int lane, in BodyPose<R1> from)
    {
        Lane.Set(ref to.X, lane, from.X);
        Lane.Set(ref to.Y, lane, from.Y);
        Lane.Set(ref to.Z, lane, from.Z);
        Lane.Set(ref to.XX, lane, from.XX);
        Lane.Set(ref to.XY, lane, from.XY);
        Lane.Set(ref to.XZ, lane, from.XZ);
        Lane.Set(ref to.YX, lane, from.YX);
        Lane.Set(ref to.YY, lane, from.YY);
        Lane.Set(ref to.YZ, lane, from.YZ);
        Lane.Set(ref to.ZX, lane, from.ZX);
        Lane.Set(ref to.ZY, lane, from.ZY);
        Lane.Set(ref to.ZZ, lane, from.ZZ);
        Lane.Set(ref to.VX, lane, from.VX);
        Lane.Set(ref to.VY, lane, from.VY);
        Lane.Set(ref to.VZ, lane, from.VZ);
        Lane.Set(ref to.WX, lane, from.WX);
        Lane.Set(ref to.WY, lane, from.WY);
        Lane.Set(ref to.WZ, lane, from.WZ);
    }
}
