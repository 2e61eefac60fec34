using PushSim.Tyres;

namespace PushSim.Scenarios.Estimates;

/// <summary>The model's tyre numbers from what a builder has: sizes, material, rebound.
/// <code>
/// k_z = dN/d(delta) of the covered wheel at its static load          (CoverContact)
/// k_c = stuck tangential stiffness, no more than the shear of the contact's own cover G w L/h
/// m_t = a third of the cover's mass rho w pi (R^2 - (R - h)^2)       c_c = tan d sqrt(k_c m_t), tan d by CoverModulus.LossFactor
/// d = -ln(R1)/pi sqrt(k_z m)/N1                                      small swings of the mass m that the wheel carries, about its load N1
/// L = 2 a       z_max = mu_s N/(2 k_t)
/// N0: mean pressure of this cover at N0 = that of the reference size of the same material at 3 N
/// </code>
/// A third, because a cover that shears between a still hub and a moving tread holds a third of the energy of a block that moves as one. The
/// patch alone weighs some 0.05 g and would ring at kilohertz, which is not resolved. z_max: a contact that slips from its edges inward
/// shifts by 1.5 mu N/k_t before it slides, half of mu N/k_t more than its elastic part (Mindlin 1949 for a round contact, from memory; taken
/// over for the strip). A flexible hub acts in series. A tread pattern over
/// the share f of the face is a cover of modulus f E and density f rho, as if its grooves went down to the hub. Vertically N = -k z (1 - d z') has
/// the damping N1 d about the load N1, and a cover that bounces back to R1 has -k ln(R1)/(pi omega) at omega = sqrt(k/m); a full swing that just leaves the
/// floor loses the same share. A harder bump loses more than the material would, since the law's damping grows with the load. Friction of rubber
/// falls with pressure, not with load as such (Braun et al., EPL 113:56002, 2016), so a wide and large tyre has its friction at a higher load than
/// a small one. Limits: those of <see cref="CoverContact"/>; a modulus from hardness is good to a factor of 2.</summary>
public static class TyreFromData
{
    // The linear solution is taken too far beyond this share of the thickness.
    private const double MostSquash = 0.2;

    // What a file may give, too [s/m].
    private const double MostVerticalDamping = 100.0;

    private const double StandardGravity = 9.80665;

    // The size and load for which friction values without a load of their own are taken to hold: a common wheel under a robot of 1.2 kg [m, N].
    private const double ReferenceWidth = 0.020;
    private const double ReferenceThickness = 0.006;
    private const double ReferenceRadius = 0.025;
    private const double ReferenceWheelLoad = 3.0;

    /// <summary>Everything that these data give.</summary>
    public static TyreEstimate Estimate(TyreData data) => new Work(data).Solve();

    private sealed class Work(TyreData d)
    {
        private readonly List<string> _missing = [];
        private readonly List<string> _warnings = [];
        private readonly CoverMaterialFacts? _facts = d.Material is CoverMaterial m ? CoverMaterialFacts.Of(m) : null;

        // How the modulus was found, and how good it is.
        private string _origin = "";
        private string _quality = "";
        private string _error = "";

        public TyreEstimate Solve()
        {
            double? modulus = Modulus();
            double? poisson = d.Poisson ?? _facts?.Poisson ?? (d.ShoreA is null ? null : 0.5);
            Want(d.Width, "width");
            Want(d.Thickness, "tread thickness");
            Want(d.Radius, "the diameter of a wheel that has it");
            Want(d.Load, "the static load of its wheels");
            Want(modulus, Wanted());
            Want(modulus is null ? 0.0 : poisson, "material (or Poisson's ratio)");
            Estimated? mass = TreadMass();
            TyreEstimate sizes = Contact(modulus, poisson);
            Estimated? damping = Damping(d.BodyStiffness ?? sizes.BodyStiffness?.Value, d.TreadMass ?? mass?.Value);
            Estimated? bounce = VerticalDamping(d.VerticalStiffness ?? sizes.VerticalStiffness?.Value);
            return sizes with { TreadMass = mass, VerticalDamping = bounce, BodyDamping = damping, ReferenceLoad = ReferenceLoad(modulus, poisson), Warnings = _warnings, Missing = _missing };
        }

        private double? Modulus()
        {
            if (d.Modulus is double given)
            {
                _origin = Say($"modulus {Figure(1e-6 * given)} MPa");
                _quality = "";
                _error = "that of the modulus, and 1 % of the contact solution";
                return given;
            }

            _quality = " (good to a factor of 2)";
            _error = "a factor of 2, that of the modulus";
            return _facts is { IsFoam: true } ? FoamModulus() : SolidModulus();
        }

