namespace PushSim.Tyres;

/// <summary>Numbers of one wheel as the equations use them, and nothing else; places relative to the centre of mass. Built once per run.</summary>
internal struct WheelParameters<T>
    where T : struct, IReal<T>
{
    /// <summary>Hub forward, left and above the centre of mass, rolling radius [m]; wheel speed / drive speed [1].</summary>
    public T X, Y, HubZ, Radius, DriveRatio;

    /// <summary>m_t [kg], 1/m_t [1/kg], k_c [N/m], c_c [N s/m].</summary>
    public T TreadMass, InverseTreadMass, BodyStiffness, BodyDamping;

    /// <summary>Longest step while the ring grows, sqrt(m_t/k_c): six to a period [s].</summary>
    public T RingStep;

    /// <summary>k_z [N/m], d [s/m], 1/al^2 of the most that damping takes or adds, al = (1 - R)/(1 + R) of the load [1].</summary>
    public T VerticalStiffness, VerticalDamping, InverseLossSquared;

    /// <summary>Per unit of load: sigma0 [1/m], sigma1 [s/m], sigma1/(4 sigma0) [s], sigma2 [s/m].</summary>
    public T Sigma0, Sigma1, Sigma1Over4Sigma0, Sigma2;

    /// <summary>mu_k, mu_s - mu_k [1], 1/v_s [s/m].</summary>
    public T KineticFriction, FrictionDrop, InverseSlipSpeed;

    /// <summary>b [1], kappa [1/m], 1/sigma0 [m], 1/(1 - b) [1].</summary>
    public T ElasticShare, Kappa, InverseSigma0, InversePlasticShare;

    /// <summary>crr [1], 1/omega_s of the wheel's spin [s/rad].</summary>
    public T RollingResistance, InverseRollingSpeed;

    /// <summary>mu_r [1], 1/v_r [s/m].</summary>
    public T FrictionRise, InverseRiseSpeed;

    /// <summary>p [1], 1/(f N0) [1/N].</summary>
    public T LoadExponent, InverseReferenceLoad;

    /// <summary>Friction fully fouled over clean [1], dust of the floor / L_d [1/m], k_w a [m^3/(N m)].</summary>
    public T DustyRatio, InverseFoulingDistance, WearRate;

    /// <summary>mu_y/mu_x [1], mean distance of the patch's points from its middle [m].</summary>
    public T LateralRatio, SpinRadius;
}

/// <summary>What one wheel's evaluation leaves for the record and the ledger.</summary>
internal struct WheelWork<T>
    where T : struct, IReal<T>
{
    /// <summary>Load [N], force on the rim along x and y [N], friction coefficient now, of it the floor's and dust's factor [1], tread slip speed [m/s].</summary>
    public T Load, Fx, Fy, Friction, FloorFriction, SlipSpeed;

    /// <summary>Moment of the patch on the rim about the vertical [N m].</summary>
    public T SpinMoment;

    /// <summary>Rim surface speed omega R [m/s].</summary>
    public T SurfaceSpeed;

    /// <summary>Torque of force and rolling resistance on the drive, already times the wheel's ratio [N m].</summary>
    public T DriveTorque;

    /// <summary>Ledger powers: tread, carcass damping, vertical damping, rolling [W].</summary>
    public T TreadPower, CarcassPower, VerticalPower, RollingPower;

    /// <summary>Switch alpha: 0 stuck, 1 sliding [1].</summary>
    public T Alpha;
}
