using PushSim.Chassis;
using PushSim.Scenarios.Estimates;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Units;
using PushSim.Tyres;

namespace PushSim.Scenarios.Robots;

/// <summary>A tyre of a file: its numbers as given, and the data of its cover, kept until the wheels and their load are known.</summary>
internal sealed class TyreReader
{
    // The engine's table holds this many points.
    private const int MostFrictionPoints = 16;

    // Heights read off a ruler; more is a contradiction.
    private const double MostReboundMismatch = 0.05;

    private static readonly string[] NeededKeys = ["body_stiffness", "body_damping", "tread_mass", "vertical_stiffness"];

    private static readonly string[] CoverKeys =
        ["width", "tread_thickness", "material", "modulus", "shore_a", "solid_shore_a", "density", "poisson_ratio", "rebound", "drop_height", "rebound_height", "hub_stiffness"];

    private readonly Section _s;
    private readonly TyreData _data;

    // A mistake in this table was complained about; estimating from it would only add noise.
    private readonly bool _isWrong;

    public TyreReader(Section section, string name)
    {
        int errors = section.Context.Errors;
        _s = section;
        Given = ReadGiven(section, name);
        _data = ReadData(section, name);
        foreach (string key in new[] { "shelf", "made", "note" })
        {
            _ = section.Text(key);
        }

        foreach (string key in new[] { "diameter", "wheel_mass", "price" })
        {
            _ = section.Number(key);
        }

        Given = Given with { Rebound = _data.Rebound ?? Given.Rebound, CoverWidth = _data.Width, CoverThickness = _data.Thickness, CoverDensity = _data.Density ?? (_data.Material is CoverMaterial m ? CoverMaterialFacts.Of(m).Density : null) };
        CheckShore();
        if (Given is { PatchWidth: > 0.0, PatchLength: null, RollingRenewal: 0.0 })
        {
            section.Context.Error(section.PlaceOf("patch_width"), $"tyre \"{name}\" has a patch_width, but no length of its patch", "add patch_length = \"12 mm\"");
        }

        _isWrong = errors != section.Context.Errors;
    }

    /// <summary>The tyre as the file gives it; NaN where a number is missing or wrong.</summary>
    public TyreSettings Given { get; }

    /// <summary>What must still be known before a wheel can have it; empty if nothing.</summary>
    public IReadOnlyList<string> Lacks()
    {
        string[] missing = [.. NeededKeys.Where(k => !_s.Has(k))];
        if (_isWrong || missing.Length == 0)
        {
            return [];
        }

        // any light load and large wheel: what is asked is only whether an estimate can be made
        TyreEstimate estimate = TyreFromData.Estimate(_data with { Radius = 1.0, Load = 1e-3 });
        return missing.Any(k => Of(estimate, k) is null) ? CoverKeys.Any(_s.Has) ? estimate.Missing : ["its cover: width, tread_thickness, and shelf or material, shore_a, rebound"] : [];
    }

    /// <summary>The tyre with what is missing estimated, for the wheels that have it, at least one.</summary>
    public TyreSettings Finish(IReadOnlyList<WheelSettings> users, ChassisSettings? chassis, int wheels)
    {
        string[] missing = [.. NeededKeys.Where(k => !_s.Has(k))];
        if (!CoverKeys.Any(_s.Has))
        {
            if (missing.Length > 0)
            {
                ReportLacking(missing, "or describe the cover instead: width, tread_thickness, material, shore_a (or modulus), rebound");
            }

            return Given;
        }

        WheelSettings wheel = users.FirstOrDefault(w => !w.IsSkid) ?? users[0];
        double load = _s.Has("reference_load") ? Given.ReferenceLoad : StaticLoad(chassis, wheels);
        double carried = StaticLoad(chassis, wheels);
        TyreData data = _data with { Radius = wheel.Radius, Load = load, CarriedLoad = double.IsNaN(carried) ? null : carried, CarriedMass = chassis?.Mass / wheels };
        if (_isWrong)
        {
            return Given;
        }

        if (double.IsNaN(load) || data.Radius is double.NaN)
        {
            // complained about there; what the cover lacks can be said all the same, with any light load
            _ = IsEnough(missing, TyreFromData.Estimate(data with { Radius = 1.0, Load = 1e-3 }));
            return Given;
        }

        if (data.Radius <= data.Thickness)
        {
            _s.Context.Error(_s.PlaceOf("tread_thickness"), FormattableString.Invariant($"the cover is {1e3 * data.Thickness:G4} mm thick, but wheel \"{wheel.Name}\" has a radius of {1e3 * data.Radius:G4} mm"), "give the thickness on the hub, measured along the radius");
            return Given;
        }

        TyreEstimate estimate = TyreFromData.Estimate(data);
        NoteMixedWheels(users, wheel, missing);
        return IsEnough(missing, estimate) ? Fill(missing, estimate) : Given;
    }

