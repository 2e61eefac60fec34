namespace PushSim.Analysis.Limits;

/// <summary>Forces of one axle over the speed range.</summary>
/// <param name="Number">Number of the axle, from the front, from 0.</param>
/// <param name="Count">Axles of the robot.</param>
/// <param name="Curve">The forces.</param>
public sealed record AxleCurve(int Number, int Count, ForceCurve Curve);
