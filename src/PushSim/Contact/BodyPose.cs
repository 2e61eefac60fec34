using PushSim.Chassis;

namespace PushSim.Contact;

/// <summary>Place, tilt and velocities of a body that can touch others.</summary>
internal struct BodyPose<T>
    where T : struct, IReal<T>
{
    /// <summary>Floor position of the centre of mass [m].</summary>
    public T X, Y;

    /// <summary>Sine and cosine of the heading, counter-clockwise from floor x [1].</summary>
    public T Sine, Cosine;

    /// <summary>Heave, up from tyres just touching [m].</summary>
    public T Heave;

    /// <summary>Pitch, nose down; roll, left side up [rad].</summary>
    public T Pitch, Roll;

    /// <summary>Velocities in body axes.</summary>
    public BodyMotion<T> Motion;
}
