namespace PushSim.Numerics;

/// <summary>
/// Coefficients of an additive (explicit plus diagonally implicit) Runge-Kutta pair with common weights. Source of every
/// table: Kennedy and Carpenter, Additive Runge-Kutta schemes for convection-diffusion-reaction equations, Applied
/// Numerical Mathematics 44, 2003, appendices C and D; typed from memory and proved by the order conditions in the tests.
/// </summary>
public sealed class AdditiveTableau
{
    private AdditiveTableau(string name, int order, double gamma, double[] c, double[] b, double[] bHat, double[][] explicitRows, double[][] implicitRows)
    {
        Name = name;
        Order = order;
        Gamma = gamma;
        C = c;
        B = b;
        BHat = bHat;
        Explicit = explicitRows;
        Implicit = implicitRows;
    }

    /// <summary>ARK3(2)4L[2]SA.</summary>
    public static AdditiveTableau Ark32 { get; } = MakeArk32();

    /// <summary>ARK4(3)6L[2]SA.</summary>
    public static AdditiveTableau Ark43 { get; } = MakeArk43();

    /// <summary>All tables.</summary>
    public static IReadOnlyList<AdditiveTableau> All { get; } = [Ark32, Ark43];

    /// <summary>Short name, order and order of the embedded method, e.g. "ARK3(2)".</summary>
    public string Name { get; }

    /// <summary>Order of the method [1]; the embedded one is one lower.</summary>
    public int Order { get; }

    /// <summary>Number of stages [1].</summary>
    public int Stages => C.Length;

    /// <summary>Diagonal coefficient of the implicit half [1].</summary>
    public double Gamma { get; }

    /// <summary>Stage times in steps [1], length <see cref="Stages"/>.</summary>
    public double[] C { get; }

    /// <summary>Weights, common to both halves [1].</summary>
    public double[] B { get; }

    /// <summary>Embedded weights [1].</summary>
    public double[] BHat { get; }

    /// <summary>Rows below the diagonal of the explicit half [1]; row i has i entries.</summary>
    public double[][] Explicit { get; }

    /// <summary>Rows below the diagonal of the implicit half [1]; row i has i entries, the diagonal is <see cref="Gamma"/> for i > 0.</summary>
    public double[][] Implicit { get; }

    /// <summary>The table of that name. Throws <see cref="ArgumentException"/> if there is none.</summary>
    public static AdditiveTableau ByName(string name) =>
        All.FirstOrDefault(t => t.Name == name)
        ?? throw new ArgumentException($"no method '{name}'; there are {string.Join(", ", All.Select(t => t.Name))}", nameof(name));

    private static AdditiveTableau MakeArk32()
    {
        const double gamma = 1767732205903.0 / 4055673282236.0;
        double[] b = [1471266399579.0 / 7840856788654.0, -4482444167858.0 / 7529755066697.0, 11266239266428.0 / 11593286722821.0, gamma];
        return new AdditiveTableau(
            "ARK3(2)",
            3,
            gamma,
            [0.0, 1767732205903.0 / 2027836641118.0, 3.0 / 5.0, 1.0],
            b,
            [
                2756255671327.0 / 12835298489170.0, -10771552573575.0 / 22201958757719.0,
                9247589265047.0 / 10645013368117.0, 2193209047091.0 / 5459859503100.0,
            ],
            [
                [],
                [1767732205903.0 / 2027836641118.0],
                [5535828885825.0 / 10492691773637.0, 788022342437.0 / 10882634858940.0],
                [6485989280629.0 / 16251701735622.0, -4246266847089.0 / 9704473918619.0, 10755448449292.0 / 10357097424841.0],
            ],
            [
                [],
                [gamma],
                [2746238789719.0 / 10658868560708.0, -640167445237.0 / 6845629431997.0],
                [b[0], b[1], b[2]],
            ]);
    }

    private static AdditiveTableau MakeArk43()
    {
        double[] b = [82889.0 / 524892.0, 0.0, 15625.0 / 83664.0, 69875.0 / 102672.0, -2260.0 / 8211.0, 0.25];
        return new AdditiveTableau(
            "ARK4(3)",
            4,
            0.25,
            [0.0, 0.5, 83.0 / 250.0, 31.0 / 50.0, 17.0 / 20.0, 1.0],
            b,
            [
                4586570599.0 / 29645900160.0, 0.0, 178811875.0 / 945068544.0, 814220225.0 / 1159782912.0,
                -3700637.0 / 11593932.0, 61727.0 / 225920.0,
            ],
            [
                [],
                [0.5],
                [13861.0 / 62500.0, 6889.0 / 62500.0],
                [-116923316275.0 / 2393684061468.0, -2731218467317.0 / 15368042101831.0, 9408046702089.0 / 11113171139209.0],
                [
                    -451086348788.0 / 2902428689909.0, -2682348792572.0 / 7519795681897.0,
                    12662868775082.0 / 11960479115383.0, 3355817975965.0 / 11060851509271.0,
                ],
                [
                    647845179188.0 / 3216320057751.0, 73281519250.0 / 8382639484533.0, 552539513391.0 / 3454668386233.0,
                    3354512671639.0 / 8306763924573.0, 4040.0 / 17871.0,
                ],
            ],
            [
                [],
                [0.25],
                [8611.0 / 62500.0, -1743.0 / 31250.0],
                [5012029.0 / 34652500.0, -2922.0 / 441125.0, 174375.0 / 388108.0],
                [15267082809.0 / 155376265600.0, -71443401.0 / 120774400.0, 730878875.0 / 902184768.0, 2285395.0 / 8070912.0],
                [b[0], b[1], b[2], b[3], b[4]],
            ]);
    }
}
