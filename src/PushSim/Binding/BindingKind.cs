namespace PushSim.Binding;

/// <summary>What binds a wheel: what would have to be more for it to give more.</summary>
public enum BindingKind
{
    /// <summary>Nothing: no command and no braking motor, or no motor.</summary>
    Nothing,

    /// <summary>Its tyre slides at the end of its grip.</summary>
    Tyre,

    /// <summary>A controller holds the current at its limit.</summary>
    CurrentLimit,

    /// <summary>A hot controller has folded its limit back.</summary>
    Heat,

    /// <summary>It stands, and gets only the current that the sliding wheels in series with it let through.</summary>
    Series,

    /// <summary>The battery's voltage has broken down under the load.</summary>
    Battery,

    /// <summary>The motor gives what the commanded voltage less its back-EMF allows.</summary>
    Motor,

    /// <summary>It is off the floor, for longer than a hop.</summary>
    Lifted,
}
