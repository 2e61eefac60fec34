using PushSim.Tyres;

namespace PushSim.Scenarios.Reading;

/// <summary>A tyre of a file.</summary>
internal static class TyreReader
{
    // Normal force times sliding distance per figure of the standard drum test, 10 N over 40 m [N m].
    private const double DrumWork = 400.0;

    // The engine's table holds this many points.
    private const int MostFrictionPoints = 8;

    public static TyreSettings Read(Section s, string name)
    {
        var d = new TyreSettings { Name = name, StaticFriction = 1, KineticFriction = 1, CarcassStiffness = 1, CarcassDamping = 1, TreadMass = 1, VerticalStiffness = 1 };
        d = d with
        {
            StaticFriction = s.Required("static_friction"),
            KineticFriction = s.Required("kinetic_friction"),
            CarcassStiffness = s.Required("body_stiffness"),
            CarcassDamping = s.Required("body_damping"),
            TreadMass = s.Required("tread_mass"),
            VerticalStiffness = s.Required("vertical_stiffness"),
            SlipSpeed = s.Or("slip_speed", d.SlipSpeed),
            BreakawayDeflection = s.Or("breakaway_deflection", d.BreakawayDeflection),
            BristleDampingRatio = s.Or("bristle_damping", d.BristleDampingRatio),
            ViscousFriction = s.Or("viscous_friction", d.ViscousFriction),
            ElasticShare = s.Or("elastic_share", d.ElasticShare),
            PlainBristle = s.Flag("plain_bristle", d.PlainBristle),
            RollingRenewal = Renewal(s, d.RollingRenewal),
            VerticalDamping = s.Or("vertical_damping", d.VerticalDamping),
            RollingResistance = s.Or("rolling_resistance", d.RollingResistance),
            FrictionRise = s.Or("friction_rise", d.FrictionRise),
            FrictionRiseSpeed = s.Or("friction_rise_speed", d.FrictionRiseSpeed),
            FrictionTable = s.Curve("friction_table", MostFrictionPoints, 0.0, 100.0, 0.01, 10.0),
            LoadExponent = s.Or("load_exponent", d.LoadExponent),
            ReferenceLoad = s.Or("reference_load", d.ReferenceLoad),
            TreadAreaFraction = s.Or("tread_area", d.TreadAreaFraction),
            DustyFrictionRatio = s.Or("dusty_friction", d.DustyFrictionRatio),
            FoulingDistance = s.Or("fouling_distance", d.FoulingDistance),
            SpecificWear = s.Or("wear", 0.0) / DrumWork,
        };
        if (d.KineticFriction > d.StaticFriction)
        {
            s.Context.Error(s.PlaceOf("kinetic_friction"), FormattableString.Invariant($"kinetic friction {d.KineticFriction:G4} is above static friction {d.StaticFriction:G4}"), "swap them, or use friction_rise for friction that grows with slip speed");
        }

        return d;
    }

    private static double Renewal(Section s, double byDefault)
    {
        double? length = s.Number("contact_length");
        double? renewal = s.Number("rolling_renewal");
        if (length is not null && renewal is not null)
        {
            s.Context.Error(s.PlaceOf("rolling_renewal"), "\"rolling_renewal\" and \"contact_length\" say the same thing", "keep one of the two");
        }

        return renewal ?? 1.0 / length ?? byDefault;
    }
}
