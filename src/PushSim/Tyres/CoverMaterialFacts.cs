namespace PushSim.Tyres;

/// <summary>What is assumed of a class of material.</summary>
/// <param name="Words">Its name in sentences.</param>
/// <param name="IsFoam">True for a foam.</param>
/// <param name="Density">Density assumed if none is given [kg/m^3]; null: it varies too much to assume.</param>
/// <param name="Poisson">Poisson's ratio assumed [1].</param>
public sealed record CoverMaterialFacts(string Words, bool IsFoam, double? Density, double Poisson)
{
    /// <summary>Density of the solid that foams are made of [kg/m^3]; estimate, a flexible polymer is 1.0 to 1.25 g/cm^3.</summary>
    public const double SolidDensity = 1150.0;

    // Densities: estimates inside the usual ranges (compounded rubber 1.0 to 1.4, silicone 1.1 to 1.2, cast polyurethane 1.05 to 1.25 g/cm^3, from
    // memory; flexible printing plastic 1.20, a maker's sheet). Solid elastomers hardly change volume; soft foams hardly bulge (Poisson's ratio
    // near 0: McCulloch et al. 2026, arXiv 2602.12694).
    private static readonly CoverMaterialFacts[] All =
    [
        new("solid rubber", false, 1150.0, 0.5),
        new("silicone", false, 1150.0, 0.5),
        new("polyurethane", false, 1150.0, 0.5),
        new("printed flexible plastic", false, 1200.0, 0.5),
        new("closed-cell foam", true, null, 0.0),
        new("open-cell foam", true, null, 0.0),
    ];

    /// <summary>The facts of a class.</summary>
    public static CoverMaterialFacts Of(CoverMaterial material) => All[(int)material];
}
