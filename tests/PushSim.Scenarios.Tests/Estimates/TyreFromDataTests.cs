using PushSim.Tyres;
using PushSim.Scenarios.Estimates;
using Xunit;

namespace PushSim.Scenarios.Tests.Estimates;

public class TyreFromDataTests
{
    // solid cover R 20 mm, h 5 mm, w 15 mm, Shore 60 A, 2 N: a 0.829 mm, k 73 490 N/m, k_t 35 420 N/m (computed here by an independent solution)
    private static readonly TyreData Solid = new()
    {
        Name = "t",
        Radius = 0.020,
        Load = 2.0,
        Width = 0.015,
        Thickness = 0.005,
        Material = CoverMaterial.Rubber,
        ShoreA = 60.0,
        Density = 1200.0,
        Rebound = 0.45,
        StaticFriction = 0.8,
    };

    [Fact]
    public void A_solid_cover()
    {
        TyreEstimate e = TyreFromData.Estimate(Solid);
        Assert.Empty(e.Missing);
        Assert.Empty(e.Warnings);
        Close(73490.0, e.VerticalStiffness, 0.005);
        Close(2.0 * 0.829e-3, e.ContactLength, 0.005);

        // G w L/h = 1.201691e6 Pa 15 mm 1.658 mm / 5 mm, computed here; below the stuck contact's 35 420 N/m
        Close(5977.0, e.BodyStiffness, 0.005);
        Close(0.5 * 0.8 * 2.0 / 35420.0, e.BreakawayDeflection, 0.005);

        // a third of 1200 kg/m3 15 mm pi (20^2 - 15^2) mm2
        Close(1200.0 * 0.015 * Math.PI * 175e-6 / 3.0, e.TreadMass, 1e-12);
        Close(-1.25 * Math.Log(0.45) / Math.PI * Math.Sqrt(e.BodyStiffness!.Value * e.TreadMass!.Value), e.BodyDamping, 1e-12);
    }

    // The reference size has its friction at 3 N. A cover larger in every length has the same pressure at a load larger as the square (similarity of
    // the contact), whatever its modulus.
    [Theory]
    [InlineData(1.0, 60.0)]
    [InlineData(3.0, 60.0)]
    [InlineData(0.5, 30.0)]
    public void Friction_that_depends_on_load_holds_at_a_pressure(double larger, double shore)
    {
        TyreData size = Solid with { Radius = 0.025 * larger, Thickness = 0.006 * larger, Width = 0.020 * larger, ShoreA = shore, LoadExponent = 0.15, TreadArea = 0.5 };
        TyreEstimate e = TyreFromData.Estimate(size);
        Close(3.0 * larger * larger, e.ReferenceLoad, 1e-6);
        Assert.Contains("which is 11 % of friction", e.ReferenceLoad!.Error, StringComparison.Ordinal);
        Assert.Null(TyreFromData.Estimate(size with { LoadExponent = 0.0 }).ReferenceLoad);
    }

    // Half a swing of a material of loss factor -ln(R)/pi leaves R of its energy (Gent, Engineering with Rubber, from memory), a full one R^2; here of swings
    // about the static load by the law of the wheels, the last of which leave the floor.
    [Theory]
    [InlineData(0.74, 0.1)]
    [InlineData(0.74, 1.0)]
    [InlineData(0.74, 2.0)]
    [InlineData(0.45, 0.1)]
    [InlineData(0.45, 1.0)]
    [InlineData(0.45, 2.0)]
    public void A_bounce_on_it_dies_out_as_its_rebound_says(double rebound, double squashes)
    {
        TyreData cover = Solid with { Rebound = rebound, Modulus = 0.4e6 };
        double static0 = 2.0 / TyreFromData.Estimate(cover).VerticalStiffness!.Value;
        double low = Followed(cover, -(1.0 + squashes) * static0, 0.0, stopsAtFloor: false).Height;
        double left = Math.Pow((low + static0) / (squashes * static0), 2.0);
        Assert.Equal(rebound * rebound, left, (squashes > 1.0 ? 0.15 : 0.06) * rebound * rebound);
    }

