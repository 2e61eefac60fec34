namespace PushSim.Numerics;

/// <summary>Data of ARK4(3)6L[2]SA: order 4 with an embedded order 3, 6 stages, both halves with the same weights and nodes;
/// the implicit half is stiffly accurate and L-stable.
/// Source: C. A. Kennedy, M. H. Carpenter, Applied Numerical Mathematics 44 (2003) 139-181, appendix; coefficients from
/// memory, checked by the order and coupling conditions in the tests.</summary>
internal static class Ark43
{
    private const double Gamma = 1.0 / 4;

    private static readonly double[][] Explicit =
    [
        [],
        [1.0 / 2],
        [13861.0 / 62500, 6889.0 / 62500],
        [-116923316275.0 / 2393684061468,
         -2731218467317.0 / 15368042101831,
         9408046702089.0 / 11113171139209],
        [-451086348788.0 / 2902428689909,
         -2682348792572.0 / 7519795681897,
         12662868775082.0 / 11960479115383,
         3355817975965.0 / 11060851509271],
        [647845179188.0 / 3216320057751,
         73281519250.0 / 8382639484533,
         552539513391.0 / 3454668386233,
         3354512671639.0 / 8306763924573,
         4040.0 / 17871],
    ];

    private static readonly double[][] Implicit =
    [
        [],
        [1.0 / 4, Gamma],
        [8611.0 / 62500,
         -1743.0 / 31250,
         Gamma],
        [5012029.0 / 34652500,
         -654441.0 / 2922500,
         174375.0 / 388108,
         Gamma],
        [15267082809.0 / 155376265600,
         -71443401.0 / 120774400,
         730878875.0 / 902184768,
         2285395.0 / 8070912,
         Gamma],
        [82889.0 / 524892,
         0,
         15625.0 / 83664,
         69875.0 / 102672,
         -2260.0 / 8211,
         Gamma],
    ];

    private static readonly double[] EmbeddedWeights =
    [
        4586570599.0 / 29645900160,
        0,
        178811875.0 / 945068544,
        814220225.0 / 1159782912,
        -3700637.0 / 11593932,
        61727.0 / 225920,
    ];

    private static readonly double[] Nodes =
    [
        0,
        1.0 / 2,
        83.0 / 250,
        31.0 / 50,
        17.0 / 20,
        1,
    ];

    /// <summary>Builds the table.</summary>
    internal static AdditiveTableau Create() =>
        new("ARK4(3)", order: 4, embeddedOrder: 3, Explicit, Implicit, EmbeddedWeights, Nodes);
}
