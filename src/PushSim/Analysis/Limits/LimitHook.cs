namespace PushSim.Analysis.Limits;

/// <summary>Where what holds the robot back takes hold of it.</summary>
/// <param name="X">Forward of the plan's origin [m].</param>
/// <param name="Height">Above the floor [m].</param>
/// <param name="Rise">Rise of the tether towards its anchor per horizontal length [1].</param>
public sealed record LimitHook(double X, double Height, double Rise);