    // Dropped on it, a mass comes back to the rebound at any speed of a drop test; the weight's own work on the squash takes a little at slow ones (computed here).
    [Theory]
    [InlineData(0.74, 1.0, 0.04)]
    [InlineData(0.74, 3.0, 0.02)]
    [InlineData(0.6, 1.0, 0.07)]
    [InlineData(0.6, 3.0, 0.03)]
    [InlineData(0.45, 1.0, 0.11)]
    [InlineData(0.45, 3.0, 0.04)]
    public void Dropped_on_it_a_mass_comes_back_to_the_rebound(double rebound, double landing, double within)
    {
        double speed = Followed(Solid with { Rebound = rebound, Modulus = 0.4e6 }, 0.0, -landing, stopsAtFloor: true).Speed;
        Assert.InRange(speed * speed / (landing * landing), (1.0 - within) * rebound, rebound);
    }

    [Fact]
    public void Vertical_damping_takes_the_load_and_mass_that_bounce_and_stays_in_its_range()
    {
        double eta = -Math.Log(0.45) / Math.PI;
        Close(eta * Math.Sqrt(5000.0 * 2.0 / 9.80665) / 2.0, TyreFromData.Estimate(Solid with { VerticalStiffness = 5000.0 }).VerticalDamping, 1e-9);
        Close(eta * Math.Sqrt(5000.0 * 0.3) / 4.0, TyreFromData.Estimate(Solid with { VerticalStiffness = 5000.0, CarriedLoad = 4.0, CarriedMass = 0.3 }).VerticalDamping, 1e-9);
        Estimated most = TyreFromData.Estimate(Solid with { VerticalStiffness = 1e8 }).VerticalDamping!;
        Assert.Equal(100.0, most.Value);
        Assert.Contains("the most that is allowed", most.Note, StringComparison.Ordinal);
        Assert.Null(TyreFromData.Estimate(Solid with { Rebound = null }).VerticalDamping);
    }

    // foam cover R 25 mm, h 10 mm, w 20 mm, 0.4 MPa, nu 0, 2 N: a 2.763 mm, k 7620 N/m (computed here by an independent solution)
    [Fact]
    public void A_foam_cover()
    {
        TyreEstimate e = TyreFromData.Estimate(Solid with { Radius = 0.025, Thickness = 0.010, Width = 0.020, Material = CoverMaterial.ClosedFoam, ShoreA = null, Modulus = 0.4e6, Density = 200.0 });
        Close(7620.0, e.VerticalStiffness, 0.005);
        Close(5.526e-3, e.ContactLength, 0.005);
        Close(0.2e6 * 0.020 * 5.526e-3 / 0.010, e.BodyStiffness, 0.005);
    }

    [Fact]
    public void A_foam_by_density_is_its_scaled_modulus()
    {
        TyreData foam = Solid with { Material = CoverMaterial.ClosedFoam, ShoreA = null, SolidShoreA = 60.0, Density = 230.0 };
        double modulus = CoverModulus.OfClosedFoam(3.605073e6, 0.2, 0.0);
        Close(TyreFromData.Estimate(foam with { Modulus = modulus }).VerticalStiffness!.Value, TyreFromData.Estimate(foam).VerticalStiffness, 1e-6);
    }

    // open cells bend alone: E = E_s r^2 (Gibson and Ashby, from memory), less than closed ones of the same density
    [Fact]
    public void An_open_foam_by_density_is_softer_than_a_closed_one()
    {
        TyreData foam = Solid with { Material = CoverMaterial.OpenFoam, ShoreA = null, SolidShoreA = 60.0, Density = 460.0 };
        TyreEstimate open = TyreFromData.Estimate(foam);
        Close(TyreFromData.Estimate(foam with { Modulus = CoverModulus.FromShoreA(60.0) * 0.4 * 0.4 }).VerticalStiffness!.Value, open.VerticalStiffness, 1e-6);
        Assert.True(open.VerticalStiffness!.Value < TyreFromData.Estimate(foam with { Material = CoverMaterial.ClosedFoam }).VerticalStiffness!.Value);
        Assert.Contains("of 0.46 g/cm3 and Shore 60 A solid (0.577 MPa)", open.VerticalStiffness.Note);
    }

