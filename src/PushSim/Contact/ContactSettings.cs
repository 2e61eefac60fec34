namespace PushSim.Contact;

/// <summary>What a contact between two robots, or of a robot and a wall, is made of.</summary>
public sealed record ContactSettings
{
    /// <summary>Stiffness per length of the overlap, of both sides together [N/m^2]; softer than real bodies, stiffer than any tyre.</summary>
    public double Stiffness { get; init; } = 1e6;

    /// <summary>Hunt-Crossley damping d of the factor (1 + d depth') [s/m].</summary>
    public double Damping { get; init; } = 5.0;

    /// <summary>Friction coefficient along the faces and along a ramp [1].</summary>
    public double Friction { get; init; } = 0.3;

    /// <summary>Shear at which the contact's friction slides [m].</summary>
    public double FrictionDeflection { get; init; } = 0.0005;
}
