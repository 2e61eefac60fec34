namespace PushSim.Tyres;

/// <summary>Plane-strain contact on an elastic layer bonded to a rigid base, without dimensions: one row per Poisson's ratio, one column per half contact
/// length over thickness, a/h, both at Chebyshev-Lobatto nodes (of nu, and of ln(a/h)); between them a polynomial through the logarithms. Limits:
/// linear, small strain, no friction in the normal problem. The numbers come from the integral equation with the bonded layer's kernel
/// (Johnson, Contact Mechanics, ch. 5, from memory); the test of this class solves it anew and compares, on and between the nodes. Between the nodes
/// the table is good to 1 %.</summary>
internal static class LayerContactTable
{
    /// <summary>Least a/h of the table; below it the layer is thick: a follows the half-space, the rest is held [1].</summary>
    public const double LeastRatio = 0.01;

    /// <summary>Largest a/h of the table [1].</summary>
    public const double MostRatio = 3.0;

    private const double MostPoisson = 0.5;

    /// <summary>Load P: 2 P R/(w E* h^2) of a parabola of radius R.</summary>
    public static readonly double[][] Load =
    [
        [0.000157089, 0.000207679, 0.000466963, 0.00165001, 0.00811051, 0.0479274, 0.30067, 1.8742, 9.57184, 29.1255, 43.102],
        [0.000157089, 0.000207679, 0.000466963, 0.00165002, 0.0081107, 0.0479338, 0.300869, 1.87767, 9.59427, 29.1874, 43.188],
        [0.000157089, 0.000207679, 0.000466965, 0.00165005, 0.00811133, 0.047955, 0.301544, 1.88989, 9.68081, 29.4525, 43.5731],
        [0.000157089, 0.00020768, 0.00046697, 0.0016501, 0.0081126, 0.0479977, 0.302926, 1.91653, 9.89405, 30.1846, 44.6828],
        [0.00015709, 0.000207681, 0.000466977, 0.00165019, 0.00811481, 0.0480724, 0.30539, 1.9675, 10.3549, 31.9263, 47.4089],
        [0.000157092, 0.000207684, 0.000466988, 0.00165033, 0.00811825, 0.0481892, 0.309331, 2.05577, 11.2614, 35.7011, 53.5098],
        [0.000157093, 0.000207687, 0.000467004, 0.00165052, 0.0081228, 0.0483447, 0.314723, 2.18795, 12.8437, 43.2025, 66.2129],
        [0.000157095, 0.00020769, 0.000467018, 0.00165071, 0.00812727, 0.0484978, 0.320171, 2.33479, 14.9498, 55.1898, 88.0939],
        [0.000157096, 0.000207691, 0.000467025, 0.00165079, 0.00812923, 0.0485655, 0.322625, 2.4055, 16.1195, 63.0695, 103.637],
    ];

    /// <summary>Approach delta R/h^2 of that parabola.</summary>
    public static readonly double[][] Squash =
    [
        [0.00027131, 0.000349457, 0.000725543, 0.00223239, 0.0089222, 0.0393342, 0.164482, 0.609252, 1.84821, 3.89823, 5.06604],
        [0.00027116, 0.00034926, 0.000725099, 0.00223083, 0.00891469, 0.0392943, 0.164325, 0.609137, 1.84916, 3.90083, 5.06943],
        [0.000270573, 0.000348483, 0.000723355, 0.00222469, 0.00888508, 0.039134, 0.163632, 0.607872, 1.84956, 3.90437, 5.0745],
        [0.000269115, 0.000346557, 0.000719026, 0.00220945, 0.00881126, 0.0387268, 0.161704, 0.602415, 1.84083, 3.89367, 5.06307],
        [0.000266062, 0.000342521, 0.000709959, 0.00217749, 0.00865605, 0.0378586, 0.157317, 0.586934, 1.80473, 3.83436, 4.99317],
        [0.000260614, 0.000335319, 0.000693775, 0.00212043, 0.00837833, 0.0362882, 0.148986, 0.552897, 1.7085, 3.65676, 4.77667],
        [0.000252741, 0.000324912, 0.000670385, 0.00203794, 0.00797616, 0.0339944, 0.136303, 0.494105, 1.51042, 3.24299, 4.25133],
        [0.000244705, 0.000314289, 0.000646509, 0.00195372, 0.00756501, 0.0316328, 0.122775, 0.423676, 1.224, 2.53406, 3.28944],
        [0.00024112, 0.000309549, 0.000635857, 0.00191613, 0.00738141, 0.0305737, 0.116571, 0.388751, 1.05987, 2.05823, 2.59618],
    ];

