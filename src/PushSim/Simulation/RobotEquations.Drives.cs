using System.Runtime.CompilerServices;
using PushSim.Powertrain;

namespace PushSim.Simulation;

/// <content>Battery, controllers and motors, and what the drives turn.</content>
internal sealed partial class RobotEquations<T>
{
    [MethodImpl(Kernel.Part)]
    private void Electrics(T t, Span<T> y, Span<T> dy)
    {
        if (Battery is null)
        {
            return;
        }

        ReadOnlySpan<T> spin = y.Slice(Layout.FirstDrive, Drives.Length);
        for (int k = 0; k < Controllers.Length; k++)
        {
            ref readonly ControllerCommand<T> told = ref Commands.Controllers[k];
            ControllerWork[k].Duty = told.Value + (told.Slope * (t - Commands.Segment.Start));
            ControllerWork[k].IsZero = told.IsZero;
            ControllerWork[k].IsOpen = told.IsOpen;
        }

        if (Layout.HasDriver)
        {
            Driver.Apply(Layout, y, dy, Sine, Cosine, ControllerWork, Controllers);
        }

        PowertrainEquations.Gather<T>(Motors, MotorShapes, Controllers, ControllerShapes, spin, y, MotorWork, ControllerWork);
        T voc = Battery.OpenCircuitVoltage(y[Layout.Charge]);
        T source = voc;
        SlowVoltage = 0.0;
        if (Layout.SlowVoltage >= 0)
        {
            SlowVoltage = y[Layout.SlowVoltage];
            source = voc - SlowVoltage;
        }

        BatteryFactor = Battery.ResistanceFactor(y[Layout.Charge], Layout.BatteryHeat >= 0 ? y[Layout.BatteryHeat] : Body.AirTemperature);
        BusVoltage = Battery.Solve(source, BatteryFactor * Battery.Numbers.Resistance, Controllers, ControllerShapes, ControllerWork, out BusResidual);
        PowertrainEquations.Settle<T>(Motors, Controllers, ControllerShapes, BusVoltage, MotorWork, ControllerWork);
        T power = 0.0;
        for (int k = 0; k < Controllers.Length; k++)
        {
            power = power + ControllerWork[k].BusPower;
        }

        BatteryCurrent = power / BusVoltage;
        OpenCircuit = voc;
    }

    [MethodImpl(Kernel.Part)]
    private void SpinDrives(T g, Span<T> y, Span<T> z, Span<T> dy, Span<T> dz)
    {
        Span<T> torque = dy.Slice(Layout.FirstDrive, Drives.Length);
        Span<T> loss = DriveCapacity;
        for (int d = 0; d < Drives.Length; d++)
        {
            torque[d] = -(Drives[d].Viscous * y[Layout.FirstDrive + d]);
            loss[d] = Drives[d].DryFriction + T.IfLess(0.5, Commands.Drives[d].IsHeld, Drives[d].HoldTorque, 0.0);
        }

        for (int m = 0; m < Motors.Length; m++)
        {
            int d = MotorShapes[m].Drive;
            torque[d] = torque[d] + (Motors[m].Constant * MotorWork[m].Current);
            loss[d] = loss[d] + (Motors[m].GearLoss * T.Abs(MotorWork[m].Current));
        }

        for (int i = 0; i < Wheels.Length; i++)
        {
            int d = Kinds[i].Shape.Drive;
            if (d >= 0)
            {
                torque[d] = torque[d] - WheelWork[i].DriveTorque;
            }
        }

        for (int d = 0; d < Drives.Length; d++)
        {
            ref readonly DriveParameters<T> p = ref Drives[d];
            int bristle = DriveShapes[d].BristleIndex;
            DriveFriction[d] = 0.0;
            if (bristle >= 0)
            {
                DriveFriction[d] = PowertrainEquations.Friction(
                    p, y[Layout.FirstDrive + d], loss[d], g, ref z[bristle], out dz[bristle]);
            }

            torque[d] = (torque[d] - DriveFriction[d]) * p.InverseInertia;
        }

        if (HasGiven)
        {
            GivenPower = 0.0;
            for (int d = 0; d < Drives.Length; d++)
            {
                if (DriveShapes[d].IsGiven)
                {
                    T rate = Commands.Drives[d].GivenRate;
                    GivenPower = GivenPower + ((rate - torque[d]) * Drives[d].Inertia * y[Layout.FirstDrive + d]);
                    torque[d] = rate;
                }
            }
        }
    }
}
