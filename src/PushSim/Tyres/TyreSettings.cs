namespace PushSim.Tyres;

/// <summary>One kind of tyre in the model's own numbers. Friction values hold for the clean reference floor (friction scale 1) at the reference pressure.</summary>
public sealed record TyreSettings
{
    /// <summary>Name used in tables and messages.</summary>
    public required string Name { get; init; }

    /// <summary>Static (breakaway) friction coefficient [1].</summary>
    public required double StaticFriction { get; init; }

    /// <summary>Kinetic (sliding) friction coefficient far above the slip speed [1].</summary>
    public required double KineticFriction { get; init; }

    /// <summary>Speed over which friction falls from static to kinetic (Stribeck speed) [m/s].</summary>
    public double SlipSpeed { get; init; } = 0.5;

    /// <summary>Friction sideways over that along the wheel, mu_y/mu_x, both at rest and sliding [1]. The tyre body and its ring count as this ratio's square stiffer, more damped and heavier sideways.</summary>
    public double LateralFrictionRatio { get; init; } = 1.0;

    /// <summary>Width of the contact patch, across the wheel [m]; 0: its moment against turning on the spot is left out.</summary>
    public double PatchWidth { get; init; }

    /// <summary>Length of the contact patch, along the wheel [m]; null: 1/<see cref="RollingRenewal"/>.</summary>
    public double? PatchLength { get; init; }

    /// <summary>Mean distance of the patch's points from its middle: the moment of a patch that turns on the spot in full slide is mu N times it [m]; 0 without a patch.
    /// s = (2 d + l^2/b ln((b + d)/l) + b^2/l ln((l + d)/b))/12, d = sqrt(l^2 + b^2) (computed here).</summary>
    internal double SpinRadius
    {
        get
        {
            if (!(PatchWidth > 0.0))
            {
                return 0.0;
            }

            double l = PatchLength ?? (1.0 / RollingRenewal);
            double b = PatchWidth;
            double d = double.Hypot(l, b);
            return ((2.0 * d) + (l * l / b * Math.Log((b + d) / l)) + (b * b / l * Math.Log((l + d) / b))) / 12.0;
        }
    }

    /// <summary>Tread deflection at which sliding begins, z_max = mu_s/sigma0 [m].</summary>
    public double BreakawayDeflection { get; init; } = 0.3e-3;

    /// <summary>Damping ratio of the tread mass on its bristles at the reference load [1]; gives sigma1.</summary>
    public double TreadDamping { get; init; } = 0.3;

    /// <summary>Viscous friction per unit load, sigma2 [s/m].</summary>
    public double ViscousFriction { get; init; }

    /// <summary>Share of the breakaway deflection below which the bristle is purely elastic, b in [0, 1) [1].</summary>
    public double ElasticShare { get; init; } = 0.8;

    /// <summary>True for the plain published LuGre law (alpha = 1 always); false for the elasto-plastic switch.</summary>
    public bool PlainFriction { get; init; }

    /// <summary>Bristle renewal by rolling, kappa = 1 / contact length [1/m]; 0 switches it off.</summary>
    public double RollingRenewal { get; init; } = 100.0;

    /// <summary>Tangential stiffness of the tyre body (carcass) at the rim, k_c [N/m].</summary>
    public required double BodyStiffness { get; init; }

    /// <summary>Tangential damping of the tyre body, c_c [N s/m].</summary>
    public required double BodyDamping { get; init; }

    /// <summary>Mass of the tread ring, m_t [kg].</summary>
    public required double TreadMass { get; init; }

    /// <summary>Vertical stiffness at the static load, k_z [N/m].</summary>
    public required double VerticalStiffness { get; init; }

    /// <summary>Vertical damping of small swings on a load, d in N = -k_z z (1 - d z') for small z' [s/m].</summary>
    public double VerticalDamping { get; init; } = 2.0;

    /// <summary>Share of its height to which the dropped wheel comes back, at whatever speed it lands, R [1]. Half is common for rubber and plastic: common practice, no source.</summary>
    public double Rebound { get; init; } = 0.5;

    /// <summary>Rolling resistance coefficient, crr [1].</summary>
    public double RollingResistance { get; init; }

    /// <summary>Friction rise per e-fold of slip speed, mu_r [1]; 0 is off.</summary>
    public double FrictionRise { get; init; }

    /// <summary>Reference speed of the friction rise, v_r [m/s].</summary>
    public double FrictionRiseSpeed { get; init; } = 0.1;

    /// <summary>Measured friction against slip speed, (m/s, 1) in rising speed, at most 8 points; null: the three-number curve.</summary>
    public IReadOnlyList<(double Speed, double Friction)>? FrictionTable { get; init; }

    /// <summary>Load exponent p of mu (N/(f N0))^-p, of either sign [1]; 0 is off.</summary>
    public double LoadExponent { get; init; }

    /// <summary>Reference load N0 of the load dependence and of the bristle damping [N].</summary>
    public double ReferenceLoad { get; init; } = 3.0;

    /// <summary>Share of the contact that is tread, f [1].</summary>
    public double TreadArea { get; init; } = 1.0;

    /// <summary>Friction when fully fouled with dust, as a multiple of the clean value [1].</summary>
    public double DustyFriction { get; init; } = 1.0;

    /// <summary>Sliding distance over which dust fouls the tread, L_d [m]; 0 switches dust off.</summary>
    public double FoulingDistance { get; init; }

    /// <summary>Specific wear, k_w = ISO 4649 volume loss / 400 N m [m^3/(N m)]; 0 switches wear off.</summary>
    public double SpecificWear { get; init; }

    /// <summary>Width of the cover on the floor, for the worn depth [m]; null: not known.</summary>
    public double? CoverWidth { get; init; }

    /// <summary>Thickness of the cover on its hub, for its life [m]; null: not known.</summary>
    public double? CoverThickness { get; init; }

    /// <summary>Density of the cover, for the worn mass [kg/m^3]; null: not known.</summary>
    public double? CoverDensity { get; init; }

    /// <summary>This tyre with all its friction times a factor [1].</summary>
    internal TyreSettings Gripping(double factor) => this with
    {
        StaticFriction = factor * StaticFriction,
        KineticFriction = factor * KineticFriction,
        FrictionRise = factor * FrictionRise,
        FrictionTable = FrictionTable?.Select(p => (p.Speed, factor * p.Friction)).ToList(),
    };

    /// <summary>This tyre with these two frictions as the whole of it at its reference load [1]: no table, rise or dust.</summary>
    internal TyreSettings WithFriction(double atRest, double sliding) => this with
    {
        StaticFriction = atRest,
        KineticFriction = sliding,
        FrictionTable = null,
        FrictionRise = 0.0,
        FoulingDistance = 0.0,
        DustyFriction = 1.0,
    };
}
