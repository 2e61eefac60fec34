namespace PushSim.Numerics;

/// <summary>Quantile of the standard normal distribution. Wichura, algorithm AS 241 (PPND16), Applied Statistics 37:477, 1988; relative accuracy about 1e-16. Written with the
/// engine's own logarithm, so that draws are the same on every platform.</summary>
internal static class NormalQuantile
{
    private const double CentralHalfWidth = 0.425;
    private const double CentralConstant = 0.180625;
    private const double TailShift = 1.6;
    private const double FarTail = 5.0;

    private static readonly double[] s_a = [3.3871328727963666080, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727];
    private static readonly double[] s_b = [1.0, 42.313330701600911252, 687.18700749205790830, 5394.1960214247511077, 21213.794301586595867, 39307.895800092710610, 28729.085735721942674, 5226.4952788528545610];
    private static readonly double[] s_c = [1.42343711074968357734, 4.63033784615654529590, 5.76949722146069140550, 3.64784832476320460504, 1.27045825245236838258, 0.241780725177450611770, 0.0227238449892691845833, 7.74545014278341407640e-4];
    private static readonly double[] s_d = [1.0, 2.05319162663775882187, 1.67638483018380384940, 0.689767334985100004550, 0.148103976427480074590, 0.0151986665636164571966, 5.47593808499534494600e-4, 1.05075007164441684324e-9];
    private static readonly double[] s_e = [6.65790464350110377720, 5.46378491116411436990, 1.78482653991729133580, 0.296560571828504891230, 0.0265321895265761230930, 0.00124266094738807843860, 2.71155556874348757815e-5, 2.01033439929228813265e-7];
    private static readonly double[] s_f = [1.0, 0.599832206555887937690, 0.136929880922735805310, 0.0148753612908506148525, 7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15];

    /// <summary>The value below which a share p of a standard normal lies [1].</summary>
    /// <param name="p">Share, above 0 and below 1 [1].</param>
    public static double Of(double p)
    {
        double q = p - 0.5;
        if (Math.Abs(q) <= CentralHalfWidth)
        {
            double r = CentralConstant - (q * q);
            return q * Poly(s_a, r) / Poly(s_b, r);
        }

        double t = Math.Sqrt(-SoftFunctions.Log<R1>(q < 0.0 ? p : 1.0 - p).Value);
        double z = t <= FarTail ? Poly(s_c, t - TailShift) / Poly(s_d, t - TailShift) : Poly(s_e, t - FarTail) / Poly(s_f, t - FarTail);
        return q < 0.0 ? -z : z;
    }

    private static double Poly(double[] c, double x)
    {
        double sum = 0.0;
        for (int i = c.Length - 1; i >= 0; i--)
        {
            sum = (sum * x) + c[i];
        }

        return sum;
    }
}
