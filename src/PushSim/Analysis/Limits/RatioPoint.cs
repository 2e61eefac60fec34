namespace PushSim.Analysis.Limits;

/// <summary>One ratio of the ratio curve.</summary>
/// <param name="Factor">Multiple of the ratios in the file [1].</param>
/// <param name="Pull">Steady pull [N].</param>
/// <param name="DashTime">Time for the first metre [s]; NaN if it does not get there.</param>
/// <param name="TopSpeed">Top speed [m/s].</param>
public sealed record RatioPoint(double Factor, double Pull, double DashTime, double TopSpeed);
