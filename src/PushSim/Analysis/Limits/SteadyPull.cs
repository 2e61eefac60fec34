namespace PushSim.Analysis.Limits;

/// <summary>A steady pull at standstill.</summary>
/// <param name="Force">Tension of the tether [N].</param>
/// <param name="IsMixed">Whether some driven wheels stand while others spin: then gear friction can hold more than this, by how the pull came about.</param>
public sealed record SteadyPull(double Force, bool IsMixed);
