namespace PushSim.Contact;

/// <summary>One upright or sloping face of an outline, from its corner to the next.</summary>
/// <param name="LowerEdge">Height of its lower edge above the floor, robot level and tyres just touching [m]; of a ramp, its tip.</param>
/// <param name="UpperEdge">Height of its upper edge above the floor [m]; of a ramp, its top.</param>
/// <param name="RampAngle">Angle of a ramp from the floor [rad], its slope running inward and up from the tip; null for an upright face.</param>
public sealed record FaceSettings(double LowerEdge, double UpperEdge, double? RampAngle = null);
