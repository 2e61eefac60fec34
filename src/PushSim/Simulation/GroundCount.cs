namespace PushSim.Simulation;

/// <summary>
/// Ground that the first of two robots gains: the way of their contact since the first touch, each piece of it along the line from that robot to the other. While
/// they are apart the middle between them counts in place of the contact, so that ground counts to the end and not to the last touch.
/// </summary>
internal struct GroundCount
{
    private double _held;
    private (double X, double Y) _contact, _middle, _toward;

    /// <summary>Whether they have touched.</summary>
    public bool HasTouched { get; private set; }

    /// <summary>Ground gained up to the last moment told [m].</summary>
    public double Gained { get; private set; }

    /// <summary>Tells the next moment.</summary>
    /// <param name="contact">Place of the contact on the first robot's floor [m]; null while they are apart.</param>
    /// <param name="x">Place of the first robot along its floor [m].</param>
    /// <param name="y">And across.</param>
    /// <param name="otherX">Place of the second along its own, which is turned by half a turn [m].</param>
    /// <param name="otherY">And across.</param>
    public void Next((double X, double Y)? contact, double x, double y, double otherX, double otherY)
    {
        (double X, double Y) middle = (0.5 * (x - otherX), 0.5 * (y - otherY));
        if (contact is not (double X, double Y) touch)
        {
            Gained = HasTouched ? _held + Along(middle, _middle) : 0.0;
            return;
        }

        (_middle, _toward) = (middle, Facing(x, y, otherX, otherY));
        _held += HasTouched ? Along(touch, _contact) : 0.0;
        (_contact, HasTouched, Gained) = (touch, true, _held);
    }

    // Direction from the first robot to the second on the first one's floor, of length 1; straight along where they stand in one point [1]
    private static (double X, double Y) Facing(double x, double y, double otherX, double otherY)
    {
        (double dx, double dy) = (-otherX - x, -otherY - y);
        double length = double.Hypot(dx, dy);
        return length > 0.0 ? (dx / length, dy / length) : (1.0, 0.0);
    }

    private readonly double Along((double X, double Y) to, (double X, double Y) from) => ((to.X - from.X) * _toward.X) + ((to.Y - from.Y) * _toward.Y);
}
