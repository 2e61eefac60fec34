namespace PushSim.Scenarios.Robots;

/// <summary>How a pack's values follow from those of one cell of 1 A h: resistances by cells over capacity, heat by the cells' mass, its way to the air by their surface (2/3 power of the mass, computed here).</summary>
internal static class CellScale
{
    private const double SurfacePower = 2.0 / 3.0;

    /// <summary>Of a key: unit of its text, in SI units of which it is one over the first number, and factor by cells [1] and capacity [A h]; null for a key that is the same for every pack.</summary>
    public static (double PerSi, string Unit, Func<double, double, double> Factor)? Of(string key) => key switch
    {
        "resistance" or "slow_resistance" => (1e3, "mohm", (cells, capacity) => cells / capacity),
        "heat_capacity" => (1.0, "J/K", (cells, capacity) => cells * capacity),
        "thermal_resistance" => (1.0, "K/W", (cells, capacity) => Math.Pow(cells * capacity, -SurfacePower)),
        _ => null,
    };
}