        private double? SolidModulus()
        {
            if (d.ShoreA is not double shore)
            {
                return null;
            }

            if (shore is < CoverModulus.LeastShore or > CoverModulus.MostShore)
            {
                _warnings.Add(Say($"Shore {Figure(shore)} A is outside {CoverModulus.LeastShore} to {CoverModulus.MostShore}, where the relation to the modulus holds"));
            }

            double e = CoverModulus.FromShoreA(shore);
            _origin = Say($"Shore {Figure(shore)} A ({Figure(1e-6 * e)} MPa)");
            return e;
        }

        private double? FoamModulus()
        {
            if (d.Density is not double density || d.SolidShoreA is not double shore)
            {
                return null;
            }

            double r = density / CoverMaterialFacts.SolidDensity;
            if (r >= 1.0)
            {
                _warnings.Add(Say($"density {Figure(1e-3 * density)} g/cm3 is that of a solid, not of a foam"));
                return null;
            }

            double es = CoverModulus.FromShoreA(shore);
            double e = d.Material == CoverMaterial.OpenFoam ? CoverModulus.OfOpenFoam(es, r) : CoverModulus.OfClosedFoam(es, r, d.Poisson ?? _facts!.Poisson);
            _origin = Say($"{_facts!.Words} of {Figure(1e-3 * density)} g/cm3 and Shore {Figure(shore)} A solid ({Figure(1e-6 * e)} MPa)");
            return e;
        }

        private string Wanted() => _facts is { IsFoam: true } ? "modulus (or density and the Shore A of the foam's solid; Shore A of the foam itself does not give it)" : "Shore A (or modulus)";

        private TyreEstimate Contact(double? modulus, double? poisson)
        {
            if (modulus is not double e || poisson is not double nu || d.Width is not double w || d.Thickness is not double h || d.Radius is not double r || d.Load is not double load)
            {
                return new TyreEstimate();
            }

            e *= d.TreadArea;
            if (CoverContact.Solve(load, r, h, w, e, nu) is not CoverContact c)
            {
                _missing.Add(Say($"a stiffer or thicker cover: {Figure(1e3 * h)} mm of {Figure(1e-6 * e)} MPa under {Figure(load)} N is pressed flat, beyond the contact's theory"));
                return new TyreEstimate();
            }

            Caution(c, h, w);
            string cover = Say($"{_origin}, {Figure(1e3 * h)} mm cover, {Figure(1e3 * w)} mm wide{Pattern()}");
            double length = 2.0 * c.HalfLength;
            double column = e / (2.0 * (1.0 + nu)) * w * length / h;
            double kz = InSeries(c.NormalStiffness);
            double kc = InSeries(Math.Min(c.TangentialStiffness, column));
            double slip = 0.5 * (d.StaticFriction ?? 1.0) * load / c.TangentialStiffness;
            string other = column < c.TangentialStiffness ? Say($"the cover in shear over the contact; stuck in one with the rest of the cover it would be {Figure(c.TangentialStiffness)} N/m") : "the contact stuck to the floor";
            return new TyreEstimate
            {
                VerticalStiffness = new(kz, Say($"vertical stiffness {Figure(kz)} N/m at {Figure(load)} N, estimated from {cover}{Hub()}{_quality}"), _error),
                BodyStiffness = new(kc, Say($"body stiffness {Figure(kc)} N/m, estimated from {cover}{Hub()}{_quality}: {other}"), _error),
                ContactLength = new(length, Say($"contact length {Figure(1e3 * length)} mm at {Figure(load)} N, estimated from {cover}: cover squashed by {Figure(1e3 * c.Squash)} mm, mean pressure {Figure(1e-3 * c.MeanPressure)} kPa"), "half of the modulus's, as a share"),
                BreakawayDeflection = new(slip, Say($"breakaway deflection {Figure(1e3 * slip)} mm, estimated: half of friction times load over the stuck contact's stiffness"), "a factor of 2, estimate"),
            };
        }

