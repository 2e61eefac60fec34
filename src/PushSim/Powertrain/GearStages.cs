namespace PushSim.Powertrain;

/// <summary>Efficiency of a gearbox by its count of stages, eta = eta_1^n: an estimate for the full load of small plastic and sintered gears; it is less at part load.</summary>
public static class GearStages
{
    // Spur: "10 % loss per engagement", F. Faulhaber, Machine Design, 20 June 2002. Planetary: 0.9 per stage for 22 to 42 mm boxes, a maker's
    // page (greensky-power.com, "the meaning of planetary gearbox efficiency"). Worm, some 20:1 to 50:1: common practice, no source.
    private static readonly double[] OneStage = [0.90, 0.90, 0.50];

    /// <summary>Efficiency of one stage [1].</summary>
    public static double PerStage(GearKind kind) => OneStage[(int)kind];

    /// <summary>Efficiency of so many stages of one kind [1].</summary>
    public static double Efficiency(GearKind kind, int stages) => Math.Pow(PerStage(kind), stages);
}
