namespace PushSim.Simulation;

/// <summary>What is recorded of a wheel; one property a series.</summary>
/// <param name="part">The wheel.</param>
public sealed class WheelTrace(TracePart part)
{
    /// <summary>Name of the wheel.</summary>
    public string Name { get; } = part.Name;

    /// <summary>Load on the floor; 0 in the air [N].</summary>
    public Series Load { get; } = part.Add("wheel_*_load_n", "N", p => p.Wheel.Load.Value);

    /// <summary>Force of the tyre on the rim, forward positive [N].</summary>
    public Series LongitudinalForce { get; } = part.Add("wheel_*_longitudinal_force_n", "N", p => p.Wheel.Fx.Value);

    /// <summary>Force of the tyre on the rim, to the left positive [N].</summary>
    public Series LateralForce { get; } = part.Add("wheel_*_lateral_force_n", "N", p => p.Wheel.Fy.Value);

    /// <summary>Speed of the tread's surface about the wheel, forward drive positive [m/s].</summary>
    public Series SurfaceSpeed { get; } = part.Add("wheel_*_surface_speed_m_per_s", "m/s", p => p.Wheel.SurfaceSpeed.Value);

    /// <summary>Speed at which the tread slips over the floor, its size [m/s].</summary>
    public Series SlipSpeed { get; } = part.Add("wheel_*_tread_slip_speed_m_per_s", "m/s", p => p.Wheel.SlipSpeed.Value);

    /// <summary>Friction of the moment [1].</summary>
    public Series Friction { get; } = part.Add("wheel_*_friction", "1", p => p.Wheel.Friction.Value);

    /// <summary>How far the tread slides: 0 stuck, 1 sliding [1].</summary>
    public Series Sliding { get; } = part.Add("wheel_*_sliding", "1", p => p.Wheel.Alpha.Value);

    /// <summary>Rubber worn off; null where the tyre has no wear number [m³].</summary>
    public Series? Wear { get; } = part.AddIfAny("wheel_*_wear_m3", "m³", part.Layout.Wear[part.Index]);

    /// <summary>What friction took at the tread; null where the tyre has no wear number [J].</summary>
    public Series? FrictionWork { get; } = part.AddIfAny("wheel_*_friction_work_j", "J", part.Layout.FrictionWork[part.Index]);

    /// <summary>How dusty the tread is: 0 clean, 1 as dusty as it gets; null where no dust settles [1].</summary>
    public Series? Fouling { get; } = part.AddIfAny("wheel_*_fouling", "1", part.Layout.Fouling[part.Index]);
}
