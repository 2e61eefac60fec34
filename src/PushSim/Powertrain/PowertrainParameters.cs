namespace PushSim.Powertrain;

/// <summary>Numbers of one drive as the equations use them, and nothing else.</summary>
internal struct DriveParameters<T>
    where T : struct, IReal<T>
{
    /// <summary>1/I [1/(kg m^2)], I [kg m^2].</summary>
    public T InverseInertia, Inertia;

    /// <summary>Constant part of the friction torque [N m]; holding torque at zero command [N m].</summary>
    public T DryFriction, HoldTorque;

    /// <summary>s_max [rad], 1/s_max, b s_max [rad], 1/((1 - b) s_max) [1/rad], tau_s [s].</summary>
    public T WindUp, InverseWindUp, Low, InverseSpan, DampingTime;

    /// <summary>Viscous friction of all its motors at the drive, sum visc G^2 [N m s/rad].</summary>
    public T Viscous;
}

/// <summary>Numbers of one motor on its drive, and nothing else.</summary>
internal struct MotorParameters<T>
    where T : struct, IReal<T>
{
    /// <summary>Kt G: volts per drive speed and torque per ampere at the drive [V s/rad = N m/A].</summary>
    public T Constant;

    /// <summary>(1 - eta) Kt G [N m/A].</summary>
    public T GearLoss;

    /// <summary>Winding resistance at the reference temperature [ohm] and its rise a [1/K] from that temperature [degree Celsius].</summary>
    public T Resistance, ResistanceRise, ReferenceTemperature;

    /// <summary>Brush drop [V].</summary>
    public T BrushDrop;

    /// <summary>Sensorless start: torque share at standstill [1], 1/full-torque drive speed [s/rad].</summary>
    public T StandstillShare, InverseFullTorqueSpeed;

    /// <summary>Heat flow per kelvin, winding to case and case to air [W/K]; 1/heat capacity of winding and case [K/J].</summary>
    public T WindingToCaseConductance, CaseToAirConductance, InverseWindingCapacity, InverseCaseCapacity;
}

/// <summary>Numbers of one controller, and nothing else.</summary>
internal struct ControllerParameters<T>
    where T : struct, IReal<T>
{
    /// <summary>Current limit [A], finite even without one; on-resistance [ohm].</summary>
    public T CurrentLimit, OnResistance;

    /// <summary>Fold-back: start [degree Celsius], 1/(span to zero limit) [1/K]; heat flow to air [W/K], 1/heat capacity [K/J].</summary>
    public T FoldBackTemperature, InverseFoldBackSpan;
    public T ThermalConductance, InverseHeatCapacity;

    /// <summary>T/L of its motors together [s/H].</summary>
    public T PulseTimeOverInductance;

    /// <summary>Sign of the turn's share in its command: -1 on the left side, 1 on the right [1].</summary>
    public T SideSign;
}

/// <summary>One motor during an evaluation.</summary>
internal struct MotorWork<T>
    where T : struct, IReal<T>
{
    /// <summary>Back-EMF [V], hot resistance [ohm], current [A].</summary>
    public T BackEmf, Resistance, Current;

    /// <summary>Copper loss, brush loss [W].</summary>
    public T CopperPower, BrushPower;
}

/// <summary>One controller with its motors seen as one source E behind one resistance R, during an evaluation.</summary>
internal struct ControllerWork<T>
    where T : struct, IReal<T>
{
    /// <summary>Equivalent back-EMF [V], resistance without the switches [ohm], brush drop [V].</summary>
    public T Source, Resistance, Drop;

    /// <summary>Command [1], effective current limit [A], sensorless torque share [1].</summary>
    public T Duty, Limit, Share;

    /// <summary>Mirrored to a command d >= 0: sign of the command, |d|, sign E [V], 1/(R + R_on) [S], least current i_lo [A]; set once
    /// an evaluation by <see cref="ControllerEquations.Prepare"/>.</summary>
    public T Sign, Magnitude, Emf, Conductance, Low;

    /// <summary>Output current (sum if parallel) [A], bridge voltage [V], power taken from the bus [W], its own loss [W].</summary>
    public T Current, Voltage, BusPower, Loss;

    /// <summary>Mean square of the current over a pulse beyond the square of its mean [A^2].</summary>
    public T Ripple;

    /// <summary>1 where the current limit acts, 0 else.</summary>
    public T IsLimiting;

    /// <summary>1 where its terminals are open (coast or locked at zero command), 0 else; 1 where it stands at zero command, 0 else.</summary>
    public T IsOpen, IsZero;
}
