using PushSim.Tyres;

namespace PushSim.Scenarios.Estimates;

/// <summary>What a builder knows of a tyre with a cover on a hub: any part of it. Null is not known. SI.</summary>
public sealed record TyreData
{
    /// <summary>Name used in tables and messages.</summary>
    public required string Name { get; init; }

    /// <summary>Outer radius of the wheel with its cover, R [m].</summary>
    public double? Radius { get; init; }

    /// <summary>Static load of one wheel, N [N].</summary>
    public double? Load { get; init; }

    /// <summary>Load under which the wheel bounces, N1 [N]; null: <see cref="Load"/>.</summary>
    public double? CarriedLoad { get; init; }

    /// <summary>Mass that bounces on the wheel, m [kg]; null: what weighs as much as that load.</summary>
    public double? CarriedMass { get; init; }

    /// <summary>Width of the cover, w [m].</summary>
    public double? Width { get; init; }

    /// <summary>Thickness of the cover on the hub, h [m].</summary>
    public double? Thickness { get; init; }

    /// <summary>Class of its material.</summary>
    public CoverMaterial? Material { get; init; }

    /// <summary>Young's modulus, E [Pa].</summary>
    public double? Modulus { get; init; }

    /// <summary>Shore A hardness of a solid cover [1].</summary>
    public double? ShoreA { get; init; }

    /// <summary>Shore A hardness of the solid that a foam is made of [1].</summary>
    public double? SolidShoreA { get; init; }

    /// <summary>Density of the cover [kg/m^3].</summary>
    public double? Density { get; init; }

    /// <summary>Poisson's ratio [1]; null: that of the class of material.</summary>
    public double? Poisson { get; init; }

    /// <summary>Share of the drop height that comes back, R = h1/h0 [1].</summary>
    public double? Rebound { get; init; }

    /// <summary>Stiffness of hub, shaft and mount at the contact, in series with the cover in every direction [N/m]; null: rigid.</summary>
    public double? HubStiffness { get; init; }

    /// <summary>Static friction, for the breakaway deflection [1].</summary>
    public double? StaticFriction { get; init; }

    /// <summary>Share of its face that is tread, f; the pattern is taken to be as deep as the cover [1].</summary>
    public double TreadArea { get; init; } = 1.0;

    /// <summary>Load exponent of its friction, p [1]; where it is 0 no reference load is estimated.</summary>
    public double LoadExponent { get; init; }

    /// <summary>Tangential stiffness if it is known, k_c [N/m]; null: to be estimated.</summary>
    public double? BodyStiffness { get; init; }

    /// <summary>Vertical stiffness if it is known, k_z [N/m]; null: to be estimated.</summary>
    public double? VerticalStiffness { get; init; }

    /// <summary>Tread mass if it is known, m_t [kg]; null: to be estimated.</summary>
    public double? TreadMass { get; init; }
}
