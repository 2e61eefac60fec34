using PushSim.Powertrain;

namespace PushSim.Analysis.Limits;

/// <summary>One wiring with one wheel that lost its grip.</summary>
/// <param name="Wiring">How the motors are wired.</param>
/// <param name="Case">How the wheel lost it.</param>
/// <param name="Wheel">The wheel that lost it.</param>
/// <param name="Pull">Steady pull of the robot [N].</param>
/// <param name="Motors">Motors on that wheel's side.</param>
public sealed record WiringCase(Wiring Wiring, WheelLoss Case, string Wheel, double Pull, IReadOnlyList<WiredMotor> Motors);
