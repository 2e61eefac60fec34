namespace PushSim.Runs;

/// <summary>The jerk of a tether that snaps taut.</summary>
/// <param name="Force">Its force [N].</param>
/// <param name="Held">What of it tyres and weight held; the rest changed the robot's speed [N].</param>
public sealed record TetherJerk(double Force, double Held);
