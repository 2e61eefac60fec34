namespace PushSim.Contact;

/// <summary>What a contact between two robots, or of a robot and a wall, is made of.</summary>
public sealed record ContactSettings
{
    /// <summary>Share of <see cref="Stiffness"/> that each edge has against a face: two flush noses 170 mm wide, with what their caps add, then have that stiffness per length [1].</summary>
    public const double EdgeShare = 0.63;

    /// <summary>Stiffness per length of two flush faces [N/m^2]; softer than real bodies, stiffer than any tyre.</summary>
    public double Stiffness { get; init; } = 1e6;

    /// <summary>Stiffness of an edge against a face [N/m^2].</summary>
    public double EdgeStiffness => EdgeShare * Stiffness;

    /// <summary>Restitution: share of the closing speed that comes back from a bump at <see cref="Contact.Restitution.StatedSpeed"/> [1].</summary>
    public double Restitution { get; init; } = 0.2;

    /// <summary>Friction coefficient of the faces [1].</summary>
    public double Friction { get; init; } = 0.3;

    /// <summary>Shear at which the contact's friction slides [m].</summary>
    public double FrictionDeflection { get; init; } = 0.0005;

    /// <summary>tau, time in which friction of upright faces on each other forgets a bump [s]; 0: it never does. Without a source: driven robots shake.</summary>
    public double FrictionMemory { get; init; } = 0.1;
}
