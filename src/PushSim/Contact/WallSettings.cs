namespace PushSim.Contact;

/// <summary>A wall fixed to the floor: it stands on the right-hand side of the line from its first to its second end, so robots meet it from the left.</summary>
/// <param name="X1">First end, floor x [m].</param>
/// <param name="Y1">First end, floor y [m].</param>
/// <param name="X2">Second end, floor x [m].</param>
/// <param name="Y2">Second end, floor y [m].</param>
/// <param name="Height">Height of its upper edge above the floor [m].</param>
/// <param name="Thickness">Thickness to the right of the line [m].</param>
public sealed record WallSettings(double X1, double Y1, double X2, double Y2, double Height = 0.1, double Thickness = 0.1);
