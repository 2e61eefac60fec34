using PushSim.Numerics;

namespace PushSim.Tyres;

/// <summary>Numbers of one wheel as the equations use them; places relative to the centre of mass. Built once per run.</summary>
/// <typeparam name="T">Number type.</typeparam>
internal struct WheelParameters<T>
    where T : struct, IReal<T>
{
    public T X, Y, Radius, DriveRatio;
    public T TreadMass, InverseTreadMass, CarcassStiffness, CarcassDamping;
    public T VerticalStiffness, VerticalDamping;
    public T Sigma0, Sigma1, Sigma1Over4Sigma0, Sigma2;
    public T KineticFriction, FrictionDrop, InverseSlipSpeed;
    public T ElasticShare, Kappa, InverseSigma0, InversePlasticShare;
    public T RollingResistance, InverseRollingSpeed;
    public T FrictionRise, InverseRiseSpeed;
    public T LoadExponent, InverseReferenceLoad;
    public T DustyRatio, InverseFoulingDistance, WearRate;

    /// <summary>Index of the drive, -1 for a skid.</summary>
    public int Drive;

    /// <summary>Index of the fouling state, -1 when dust is off.</summary>
    public int FoulingIndex;

    /// <summary>Index of the wear integral, the tread's friction work follows; -1 when wear is off.</summary>
    public int WearIndex;

    /// <summary>Which optional terms are on; fixed for a run, so branches on them cost nothing.</summary>
    public bool Plain, HasRise, HasLoadExponent, HasRolling, LimitDamping;

    /// <summary>Friction table, or null.</summary>
    public FrictionTable<T>? Table;
}

/// <summary>What one wheel's evaluation leaves for the record and the ledger.</summary>
/// <typeparam name="T">Number type.</typeparam>
internal struct WheelWork<T>
    where T : struct, IReal<T>
{
    /// <summary>Load [N], force on the rim along x and y [N], friction coefficient now [1], tread slip speed [m/s].</summary>
    public T Load, Fx, Fy, Friction, SlipSpeed;

    /// <summary>Rim surface speed omega R [m/s].</summary>
    public T SurfaceSpeed;

    /// <summary>Torque of force and rolling resistance on the drive, already times the wheel's ratio [N m].</summary>
    public T DriveTorque;

    /// <summary>Ledger powers: tread, carcass damping, vertical damping, rolling [W].</summary>
    public T TreadPower, CarcassPower, VerticalPower, RollingPower;

    /// <summary>Switch alpha: 0 stuck, 1 sliding [1].</summary>
    public T Alpha;
}
