namespace PushSim.Chassis;

/// <summary>Outcome of a tilt test.</summary>
/// <param name="Height">Height of the centre of mass above the level floor [m].</param>
/// <param name="Angle">Angle of the tilt, nose up [rad].</param>
/// <param name="Sensitivity">Change of the height per change of the share that the front carries [m].</param>
public sealed record TiltResult(double Height, double Angle, double Sensitivity);