    // Load of a wheel if all carry the same [N]; NaN if the chassis is wrong or missing.
    private static double StaticLoad(ChassisSettings? chassis, int wheels) =>
        chassis is null || wheels == 0 ? double.NaN : ((chassis.Mass * UnitTable.G) + chassis.Downforce) / wheels;

    private bool IsEnough(string[] missing, TyreEstimate e)
    {
        string[] lacking = [.. missing.Where(k => Of(e, k) is null)];
        if (lacking.Length > 0)
        {
            ReportLacking(lacking, $"or what {(lacking.Length == 1 ? "it is" : "they are")} estimated from; still missing: {string.Join(", ", e.Missing)}");
        }

        return lacking.Length == 0;
    }

    private TyreSettings Fill(string[] missing, TyreEstimate e)
    {
        Estimated?[] found = [.. missing.Select(k => Of(e, k))];
        Estimated? length = _s.Has("contact_length") || _s.Has("rolling_renewal") ? null : e.ContactLength;
        Estimated? slip = _s.Has("breakaway_deflection") || _s.Has("body_stiffness") ? null : e.BreakawayDeflection;
        if (missing.Length > 0 || length is not null)
        {
            foreach (string warning in e.Warnings)
            {
                _s.Context.Warning(_s.Place, $"tyre \"{Given.Name}\": {warning}", "a measured body_stiffness and vertical_stiffness replace the estimate");
            }
        }

        Estimated? reference = _s.Has("reference_load") ? null : e.ReferenceLoad;
        Estimated? bounce = _s.Has("vertical_damping") ? null : e.VerticalDamping;
        foreach (Estimated estimated in found.Append(length).Append(slip).Append(reference).Append(bounce).OfType<Estimated>())
        {
            _s.Context.Note($"tyre \"{Given.Name}\": {estimated.Note}", estimated.Error);
        }

        return missing.Aggregate(Given, (tyre, key) => KeyTable.Find("tyre", key)!.Row<TyreSettings>()!.Put(tyre, Of(e, key)!.Value)) with
        {
            RollingRenewal = 1.0 / length?.Value ?? Given.RollingRenewal,
            BreakawayDeflection = slip?.Value ?? Given.BreakawayDeflection,
            VerticalDamping = bounce?.Value ?? Given.VerticalDamping,
            ReferenceLoad = reference?.Value ?? Given.ReferenceLoad,
        };
    }

    private static Estimated? Of(TyreEstimate e, string key) => key switch
    {
        "body_stiffness" => e.BodyStiffness,
        "body_damping" => e.BodyDamping,
        "tread_mass" => e.TreadMass,
        _ => e.VerticalStiffness,
    };

    private void ReportLacking(string[] keys, string otherwise) =>
        _s.Missing([.. keys, .. CoverKeys], $"tyre \"{Given.Name}\" lacks {string.Join(", ", keys)}", $"give {(keys.Length == 1 ? "it" : "them")}, {otherwise}");

