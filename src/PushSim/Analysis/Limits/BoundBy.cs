using PushSim.Binding;

namespace PushSim.Analysis.Limits;

/// <summary>A kind that binds a steady pull.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="GainPercent">What a tenth more of its part adds to the pull at the slope of the moment (of the battery: a tenth less resistance; of a series wiring: the same motors in parallel) [%].</param>
public sealed record BoundBy(BindingKind Kind, double GainPercent);