    // grooves over 40 % of its face: the rest alone is pressed and weighed, and told
    [Fact]
    public void A_grooved_tread_counts_by_its_area()
    {
        TyreEstimate grooved = TyreFromData.Estimate(Solid with { TreadArea = 0.6 });
        Close(TyreFromData.Estimate(Solid with { Modulus = 0.6 * CoverModulus.FromShoreA(60.0) }).VerticalStiffness!.Value, grooved.VerticalStiffness, 1e-9);
        Close(0.6 * TyreFromData.Estimate(Solid).TreadMass!.Value, grooved.TreadMass, 1e-12);
        Assert.Contains(", 60 % of it tread", grooved.VerticalStiffness!.Note);
        Assert.DoesNotContain("of it tread", TyreFromData.Estimate(Solid).VerticalStiffness!.Note);
    }

    [Fact]
    public void A_given_body_stiffness_makes_the_damping()
    {
        TyreEstimate e = TyreFromData.Estimate(Solid with { BodyStiffness = 2500.0, TreadMass = 4e-3 });
        Close(-1.25 * Math.Log(0.45) / Math.PI * Math.Sqrt(10.0), e.BodyDamping, 1e-12);
    }

    // by the independent solution: contact 1.658 mm, stuck contact 35 420 N/m
    [Fact]
    public void Notes_tell_the_contact_and_what_its_stiffness_would_be_stuck()
    {
        TyreEstimate e = TyreFromData.Estimate(Solid);
        Assert.StartsWith("contact length 1.66 mm at 2 N", e.ContactLength!.Note);
        Assert.Contains("the cover in shear over the contact; stuck in one with the rest of the cover it would be 35", e.BodyStiffness!.Note);
        Assert.StartsWith("breakaway deflection 0.0226 mm", e.BreakawayDeflection!.Note);
    }

    [Fact]
    public void A_flexible_hub_acts_in_series()
    {
        TyreEstimate rigid = TyreFromData.Estimate(Solid);
        TyreEstimate flexible = TyreFromData.Estimate(Solid with { HubStiffness = 20e3 });
        Close(1.0 / ((1.0 / rigid.VerticalStiffness!.Value) + (1.0 / 20e3)), flexible.VerticalStiffness, 1e-12);
        Close(1.0 / ((1.0 / rigid.BodyStiffness!.Value) + (1.0 / 20e3)), flexible.BodyStiffness, 1e-12);
        Assert.Contains("hub's 20000 N/m", flexible.BodyStiffness!.Note);
    }

    [Fact]
    public void Known_stiffness_and_mass_give_the_damping_alone()
    {
        TyreEstimate e = TyreFromData.Estimate(new TyreData { Name = "t", Rebound = 0.5, BodyStiffness = 2500.0, TreadMass = 4e-3 });
        Close(1.25 * Math.Log(2.0) / Math.PI * Math.Sqrt(10.0), e.BodyDamping, 1e-12);
        Assert.Null(e.VerticalStiffness);
        Assert.Contains("tread thickness", e.Missing);
    }

    [Fact]
    public void Notes_read_as_sentences()
    {
        TyreEstimate e = TyreFromData.Estimate(Solid);
        Assert.StartsWith("vertical stiffness 73500 N/m at 2 N, estimated from Shore 60 A (3.61 MPa), 5 mm cover, 15 mm wide (good to a factor of 2)", e.VerticalStiffness!.Note);
        Assert.Equal("tread mass 3.3 g, estimated as a third of the cover's 9.9 g (1.2 g/cm3)", e.TreadMass!.Note);
        Assert.EndsWith("45 % rebound: loss factor 0.318 (good to 25 %)", e.BodyDamping!.Note);
        Assert.EndsWith("(1.15 g/cm3, usual for solid rubber)", TyreFromData.Estimate(Solid with { Density = null }).TreadMass!.Note);
    }

