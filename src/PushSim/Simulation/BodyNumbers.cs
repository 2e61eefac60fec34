namespace PushSim.Simulation;

/// <summary>Numbers of a robot's body and of the floor under it, and nothing else.</summary>
internal struct BodyNumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Mass [kg], its inverse, 1/inertias [1/(kg m^2)], height of the centre of mass [m].</summary>
    public T Mass, InverseMass, InverseRoll, InversePitch, InverseYaw, Height;

    /// <summary>Differences of two inertias over the third: (I_zz - I_yy)/I_xx, (I_xx - I_zz)/I_yy, (I_yy - I_xx)/I_zz [1].</summary>
    public T GyroRoll, GyroPitch, GyroYaw;

    /// <summary>Gravity along floor x and y and normal to the floor [m/s^2].</summary>
    public T GravityX, GravityY, GravityZ;

    /// <summary>Downforce [N], its place [m], and 1 / the rise that takes three quarters of it [1/m].</summary>
    public T Downforce, DownforceX, DownforceY, InverseDownforceGap;

    /// <summary>Floor friction scale [1], air temperature [degree Celsius].</summary>
    public T FloorFriction, AirTemperature;
}
