using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Tests.Oracle;

/// <summary>One tyre: tread ring on a carcass, bristle under the tread, vertical spring. Plain fixed steps.</summary>
internal sealed class OracleWheel(WheelSettings settings, double centreX, double centreY)
{
    private readonly TyreSettings _tyre = settings.Tyre;

    // sigma0 = mu_s / z_max;  sigma1 from the damping ratio of the tread mass on its bristles at the reference load:
    // sigma1 N0 = 2 zeta sqrt(m_t sigma0 N0).
    private readonly double _sigma0 = settings.Tyre.StaticFriction / settings.Tyre.BreakawayDeflection;
    private readonly double _sigma1 = 2.0 * settings.Tyre.TreadDamping
        * Math.Sqrt(settings.Tyre.TreadMass * settings.Tyre.StaticFriction / settings.Tyre.BreakawayDeflection / settings.Tyre.ReferenceLoad);

    // Place from the centre of mass.
    public double X { get; } = settings.X - centreX;
    public double Y { get; } = settings.Y - centreY;
    public double Radius { get; } = settings.Radius;
    public double Rise { get; } = settings.Height;
    public double SpinInertia { get; } = settings.SpinInertia;
    public bool IsSkid { get; } = settings.IsSkid;
    public string Name { get; } = settings.Name;
    public double Stiffness { get; } = settings.Tyre.VerticalStiffness;
    public int Drive { get; set; } = -1;
    public double Ratio { get; set; } = 1.0;

    // States: tread speed v, carcass deflection q, bristle z, fouling D, worn volume.
    public double TreadX, TreadY, CarcassX, CarcassY, BristleX, BristleY, Fouling, Worn;

    // Present values.
    public double Load, ForceX, ForceY, RimX, RimY, RollingTorque;

    /// <summary>N = -kz z (1 - al x (1 + x^4)^(-1/4)) for z below 0, else 0; x = d z'/al, al = (1 - R)/(1 + R).</summary>
    public void SetLoad(double height, double speed)
    {
        double most = (1.0 - _tyre.Rebound) / (1.0 + _tyre.Rebound);
        double swing = _tyre.VerticalDamping * speed / most;
        Load = height < 0.0 ? -_tyre.VerticalStiffness * height * (1.0 - (most * swing * Math.Pow(1.0 + Math.Pow(swing, 4.0), -0.25))) : 0.0;
    }

    /// <summary>mu(|v|) = mu_k + (mu_s - mu_k) exp(-(|v|/v_s)^2) + mu_r ln(1 + |v|/v_r), times load, dust and floor.</summary>
    public double Friction(double speed, double scale)
    {
        double ratio = speed / _tyre.SlipSpeed;
        double mu = _tyre.KineticFriction + ((_tyre.StaticFriction - _tyre.KineticFriction) * Math.Exp(-ratio * ratio));
        if (_tyre.FrictionRise != 0.0)
        {
            mu += _tyre.FrictionRise * Math.Log(1.0 + (speed / _tyre.FrictionRiseSpeed));
        }
        if (_tyre.LoadExponent != 0.0)
        {
            double share = Math.Clamp(Load / (_tyre.TreadArea * _tyre.ReferenceLoad), 0.05, 20.0);
            mu *= Math.Pow(share, -_tyre.LoadExponent);
        }
        return mu * scale * (1.0 - Fouling + (_tyre.DustyFriction * Fouling));
    }

    /// <summary>
    /// Carcass force from the states, bristle one implicit step on, tread one step on by both:
    ///     F = k_c q + c_c (v - w),   T = -N (sigma0 z + sigma1 z' + sigma2 v),   m_t v' = T - F.
    /// </summary>
    public void Step(double h, double spin, double scale, FloorSettings floor)
    {
        ForceX = (_tyre.BodyStiffness * CarcassX) + (_tyre.BodyDamping * (TreadX - RimX));
        ForceY = (_tyre.BodyStiffness * CarcassY) + (_tyre.BodyDamping * (TreadY - RimY));
        RollingTorque = _tyre.RollingResistance * Load * Radius;
        double tx = 0.0;
        double ty = 0.0;
        if (Load > 0.0)
        {
            double speed = Math.Sqrt((TreadX * TreadX) + (TreadY * TreadY));
            double mu = Friction(speed, scale);
            double zMax = mu / _sigma0;
            double qx = BristleX + (h * TreadX);
            double qy = BristleY + (h * TreadY);
            double trial = Math.Sqrt((qx * qx) + (qy * qy));
            double along = trial > 0.0 ? Math.Max(0.0, ((TreadX * qx) + (TreadY * qy)) / trial) : 0.0;
            double decay = (_tyre.PlainFriction ? speed : along) / zMax;
            double renewal = _tyre.RollingRenewal * Math.Abs(spin * Radius);
            double m = OracleSwitch.Length(trial, h, decay, renewal, zMax, _tyre.ElasticShare, _tyre.PlainFriction);
            double alpha = OracleSwitch.Alpha(m, zMax, _tyre.ElasticShare, _tyre.PlainFriction);
            double shrink = trial > 0.0 ? m / trial : 0.0;
            double rate = (alpha * decay) + renewal;
            BristleX = shrink * qx;
            BristleY = shrink * qy;
            double sigma1 = _tyre.PlainFriction ? _sigma1 : _sigma1 / (1.0 + (_sigma1 * rate / (4.0 * _sigma0)));
            tx = -Load * ((_sigma0 * BristleX) + (sigma1 * (TreadX - (rate * BristleX))) + (_tyre.ViscousFriction * TreadX));
            ty = -Load * ((_sigma0 * BristleY) + (sigma1 * (TreadY - (rate * BristleY))) + (_tyre.ViscousFriction * TreadY));
            double slide = alpha * decay * m;
            if (_tyre.FoulingDistance > 0.0)
            {
                Fouling += h * floor.Dust * slide / _tyre.FoulingDistance * (1.0 - Fouling);
            }
            Worn += h * _tyre.SpecificWear * floor.Abrasiveness * Load * slide;
        }
        else
        {
            // In the air the bristle relaxes with 1 ms.
            BristleX /= 1.0 + (h / 0.001);
            BristleY /= 1.0 + (h / 0.001);
        }
        TreadX += h * (tx - ForceX) / _tyre.TreadMass;
        TreadY += h * (ty - ForceY) / _tyre.TreadMass;
    }

    /// <summary>Deflections that carry a given force at rest: F = k_c q = -N sigma0 z.</summary>
    public void Lean(double forceX, double forceY)
    {
        ForceX = forceX;
        ForceY = forceY;
        CarcassX = forceX / _tyre.BodyStiffness;
        CarcassY = forceY / _tyre.BodyStiffness;
        BristleX = -forceX / (Load * _sigma0);
        BristleY = -forceY / (Load * _sigma0);
    }

    /// <summary>q' = v - w, with the new speeds.</summary>
    public void MoveCarcass(double h)
    {
        CarcassX += h * (TreadX - RimX);
        CarcassY += h * (TreadY - RimY);
    }
}
