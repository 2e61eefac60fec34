namespace PushSim.Simulation;

/// <summary>What is recorded of a robot's body; one property a series. Floor axes x along the floor, y to its left; body axes forward, left, up.</summary>
/// <param name="part">The body.</param>
public sealed class BodyTrace(TracePart part)
{
    /// <summary>Position of the centre of mass along the floor [m].</summary>
    public Series X { get; } = part.AddState("x_m", "m", StateLayout.X);

    /// <summary>Position of the centre of mass across the floor, left positive [m].</summary>
    public Series Y { get; } = part.AddState("y_m", "m", StateLayout.Y);

    /// <summary>Heading, positive counter-clockwise from above [rad].</summary>
    public Series Heading { get; } = part.AddState("heading_rad", "rad", StateLayout.Heading);

    /// <summary>Forward speed, along the body [m/s].</summary>
    public Series Speed { get; } = part.AddState("speed_m_per_s", "m/s", StateLayout.U);

    /// <summary>Sideways speed, to the body's left [m/s].</summary>
    public Series LateralSpeed { get; } = part.AddState("lateral_speed_m_per_s", "m/s", StateLayout.V);

    /// <summary>Yaw rate, positive counter-clockwise from above [rad/s].</summary>
    public Series YawRate { get; } = part.AddState("yaw_rate_rad_per_s", "rad/s", StateLayout.YawRate);

    /// <summary>Forward acceleration of the centre of mass, along the body [m/s²].</summary>
    public Series Acceleration { get; } = part.Add("acceleration_m_per_s2", "m/s²", p => p.Robot.AccelerationX.Value);

    /// <summary>Heave, up positive [m].</summary>
    public Series Heave { get; } = part.AddState("heave_m", "m", StateLayout.Heave);

    /// <summary>Pitch, nose down positive, of the line under the heading [rad].</summary>
    public Series Pitch { get; } = part.Add("pitch_rad", "rad", p => Tilt.Pitch(p.Robot.Attitude.Roll.Value, p.Robot.Attitude.Pitch.Value));

    /// <summary>Roll, left side up positive [rad].</summary>
    public Series Roll { get; } = part.Add("roll_rad", "rad", p => Tilt.Roll(p.Robot.Attitude.Roll.Value, p.Robot.Attitude.Pitch.Value));

    /// <summary>Moment of the sideways tyre forces about the centre of mass, positive counter-clockwise from above [N m].</summary>
    public Series ScrubMoment { get; } = part.Add("scrub_moment_n_m", "N m", Scrub);

    private static double Scrub(TracePart part)
    {
        double sum = 0.0;
        for (int i = 0; i < part.Robot.Wheels.Length; i++)
        {
            sum += (part.Robot.Wheels[i].X.Value * part.Robot.WheelWork[i].Fy.Value) + part.Robot.WheelWork[i].SpinMoment.Value;
        }

        return sum;
    }
}
