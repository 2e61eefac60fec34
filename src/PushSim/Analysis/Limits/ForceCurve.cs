using PushSim.Binding;

namespace PushSim.Analysis.Limits;

/// <summary>Forces over the speed range.</summary>
/// <param name="Speed">Speeds, rising from 0 [m/s].</param>
/// <param name="Motor">What the motors can give [N].</param>
/// <param name="Peak">What the tyres hold at most at that speed [N].</param>
/// <param name="Sliding">What they hold sliding fast [N].</param>
/// <param name="Binding">What binds at each speed.</param>
public sealed record ForceCurve(double[] Speed, double[] Motor, double[] Peak, double[] Sliding, IReadOnlyList<BindingKind> Binding);
