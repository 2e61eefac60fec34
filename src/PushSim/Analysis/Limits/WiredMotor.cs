namespace PushSim.Analysis.Limits;

/// <summary>One motor in a wiring study.</summary>
/// <param name="Drive">Its drive.</param>
/// <param name="Current">Its current [A].</param>
/// <param name="Power">Power at its terminals [W].</param>
/// <param name="PowerShare">Share of its controller side's power [1].</param>
/// <param name="Force">What its wheels push [N].</param>
/// <param name="SurfaceSpeed">Speed of its wheels' surface, 0 stalled [m/s].</param>
public sealed record WiredMotor(string Drive, double Current, double Power, double PowerShare, double Force, double SurfaceSpeed);
