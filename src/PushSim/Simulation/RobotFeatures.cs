using PushSim.Binding;

namespace PushSim.Simulation;

/// <summary>What a verdict needs of one robot.</summary>
internal struct RobotFeatures<T>
    where T : struct, IReal<T>
{
    /// <summary>Greatest load of a driven wheel [N].</summary>
    public T Carries;

    /// <summary>Load of each driven wheel, its force along its rim [N]; 1 where its tyre slides, 0 else; what binds it on the floor while it does not, a <see cref="BindingKind"/> [1].</summary>
    public T[] Loads, Forces, Slides, Kinds;

    /// <summary>Greatest motor current, what its controller holds that motor to [A], and which motor it is [1].</summary>
    public T MotorCurrent, MotorLimit, Motor;

    /// <summary>Greatest load of a wheel [N], and which wheel carries it [1].</summary>
    public T Load, Wheel;

    /// <summary>Battery current, greatest controller current [A], battery voltage, residual of the bus equation [V].</summary>
    public T BatteryCurrent, ControllerCurrent, Voltage, Residual;
}
