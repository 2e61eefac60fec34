namespace PushSim.Contact;

/// <summary>What of a robot's body rubs on the floor: tail, skirt, underside, roof. Usual values are common practice, no source.</summary>
public sealed record UndersideSettings
{
    /// <summary>Stiffness of an edge against the floor [N/m^2]; a tail of 1 kg sinks in by less than 0.1 mm.</summary>
    public double Stiffness { get; init; } = 3e6;

    /// <summary>Restitution on the floor at <see cref="Contact.Restitution.StatedSpeed"/> [1].</summary>
    public double Restitution { get; init; } = 0.3;

    /// <summary>Friction of the body on a floor of scale 1; patches of the floor do not change it [1].</summary>
    public double Friction { get; init; } = 0.3;

    /// <summary>Shear at which that friction slides [m].</summary>
    public double FrictionDeflection { get; init; } = 0.0002;
}
