namespace PushSim.Contact;

/// <summary>A wall fixed to the floor: it stands on the right-hand side of the line from its first to its second end, so robots meet it from the left.</summary>
/// <param name="X1">First end, floor x [m].</param>
/// <param name="Y1">First end, floor y [m].</param>
/// <param name="X2">Second end, floor x [m].</param>
/// <param name="Y2">Second end, floor y [m].</param>
/// <param name="Height">Height of its upper edge above the floor [m].</param>
/// <param name="Thickness">Thickness to the right of the line [m].</param>
public sealed record WallSettings(double X1, double Y1, double X2, double Y2, double Height = 0.1, double Thickness = 0.1)
{
    /// <summary>Corners of its plan, counter-clockwise from above, the face that robots meet first [m].</summary>
    public (double X, double Y)[] Corners()
    {
        double dx = X2 - X1;
        double dy = Y2 - Y1;
        double scale = Thickness / double.Hypot(dx, dy);
        double bx = dy * scale;
        double by = -dx * scale;
        return [(X2, Y2), (X1, Y1), (X1 + bx, Y1 + by), (X2 + bx, Y2 + by)];
    }
}
