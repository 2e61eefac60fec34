using PushSim.Powertrain;

namespace PushSim.Analysis.Limits;

/// <summary>Winding and case of one motor, heated by a power that was found at the winding's temperature and follows it.</summary>
internal sealed class ThermalNodes
{
    private readonly MotorSettings _motor;
    private readonly double _air;
    private double _power;
    private double _at;

    public ThermalNodes(MotorSettings motor, double air)
    {
        (_motor, _air) = (motor, air);
        (Winding, Case, Peak) = (air, air, air);
    }

    public bool IsKnown => _motor.WindingToCaseThermalResistance > 0.0;

    public double Winding { get; private set; }

    public double Case { get; private set; }

    public double Peak { get; private set; }

    public double Limit => _motor.WindingLimitTemperature;

    /// <summary>Time constant of the winding against the case [s].</summary>
    public double WindingTime => _motor.WindingToCaseThermalResistance * _motor.WindingHeatCapacity;

    /// <summary>Copper loss at the present temperature [W].</summary>
    public double Power
    {
        set => (_power, _at) = (value, Winding);
    }

    /// <summary>One step at a constant current: the loss follows the resistance.</summary>
    public void Warm(double dt)
    {
        if (!IsKnown)
        {
            return;
        }

        double rise = PowertrainEquations.CopperRise / (1.0 + (PowertrainEquations.CopperRise * (_motor.ReferenceTemperature - 20.0)));
        double Rate(double temperature) => (1.0 + (rise * (temperature - _motor.ReferenceTemperature))) / (1.0 + (rise * (_at - _motor.ReferenceTemperature)));

        // the midpoint rule on both nodes
        (double dw, double dc) = Slope(Winding, Case);
        (dw, dc) = Slope(Winding + (0.5 * dt * dw), Case + (0.5 * dt * dc));
        Winding += dt * dw;
        Case += dt * dc;
        Peak = Math.Max(Peak, Winding);

        (double, double) Slope(double w, double c)
        {
            double flow = (w - c) / _motor.WindingToCaseThermalResistance;
            return (((_power * Rate(w)) - flow) / _motor.WindingHeatCapacity, (flow - ((c - _air) / _motor.CaseToAirThermalResistance)) / _motor.CaseHeatCapacity);
        }
    }
}
