namespace PushSim.Chassis;

/// <summary>Two axles of a robot.</summary>
/// <param name="FrontX">Front axle, forward of the plan's origin, x_f [m].</param>
/// <param name="FrontRadius">Radius of its wheels, r_f [m].</param>
/// <param name="RearX">Rear axle, x_r [m].</param>
/// <param name="RearRadius">Radius of its wheels, r_r [m].</param>
public sealed record AxlePair(double FrontX, double FrontRadius, double RearX, double RearRadius);
