namespace PushSim.Analysis.Limits;

/// <summary>What tyres hold, and under which loads.</summary>
/// <param name="Force">Force of each wheel [N]; 0 for one that no motor turns.</param>
/// <param name="Load">Load of each wheel [N].</param>
/// <param name="TipsAt">Traction at which the robot rears up, if it does before the tyres give all of that force; these are the loads of that moment [N].</param>
internal sealed record HeldForces(double[] Force, double[] Load, double? TipsAt);
