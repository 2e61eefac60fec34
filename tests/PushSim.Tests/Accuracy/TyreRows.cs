using PushSim.Tests.Analysis;
using PushSim.Tests.Tyres;
using PushSim.Tyres;

namespace PushSim.Tests.Accuracy;

/// <summary>Friction law, tyre forces, covers, wear.</summary>
internal static class TyreRows
{
    private const string LuGre = "Canudas de Wit, Olsson, Astrom, Lischinsky, IEEE Trans. Automatic Control 40(3), 1995, ";
    private const string Digits = ", read second-hand; digits computed here";
    private const string Brush = "Pacejka, Tyre and Vehicle Dynamics, ch. 3, read second-hand";
    private const string Layer = "bonded elastic layer, integral equation, computed here; kernel as in Johnson, Contact Mechanics, ch. 5, from memory";
    private const string Gent = "Gent, Rubber Chem. Technol. 31:896, 1958, from memory; digits computed here";
    private const string Gibson = "Gibson, Ashby, Cellular Solids, from memory; computed here";

    private static readonly Lazy<(double Period, double TopSpeed)> s_ideal = new(FrictionExperiments.IdealStickSlip);
    private static readonly Lazy<Func<double, double>> s_presliding = new(FrictionExperiments.Presliding);

    private static AccuracyRow Pulled(double time, double place, double bound) =>
        new($"stick-slip on a spring: place at {time:0} s", "m", place, bound, LuGre + "Fig. 6" + Digits, () => FrictionExperiments.StickSlip.X(time));

    private static AccuracyRow Breakaway(double rate, double force) =>
        new($"breakaway at {rate:0} N/s", "N", force, 0.004, LuGre + "Fig. 4" + Digits, () => FrictionExperiments.Breakaway(rate));

    private static CoverContact Solid => CoverContactTests.Solved(2.0, 0.020, 0.005, 0.015, 3.605073e6, 0.5);

    private static CoverContact Foam => CoverContactTests.Solved(2.0, 0.025, 0.010, 0.020, 0.4e6, 0.0);

    private static double StuckRatio(double poisson, double a) =>
        LayerContactTableTests.Table(LayerContactTable.Tangential, poisson, a) / LayerContactTableTests.Table(LayerContactTable.Normal, poisson, a);

    public static readonly AccuracyRow[] All =
    [
        Pulled(9.0, 0.412940, 1e-4),
        Pulled(15.0, 0.918280, 2e-4),
        Pulled(25.0, 1.908839, 3e-4),
        new("stick-slip on a spring: peak force", "N", 1.507987, 2e-5, LuGre + "Fig. 6" + Digits, () => FrictionExperiments.StickSlip.PeakSpringForce),
        new("stick-slip on a spring: top speed", "m/s", 0.369816, 2e-5, LuGre + "Fig. 6" + Digits, () => FrictionExperiments.StickSlip.TopSpeed),
        new("presliding at 5 s", "m", 9.6568e-6, 1e-8, LuGre + "Fig. 2" + Digits, () => s_presliding.Value(5.0)),
        new("presliding at 10 s", "m", 4.48579e-5, 1e-7, LuGre + "Fig. 2" + Digits, () => s_presliding.Value(10.0)),
        Breakaway(1.0, 1.4324),
        Breakaway(10.0, 1.2200),
        Breakaway(50.0, 1.0075),
        new("ideal stick-slip: period", "s", 7.61125925, 0.01 * 7.611, "Rabinowicz; Bowden, Tabor, from memory; digits computed here", () => s_ideal.Value.Period),
        new("ideal stick-slip: top speed", "m/s", 0.467423461, 0.01 * 0.4674, "Rabinowicz; Bowden, Tabor, from memory; digits computed here", () => s_ideal.Value.TopSpeed),
        new("Coulomb-damped spring: amplitude after two swings", "m", 0.12, 2e-4, "Thomson; Rao, vibration textbooks, from memory", () => FrictionExperiments.CoulombSpring()(4.0 * Math.PI / 10.0)),
        new("slow slide from rest, force after Fc/sigma", "1", 0.63212056, 1e-7, "Dahl, 1968 and 1976, from memory", () => FrictionExperiments.Dahl()(1)),
        new("side force after the relaxation length, 2 m/s", "1", 0.63212056, 0.005, "Pacejka, Tyre and Vehicle Dynamics, ch. 1 and 7, from memory", () => FrictionExperiments.SideForceAfterRelaxationLength(2.0)),
        new("lumped bristle over brush model: stiffness at little slip", "1", 1.0, 1e-3, Brush, () => BrushLimitTests.StiffnessOverBrush(0.001, 0.0)),
        new("F/(mu N) at a quarter of the brush's full slide (the lumped bristle is another law between its ends)", "1", 0.578125, 0.173, Brush, () => BrushLimitTests.Share(0.25)),
        new("F/(mu N) where the brush begins to slide fully", "1", 1.0, 0.061, Brush, () => BrushLimitTests.Share(1.0)),
        new("F/(mu N) far beyond the full slide", "1", 1.0, 0.002, Brush, () => BrushLimitTests.Share(60.0)),
        new("solid cover 5 mm, 2 N: vertical stiffness", "N/m", 73490.0, 0.005 * 73490.0, Layer, () => Solid.NormalStiffness),
        new("solid cover 5 mm, 2 N: tangential stiffness, stuck", "N/m", 35420.0, 0.005 * 35420.0, Layer, () => Solid.TangentialStiffness),
        new("foam cover 10 mm, 2 N: vertical stiffness", "N/m", 7620.0, 0.005 * 7620.0, Layer, () => Foam.NormalStiffness),
        new("foam cover 10 mm, 2 N: squash", "m", 0.3371e-3, 0.005 * 0.3371e-3, Layer, () => Foam.Squash),
        new("bonded layer, nu 0.3, a/h 0.5: tangential over normal stiffness", "1", 0.537, 0.01 * 0.537, Layer, () => StuckRatio(0.3, 0.5)),
        new("bonded layer, nu 0.5, a/h 0.2: tangential over normal stiffness", "1", 0.453, 0.01 * 0.453, Layer, () => StuckRatio(0.5, 0.2)),
        new("modulus at Shore 40 A", "MPa", 1.689639, 5.1e-7, Gent, () => 1e-6 * CoverModulus.FromShoreA(40)),
        new("modulus at Shore 60 A", "MPa", 3.605073, 5.1e-7, Gent, () => 1e-6 * CoverModulus.FromShoreA(60)),
        new("open foam of a tenth of the density: modulus over the solid's", "1", 0.0100, 1e-12, Gibson, () => CoverModulus.OfOpenFoam(1.0, 0.1)),
        new("closed foam of a fifth of the density, without gas: modulus over the solid's", "1", 0.0656, 1e-12, Gibson, () => CoverModulus.OfClosedFoam(1.0, 0.2, 0.5)),
        new("loss factor from 45 % rebound, a quarter above the plain relation", "1", 1.25 * 0.25417, 6e-6, "Gent, Engineering with Rubber, from memory, centred by held values; digits computed here", () => CoverModulus.LossFactor(0.45)),
        new("drum test, 10 N over 40 m: loss of a tyre of that loss", "mm3", 150.0, 150.0 * 1e-4, "ISO 4649, as told by a rubber maker's page (yhrubbertech.com, rubber abrasion testing)", () => WearTests.DrumLoss(150.0)),
    ];
}
