namespace PushSim.Scenarios.Estimates;

/// <summary>What <see cref="TyreFromData"/> made of a tyre's data; null is what the data do not give.</summary>
public sealed record TyreEstimate
{
    /// <summary>Vertical stiffness at the static load, k_z, in N/m.</summary>
    public Estimated? VerticalStiffness { get; init; }

    /// <summary>Tangential stiffness of the tyre body, k_c, in N/m.</summary>
    public Estimated? BodyStiffness { get; init; }

    /// <summary>Tangential damping of the tyre body, c_c, in N s/m.</summary>
    public Estimated? BodyDamping { get; init; }

    /// <summary>Vertical damping, d in N = -k_z z (1 - d z'), in s/m.</summary>
    public Estimated? VerticalDamping { get; init; }

    /// <summary>Mass of the tread ring, m_t, in kg.</summary>
    public Estimated? TreadMass { get; init; }

    /// <summary>Length of the contact, L, in m.</summary>
    public Estimated? ContactLength { get; init; }

    /// <summary>Shear of the tread at which sliding begins, z_max, in m.</summary>
    public Estimated? BreakawayDeflection { get; init; }

    /// <summary>Load at which the friction values are taken to hold, N0, in N; null also where friction does not depend on load.</summary>
    public Estimated? ReferenceLoad { get; init; }

    /// <summary>Cautions about the data, in sentences.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>What the stiffnesses, the tread mass or the damping still need, in words; empty if nothing.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];
}