    /// <summary>Normal stiffness 2 k_n/(w E*).</summary>
    public static readonly double[][] Normal =
    [
        [0.637767, 0.656363, 0.717034, 0.837562, 1.06199, 1.50259, 2.45265, 4.44781, 7.69468, 11.1694, 12.7326],
        [0.638155, 0.656774, 0.717523, 0.83823, 1.06306, 1.50465, 2.45719, 4.45612, 7.70551, 11.1817, 12.7455],
        [0.639682, 0.658392, 0.719454, 0.840864, 1.06728, 1.51285, 2.47587, 4.49446, 7.76659, 11.2639, 12.837],
        [0.643504, 0.662441, 0.724291, 0.847473, 1.0779, 1.53375, 2.52544, 4.60814, 7.97597, 11.5719, 13.189],
        [0.651656, 0.671083, 0.734634, 0.861658, 1.10087, 1.57967, 2.63921, 4.89348, 8.55234, 12.4621, 14.2208],
        [0.666729, 0.687079, 0.753844, 0.88819, 1.14441, 1.66916, 2.87437, 5.54436, 9.99212, 14.7949, 16.9605],
        [0.689785, 0.711589, 0.783447, 0.929552, 1.21381, 1.81829, 3.30425, 6.92732, 13.536, 21.0558, 24.5062],
        [0.715022, 0.738477, 0.816161, 0.975942, 1.2939, 2.00091, 3.90324, 9.36495, 21.8219, 39.1079, 47.8889],
        [0.726887, 0.75114, 0.831654, 0.998167, 1.33315, 2.0948, 4.24742, 11.1297, 30.3048, 64.8937, 86.2233],
    ];

    /// <summary>Tangential stiffness 2 k_t/(w E*) of the strip stuck to the floor.</summary>
    public static readonly double[][] Tangential =
    [
        [0.577226, 0.592418, 0.641406, 0.736201, 0.904398, 1.20799, 1.78253, 2.84172, 4.47714, 6.21544, 6.99711],
        [0.575732, 0.590844, 0.639562, 0.733772, 0.900738, 1.20149, 1.76869, 2.80994, 4.41453, 6.11975, 6.88654],
        [0.571308, 0.586186, 0.634108, 0.726603, 0.889963, 1.18245, 1.72844, 2.71831, 4.23498, 5.84599, 6.57042],
        [0.564173, 0.578678, 0.625331, 0.715102, 0.872776, 1.15236, 1.66573, 2.57776, 3.96256, 5.43255, 6.09358],
        [0.554831, 0.568853, 0.613874, 0.700159, 0.85062, 1.11407, 1.58747, 2.40608, 3.63478, 4.9384, 5.52464],
        [0.544274, 0.557761, 0.600977, 0.68343, 0.82605, 1.07225, 1.50382, 2.22695, 3.29888, 4.43611, 4.94757],
        [0.534174, 0.547159, 0.588686, 0.667578, 0.802988, 1.03358, 1.42802, 2.0682, 3.00659, 4.00277, 4.45083],
        [0.526745, 0.539367, 0.579675, 0.656012, 0.786295, 1.00592, 1.37458, 1.95803, 2.80681, 3.70875, 4.11446],
        [0.523998, 0.536487, 0.57635, 0.651755, 0.780179, 0.995854, 1.35526, 1.91847, 2.73571, 3.60456, 3.9954],
    ];

    /// <summary>Poisson's ratio of each row.</summary>
    public static double[] Poisson { get; } = Nodes(9, 0.0, MostPoisson);

    /// <summary>ln(a/h) of each column.</summary>
    public static double[] LogRatio { get; } = Nodes(11, Math.Log(LeastRatio), Math.Log(MostRatio));

    /// <summary>The logarithms of one quantity at one Poisson's ratio, against <see cref="LogRatio"/>.</summary>
    public static double[] Row(double[][] table, double poisson)
    {
        double[] row = new double[LogRatio.Length];
        for (int j = 0; j < row.Length; j++)
        {
            int column = j;
            row[j] = Interpolate(Poisson, [.. table.Select(r => Math.Log(r[column]))], poisson);
        }

        return row;
    }

    /// <summary>Value at a/h of a row.</summary>
    public static double At(double[] row, double ratio) => Math.Exp(Interpolate(LogRatio, row, Math.Log(ratio)));

    private static double[] Nodes(int n, double from, double to)
    {
        double[] x = new double[n];
        for (int j = 0; j < n; j++)
        {
            x[j] = (0.5 * (from + to)) - (0.5 * (to - from) * Math.Cos(Math.PI * j / (n - 1)));
        }

        return x;
    }

    // Barycentric form for these nodes: Berrut and Trefethen, SIAM Review 46:501, 2004, eq. 5.4.
    private static double Interpolate(double[] x, double[] f, double at)
    {
        double sum = 0.0;
        double weights = 0.0;
        for (int j = 0; j < x.Length; j++)
        {
            if (at == x[j])
            {
                return f[j];
            }

            double end = j == 0 || j == x.Length - 1 ? 0.5 : 1.0;
            double w = (j % 2 == 0 ? end : -end) / (at - x[j]);
            sum += w * f[j];
            weights += w;
        }

        return sum / weights;
    }
}
