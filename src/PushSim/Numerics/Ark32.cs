namespace PushSim.Numerics;

/// <summary>Data of ARK3(2)4L[2]SA: order 3 with an embedded order 2, 4 stages, both halves with the same weights and nodes;
/// the implicit half is stiffly accurate and L-stable.
/// Source: C. A. Kennedy, M. H. Carpenter, Applied Numerical Mathematics 44 (2003) 139-181, appendix; coefficients from
/// memory, checked by the order and coupling conditions in the tests. One denominator, of b_2, was recalled wrong and
/// restored from sum b = 1, which gives a whole number to 1e-13; it then meets every condition.</summary>
internal static class Ark32
{
    private const double Gamma = 1767732205903.0 / 4055673282236;

    private static readonly double[][] Explicit =
    [
        [],
        [1767732205903.0 / 2027836641118],
        [5535828885825.0 / 10492691773637, 788022342437.0 / 10882634858940],
        [6485989280629.0 / 16251701735622,
         -4246266847089.0 / 9704473918619,
         10755448449292.0 / 10357097424841],
    ];

    private static readonly double[][] Implicit =
    [
        [],
        [1767732205903.0 / 4055673282236, Gamma],
        [2746238789719.0 / 10658868560708,
         -640167445237.0 / 6845629431997,
         Gamma],
        [1471266399579.0 / 7840856788654,
         -4482444167858.0 / 7529755066697,
         11266239266428.0 / 11593286722821,
         Gamma],
    ];

    private static readonly double[] EmbeddedWeights =
    [
        2756255671327.0 / 12835298489170,
        -10771552573575.0 / 22201958757719,
        9247589265047.0 / 10645013368117,
        2193209047091.0 / 5459859503100,
    ];

    private static readonly double[] Nodes =
    [
        0,
        1767732205903.0 / 2027836641118,
        3.0 / 5,
        1,
    ];

    /// <summary>Builds the table.</summary>
    internal static AdditiveTableau Create() =>
        new("ARK3(2)", order: 3, embeddedOrder: 2, Explicit, Implicit, EmbeddedWeights, Nodes);
}
