namespace PushSim.Runs;

/// <summary>The damping of the tyre bodies below which chatter begins by itself, and the one above which chatter that is there dies out. Large cycles feed
/// on the whole friction curve, so the second is the larger: hysteresis.</summary>
/// <param name="Onset">Times the damping that the tyres have: below it a small disturbance grows [1]; null if no damping between a hundredth and a hundred times makes the difference.</param>
/// <param name="Stop">Times the damping that the tyres have: above it full chatter dies out [1]; null if there was none to stop, or it did not stop.</param>
public sealed record ChatterRange(double? Onset, double? Stop);
