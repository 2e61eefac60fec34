namespace PushSim.Tyres;

/// <summary>Deflection of the tyre body [m], velocity of the tread [m/s] and deflection of the bristles [m] of one wheel, along the circumference, across, and of the patch's turning times its <see cref="TyreSettings.SpinRadius"/>.</summary>
internal struct RingState<T>
    where T : struct, IReal<T>
{
    public T Qx, Qy, Vx, Vy, Zx, Zy, Qs, Vs, Zs;
}