    [Fact]
    public void Doubtful_data_are_warned_of()
    {
        Assert.Contains("Shore 90 A is outside 20 to 80", Assert.Single(TyreFromData.Estimate(Solid with { ShoreA = 90.0 }).Warnings));
        Assert.Contains("that of a solid", Assert.Single(TyreFromData.Estimate(Solid with { Material = CoverMaterial.OpenFoam, SolidShoreA = 50.0 }).Warnings));
        TyreData soft = Solid with { Material = CoverMaterial.OpenFoam, Modulus = 0.02e6, Width = 0.010 };
        IReadOnlyList<string> warnings = TyreFromData.Estimate(soft).Warnings;
        Assert.Contains(warnings, w => w.Contains("squashes the cover by", StringComparison.Ordinal));
        Assert.Contains(warnings, w => w.Contains("longer than the cover is wide", StringComparison.Ordinal));
    }

    [Fact]
    public void A_cover_pressed_flat_is_said_so() =>
        Assert.Contains(TyreFromData.Estimate(Solid with { Modulus = 0.01e6, Thickness = 0.001, Material = CoverMaterial.OpenFoam }).Missing, m => m.Contains("pressed flat", StringComparison.Ordinal));

    [Theory]
    [InlineData(CoverMaterial.Rubber, "Shore A (or modulus)")]
    [InlineData(CoverMaterial.OpenFoam, "modulus (or density")]
    public void What_is_missing_depends_on_the_material(CoverMaterial material, string missing) =>
        Assert.Contains(TyreFromData.Estimate(Solid with { ShoreA = null, Density = null, Material = material }).Missing, m => m.StartsWith(missing, StringComparison.Ordinal));

    // A mass of 2 N on the cover by N = -k z (1 - al x (1 + x^4)^(-1/4)), x = d z'/al, until it is lowest again, or leaves the floor; RK4, 5000 steps a radian.
    private static (double Height, double Speed) Followed(TyreData cover, double height, double speed, bool stopsAtFloor)
    {
        TyreEstimate e = TyreFromData.Estimate(cover);
        (double k, double d, double mass) = (e.VerticalStiffness!.Value, e.VerticalDamping!.Value, 2.0 / 9.80665);
        double dt = Math.Sqrt(mass / k) / 5000.0;
        double most = (1.0 - cover.Rebound!.Value) / (1.0 + cover.Rebound.Value);
        double Rate(double z, double v) => ((z < 0.0 ? -k * z * (1.0 - (d * v * Math.Pow(1.0 + Math.Pow(d * v / most, 4.0), -0.25))) : 0.0) / mass) - 9.80665;
        while (true)
        {
            double before = speed;
            (double z1, double v1) = (speed, Rate(height, speed));
            (double z2, double v2) = (speed + (0.5 * dt * v1), Rate(height + (0.5 * dt * z1), speed + (0.5 * dt * v1)));
            (double z3, double v3) = (speed + (0.5 * dt * v2), Rate(height + (0.5 * dt * z2), speed + (0.5 * dt * v2)));
            (double z4, double v4) = (speed + (dt * v3), Rate(height + (dt * z3), speed + (dt * v3)));
            height += dt / 6.0 * (z1 + (2.0 * z2) + (2.0 * z3) + z4);
            speed += dt / 6.0 * (v1 + (2.0 * v2) + (2.0 * v3) + v4);
            if (stopsAtFloor ? speed > 0.0 && height >= 0.0 : before < 0.0 && speed >= 0.0)
            {
                return (height, speed);
            }
        }
    }

    private static void Close(double expected, Estimated? actual, double relative)
    {
        Assert.NotNull(actual);
        Assert.True(Math.Abs(actual.Value - expected) <= relative * Math.Abs(expected), FormattableString.Invariant($"expected {expected:R}, got {actual.Value:R} ({actual.Note})"));
    }
}
