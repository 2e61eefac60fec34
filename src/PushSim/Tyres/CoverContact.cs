namespace PushSim.Tyres;

/// <summary>A wheel with an elastic cover on a hard floor at one load: rigid hub, cover bonded to it, plane strain.
/// <code>
/// P = N/w, E* = E/(1 - nu^2), a/h from 2 P R/(E* h^2), then approach, k_n = dN/d(delta) and k_t of the stuck contact
/// </code>
/// By a table of the layer's solution (<see cref="LayerContactTable"/>). Limits: linear and small strain (a foam squashed by
/// a fifth is not), cover wider than the contact is long, no tread pattern.</summary>
public sealed record CoverContact
{
    /// <summary>Half contact length, a [m].</summary>
    public required double HalfLength { get; init; }

    /// <summary>Approach of hub and floor, delta [m].</summary>
    public required double Squash { get; init; }

    /// <summary>Normal stiffness at this load, dN/d(delta) [N/m].</summary>
    public required double NormalStiffness { get; init; }

    /// <summary>Tangential stiffness of the contact stuck to the floor [N/m].</summary>
    public required double TangentialStiffness { get; init; }

    /// <summary>Mean pressure N/(2 a w) [Pa].</summary>
    public required double MeanPressure { get; init; }

    /// <summary>The contact; null if it is longer than the solution reaches (three cover thicknesses to each side).</summary>
    /// <param name="load">Load N [N].</param>
    /// <param name="radius">Outer radius R with cover [m].</param>
    /// <param name="thickness">Thickness of the cover, h [m].</param>
    /// <param name="width">Width of the cover, w [m].</param>
    /// <param name="modulus">Young's modulus of the cover, E [Pa].</param>
    /// <param name="poisson">Poisson's ratio of the cover, nu, 0 to 0.5 [1].</param>
    public static CoverContact? Solve(double load, double radius, double thickness, double width, double modulus, double poisson)
    {
        double h = thickness;
        double unit = 0.5 * width * modulus / (1.0 - (poisson * poisson));
        double wanted = load * radius / (unit * h * h);
        double[] loads = LayerContactTable.Row(LayerContactTable.Load, poisson);
        if (!(wanted > 0.0) || wanted > LayerContactTable.At(loads, LayerContactTable.MostRatio))
        {
            return null;
        }

        double ratio = Ratio(loads, wanted);
        double Of(double[][] table) => LayerContactTable.At(LayerContactTable.Row(table, poisson), Math.Max(ratio, LayerContactTable.LeastRatio));
        return new CoverContact
        {
            HalfLength = ratio * h,
            Squash = Of(LayerContactTable.Squash) * h * h / radius,
            NormalStiffness = Of(LayerContactTable.Normal) * unit,
            TangentialStiffness = Of(LayerContactTable.Tangential) * unit,
            MeanPressure = load / (2.0 * ratio * h * width),
        };
    }

    /// <summary>The load N at which the contact has a mean pressure [N]; where that lies beyond the solution, the greatest load that it reaches.</summary>
    /// <param name="pressure">Mean pressure N/(2 a w), above 0 [Pa].</param>
    /// <param name="radius">Outer radius R with cover [m].</param>
    /// <param name="thickness">Thickness of the cover, h [m].</param>
    /// <param name="width">Width of the cover, w [m].</param>
    /// <param name="modulus">Young's modulus of the cover, E [Pa].</param>
    /// <param name="poisson">Poisson's ratio of the cover, nu, 0 to 0.5 [1].</param>
    public static double LoadAt(double pressure, double radius, double thickness, double width, double modulus, double poisson)
    {
        double unit = 0.5 * width * modulus / (1.0 - (poisson * poisson));
        double[] loads = LayerContactTable.Row(LayerContactTable.Load, poisson);

        // load over a/h
        double wanted = 2.0 * pressure * width * radius / (unit * thickness);
        double least = LayerContactTable.At(loads, LayerContactTable.LeastRatio) / LayerContactTable.LeastRatio;
        double load = wanted <= least ? 2.0 * wanted * wanted / Math.PI : LayerContactTable.At(loads, Bisect(ratio => LayerContactTable.At(loads, ratio) < wanted * ratio));
        return load * unit * thickness * thickness / radius;
    }

    // Load rises with a/h. Below the table a thick cover's load is pi (a/h)^2/2.
    private static double Ratio(double[] loads, double wanted) =>
        wanted <= LayerContactTable.At(loads, LayerContactTable.LeastRatio)
            ? Math.Sqrt(2.0 * wanted / Math.PI)
            : Bisect(ratio => LayerContactTable.At(loads, ratio) < wanted);

    // The logarithm of a/h to the last bit that matters.
    private static double Bisect(Func<double, bool> isBelow)
    {
        double low = Math.Log(LayerContactTable.LeastRatio);
        double high = Math.Log(LayerContactTable.MostRatio);
        while (high - low > 1e-12)
        {
            double middle = 0.5 * (low + high);
            bool below = isBelow(Math.Exp(middle));
            low = below ? middle : low;
            high = below ? high : middle;
        }

        return Math.Exp(low);
    }
}
