using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Turning;

/// <summary>Whether the tread ring of one wheel buzzes while its rim is held, by the loss of tyre body and tread against what falling friction feeds in:
/// <code>
///   tau = mu/(sigma0 |v|),  C = c_c + N sigma2,  d = d mu_ss/d|v|,  mu_ss = mu s(rho),  rho = kappa mu |omega R|/(sigma0 |v|)
///   margin = (m_t + C tau + N d sigma1/sigma0) (C + k_c tau + N d) / (m_t tau k_c);   buzzes below 1, or where a factor is negative
/// </code>
/// Exact for the plain bristle law and a held rim (Routh-Hurwitz on ring and bristle); with the switch the bristle follows faster, so it is a
/// guide and the eigenvalues decide.</summary>
internal static class RingCriterion
{
    // A tread that slips slower than this sticks: the criterion is about sliding [m/s].
    private const double LeastSlip = 1e-3;

    // Difference of the slip speed by which s(rho) is differentiated, as a share of it [1].
    private const double Nearby = 1e-5;

    /// <summary>Steady share of the breakaway deflection, s = |z|/z_max [1].</summary>
    /// <param name="rho">Renewal by rolling against sliding, kappa mu |omega R|/(sigma0 |v|) [1].</param>
    /// <param name="b">Elastic share of the switch [1].</param>
    /// <param name="isPlain">Whether the plain law holds.</param>
    public static double SteadyShare(double rho, double b, bool isPlain)
    {
        if (isPlain)
        {
            return 1.0 / (1.0 + rho);
        }

        if (rho > 1.0 / b)
        {
            return 1.0 / rho;
        }

        // s^2 - (b - (1-b) rho) s - (1-b) = 0
        double half = 0.5 * (b - ((1.0 - b) * rho));
        return half + Math.Sqrt((half * half) + (1.0 - b));
    }

    /// <summary>The margin of the criterion [1].</summary>
    /// <param name="mt">Mass of the tread ring [kg].</param>
    /// <param name="kc">Stiffness of the tyre body [N/m].</param>
    /// <param name="c">Damping of tyre body and viscous friction together [N s/m].</param>
    /// <param name="tau">Time in which a bristle follows, mu/(sigma0 |v|) [s].</param>
    /// <param name="feed">N d, slope of the friction force over slip speed [N s/m].</param>
    /// <param name="sigma1OverSigma0">Time of the bristles' damping [s].</param>
    public static double MarginOf(double mt, double kc, double c, double tau, double feed, double sigma1OverSigma0)
    {
        double first = mt + (c * tau) + (feed * sigma1OverSigma0);
        double second = c + (kc * tau) + feed;
        double ratio = first * second / (mt * tau * kc);
        return first < 0.0 || second < 0.0 ? -Math.Abs(ratio) : ratio;
    }

    /// <summary>The criterion of each wheel that carries load and slides.</summary>
    public static IReadOnlyList<RingCheck> Of(TurnModel model, double[] state)
    {
        model.Rates(state);
        RobotEquations<Numerics.R1> eq = model.System.Equations;
        List<RingCheck> checks = [];
        for (int i = 0; i < eq.Wheels.Length; i++)
        {
            ref readonly Tyres.WheelWork<Numerics.R1> w = ref eq.WheelWork[i];
            double v = w.SlipSpeed.Value;
            double load = w.Load.Value;
            if (v < LeastSlip || load <= 0.0)
            {
                continue;
            }

            ref readonly Tyres.WheelParameters<Numerics.R1> p = ref eq.Wheels[i];
            bool isPlain = eq.Kinds[i].Shape.Plain;
            (double sigma0, double kappa, double b) = (p.Sigma0.Value, p.Kappa.Value, p.ElasticShare.Value);
            double surface = Math.Abs(w.SurfaceSpeed.Value);
            double mu = w.Friction.Value;
            double slope = model.FrictionSlope(state, i);
            double d = (Steady(1.0 + Nearby) - Steady(1.0 - Nearby)) / (2.0 * Nearby * v);
            (double mt, double kc) = (p.TreadMass.Value, p.BodyStiffness.Value);
            double tau = mu / (sigma0 * v);
            double c = p.BodyDamping.Value + (load * p.Sigma2.Value);

            // sigma1 as the law limits it, at the decay rate of steady sliding
            double sigma1 = eq.Kinds[i].Shape.LimitDamping ? p.Sigma1.Value / (1.0 + (p.Sigma1Over4Sigma0.Value / tau)) : p.Sigma1.Value;
            double margin = MarginOf(mt, kc, c, tau, load * d, sigma1 / sigma0);
            checks.Add(new RingCheck(model.Scenario.Robot.Wheels[i].Name, margin, v, load, d, Math.Sqrt(kc / mt) / (2.0 * Math.PI)));

            double Steady(double share)
            {
                double speed = share * v;
                double near = mu + (slope * (speed - v));
                return near * SteadyShare(kappa * near * surface / (sigma0 * speed), b, isPlain);
            }
        }

        return checks;
    }
}
