namespace PushSim.Simulation;

/// <summary>What is recorded of a speed controller; one property a series.</summary>
/// <param name="part">The controller.</param>
public sealed class ControllerTrace(TracePart part)
{
    /// <summary>Name of the controller.</summary>
    public string Name { get; } = part.Name;

    /// <summary>What it is told, 1 all forward, -1 all backward [1].</summary>
    public Series Command { get; } = part.Add("command_*", "1", p => p.Controller.Duty.Value);

    /// <summary>Current to its motors [A].</summary>
    public Series Current { get; } = part.Add("controller_*_current_a", "A", p => p.Controller.Current.Value);

    /// <summary>Whether its current limit acts: 1, else 0 [1].</summary>
    public Series Limiting { get; } = part.Add("controller_*_limiting", "1", p => p.Controller.IsLimiting.Value);

    /// <summary>Temperature; null where its heat is not followed [°C].</summary>
    public Series? Temperature { get; } = part.AddIfAny("controller_*_temperature_degc", "°C", part.Layout.ControllerHeat[part.Index]);
}
