using System.Runtime.CompilerServices;

namespace PushSim.Simulation;

/// <content>The ledger: powers of every source and sink.</content>
internal sealed partial class RobotEquations<T>
{
    [MethodImpl(Kernel.Part)]
    private void SumLedger(Span<T> y, Span<T> ledger)
    {
        T tread = 0.0, carcass = 0.0, vertical = 0.0, rolling = 0.0;
        for (int i = 0; i < WheelWork.Length; i++)
        {
            tread = tread + WheelWork[i].TreadPower;
            carcass = carcass + WheelWork[i].CarcassPower;
            vertical = vertical + WheelWork[i].VerticalPower;
            rolling = rolling + WheelWork[i].RollingPower;
        }

        T copper = 0.0, brush = 0.0, controller = 0.0, gear = 0.0, viscous = 0.0;
        for (int m = 0; m < MotorWork.Length; m++)
        {
            copper = copper + MotorWork[m].CopperPower;
            brush = brush + MotorWork[m].BrushPower;
        }

        for (int k = 0; k < ControllerWork.Length; k++)
        {
            controller = controller + ControllerWork[k].Loss;
        }

        for (int d = 0; d < Drives.Length; d++)
        {
            T omega = y[Layout.FirstDrive + d];
            gear = gear + (DriveFriction[d] * omega);
            viscous = viscous + (Drives[d].Viscous * omega * omega);
        }

        ledger[LedgerIndex.Tread] = tread;
        ledger[LedgerIndex.Carcass] = carcass;
        ledger[LedgerIndex.Vertical] = vertical;
        ledger[LedgerIndex.Rolling] = rolling;
        ledger[LedgerIndex.Copper] = copper;
        ledger[LedgerIndex.Brush] = brush;
        ledger[LedgerIndex.ControllerLoss] = controller;
        ledger[LedgerIndex.Gear] = gear;
        ledger[LedgerIndex.Viscous] = viscous;
        ledger[LedgerIndex.Underside] = Underside.LostPower;
        ledger[LedgerIndex.Cells] = OpenCircuit * BatteryCurrent;
        ledger[LedgerIndex.BatteryLoss] = Battery is null ? 0.0 : (BatteryFactor * Battery.Numbers.Resistance * BatteryCurrent * BatteryCurrent) + (SlowVoltage * BatteryCurrent);
    }
}