    private void NoteMixedWheels(IReadOnlyList<WheelSettings> users, WheelSettings wheel, string[] missing)
    {
        if (missing.Length > 0 && users.Any(w => w.IsSkid == wheel.IsSkid && w.Radius != wheel.Radius))
        {
            _s.Context.Notes.Add(FormattableString.Invariant($"tyre \"{Given.Name}\": its wheels differ in diameter; it is estimated for \"{wheel.Name}\", {2e3 * wheel.Radius:G4} mm"));
        }
    }

    // A foam's own Shore A does not give its modulus.
    private void CheckShore()
    {
        bool isFoam = _data.Material is CoverMaterial m && CoverMaterialFacts.Of(m).IsFoam;
        if (isFoam && _s.Has("shore_a"))
        {
            _s.Context.Error(_s.PlaceOf("shore_a"), "the Shore A hardness of a foam says little of its modulus", "give modulus, or density with solid_shore_a (the hardness of the solid it is made of)");
        }
        else if (_data.Material is not null && !isFoam && _s.Has("solid_shore_a"))
        {
            _s.Context.Error(_s.PlaceOf("solid_shore_a"), "\"solid_shore_a\" is for foams", "use shore_a for a solid cover");
        }
    }

    private TyreData ReadData(Section s, string name)
    {
        int material = s.Choice("material");
        var data = new TyreData { Name = name, Material = material < 0 ? null : (CoverMaterial)material };
        return s.Fill(data) with
        {
            Rebound = Rebound(s),
            StaticFriction = Given.StaticFriction,
            TreadArea = Given.TreadArea,
            LoadExponent = Given.LoadExponent,
            BodyStiffness = s.Has("body_stiffness") ? Given.BodyStiffness : null,
            VerticalStiffness = s.Has("vertical_stiffness") ? Given.VerticalStiffness : null,
            TreadMass = s.Has("tread_mass") ? Given.TreadMass : null,
        };
    }

    private static double? Rebound(Section s)
    {
        double? given = s.Number("rebound");
        double? drop = s.Number("drop_height");
        double? height = s.Number("rebound_height");
        if (s.Has("drop_height") != s.Has("rebound_height"))
        {
            (string has, string lacks) = s.Has("drop_height") ? ("drop_height", "rebound_height") : ("rebound_height", "drop_height");
            s.Context.Error(s.PlaceOf(has), $"\"{has}\" without \"{lacks}\" gives no rebound", $"add {lacks}, or give rebound = \"45 %\"");
            return double.NaN;
        }

        double? measured = height / drop;
        if (measured >= 1.0)
        {
            s.Context.Error(s.PlaceOf("rebound_height"), FormattableString.Invariant($"it came back to {1e3 * height:G4} mm from a drop of {1e3 * drop:G4} mm"), "nothing comes back higher than it fell");
            return double.NaN;
        }

        if (given is not null && Math.Abs((measured - given) ?? 0.0) > MostReboundMismatch)
        {
            s.Context.Warning(s.PlaceOf("rebound"), FormattableString.Invariant($"the heights give a rebound of {100.0 * measured:G3} %, but \"rebound\" says {100.0 * given:G3} %"), "\"rebound\" is used; drop one of the two");
        }

        return given ?? measured;
    }

    private static TyreSettings ReadGiven(Section s, string name)
    {
        TyreSettings d = s.Fill(
            Blank.Tyre with { Name = name },
            ("slip_speed", t => NeededKeys.Aggregate(t, s.Put)),
            ("rolling_renewal", t => t with { RollingRenewal = Renewal(s, t.RollingRenewal) }),
            ("friction_table", t => t with { FrictionTable = s.Curve("friction_table", MostFrictionPoints, 0.0, 100.0, 0.01, 10.0) }));
        _ = s.Number("own_share");
        if (d.KineticFriction > d.StaticFriction && s.Context.Drawn is not null)
        {
            // the two are drawn for themselves; a tread never grips better sliding than it held
            d = d with { KineticFriction = d.StaticFriction };
        }
        else if (d.KineticFriction > d.StaticFriction)
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