        // Of the smooth cover: what a tread pattern does is in the share f of the law itself.
        private Estimated? ReferenceLoad(double? modulus, double? poisson)
        {
            if (d.LoadExponent == 0.0 || modulus is not double e || poisson is not double nu || d.Width is not double w || d.Thickness is not double h || d.Radius is not double r
                || CoverContact.Solve(ReferenceWheelLoad, ReferenceRadius, ReferenceThickness, ReferenceWidth, e, nu) is not CoverContact usual)
            {
                return null;
            }

            double load = CoverContact.LoadAt(usual.MeanPressure, r, h, w, e, nu);
            string size = Say($"{Figure(1e3 * ReferenceWidth)} mm wide and {Figure(1e3 * ReferenceThickness)} mm thick on a wheel of {Figure(2e3 * ReferenceRadius)} mm");
            return new(load, Say($"reference load {Figure(load)} N, at which the friction values are taken to hold: there this cover, {Figure(1e3 * w)} mm wide and {Figure(1e3 * h)} mm thick on a wheel of {Figure(2e3 * r)} mm, has the mean pressure of {Figure(1e-3 * usual.MeanPressure)} kPa that a cover of the same material, {size}, has at {Figure(ReferenceWheelLoad)} N"), Say($"a factor of 2, estimate, which is {100.0 * (Math.Pow(2.0, Math.Abs(d.LoadExponent)) - 1.0):0} % of friction"));
        }

        private Estimated? TreadMass()
        {
            double? density = d.Density ?? _facts?.Density;
            Want(d.TreadMass ?? density, _facts is { IsFoam: true } ? "density" : "material (or density)");
            if (density is not double rho || d.Width is not double w || d.Thickness is not double h || d.Radius is not double r)
            {
                return null;
            }

            double cover = d.TreadArea * rho * w * Math.PI * h * ((2.0 * r) - h);
            string assumed = d.Density is null ? ", usual for " + _facts!.Words : "";
            return new(cover / 3.0, Say($"tread mass {Figure(1e3 * cover / 3.0)} g, estimated as a third of the cover's {Figure(1e3 * cover)} g ({Figure(1e-3 * rho)} g/cm3{assumed}{Pattern()})"), "a factor of 1.5, estimate: which part of the cover moves along");
        }

        private Estimated? Damping(double? stiffness, double? mass)
        {
            Want(d.Rebound, "rebound (or drop and rebound height)");
            if (d.Rebound is not double rebound || stiffness is not double k || mass is not double m)
            {
                return null;
            }

            double eta = CoverModulus.LossFactor(rebound);
            double c = eta * Math.Sqrt(k * m);
            return new(c, Say($"body damping {Figure(c)} N s/m, estimated from {Figure(100.0 * rebound)} % rebound: loss factor {Figure(eta)} (good to 25 %)"), "25 %, and half of the stiffness's");
        }

        private Estimated? VerticalDamping(double? stiffness)
        {
            if (d.Rebound is not double rebound || stiffness is not double k || (d.CarriedLoad ?? d.Load) is not double load)
            {
                return null;
            }

            double eta = CoverModulus.BounceLoss(rebound);
            double mass = d.CarriedMass ?? load / StandardGravity;
            double full = eta * Math.Sqrt(k * mass) / load;
            double told = Math.Min(full, MostVerticalDamping);
            string most = full > told ? Say($", the most that is allowed ({Figure(full)} s/m would come of it)") : "";
            return new(told, Say($"vertical damping {Figure(told)} s/m{most}, estimated from {Figure(100.0 * rebound)} % rebound for small bounces on {Figure(k)} N/m, {Figure(Math.Sqrt(k / mass) / (2.0 * Math.PI))} Hz; a hard bump gives back the rebound at every speed"), "25 %, and half of the vertical stiffness's");
        }

        private void Caution(CoverContact c, double h, double w)
        {
            if (c.Squash > MostSquash * h)
            {
                _warnings.Add(Say($"its weight alone squashes the cover by {1e2 * c.Squash / h:F0} % of its thickness, too much for the linear estimate of its stiffness"));
            }

            if (2.0 * c.HalfLength > w)
            {
                _warnings.Add(Say($"the contact, {Figure(2e3 * c.HalfLength)} mm, is longer than the cover is wide, so its stiffness is estimated too high"));
            }
        }

        private string Pattern() => d.TreadArea < 1.0 ? Say($", {Figure(100.0 * d.TreadArea)} % of it tread") : "";

        private string Hub() => d.HubStiffness is double k ? Say($", in series with the hub's {Figure(k)} N/m") : "";

        private double InSeries(double stiffness) => d.HubStiffness is double hub ? 1.0 / ((1.0 / stiffness) + (1.0 / hub)) : stiffness;

        private void Want(double? value, string words)
        {
            if (value is null && !_missing.Contains(words))
            {
                _missing.Add(words);
            }
        }

        private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

        // Three digits, never an exponent.
        private static string Figure(double value)
        {
            double unit = Math.Pow(10.0, Math.Floor(Math.Log10(Math.Abs(value))) - 2.0);
            return (Math.Round(value / unit) * unit).ToString("0.######", CultureInfo.InvariantCulture);
        }
    }
}
