namespace PushSim.Simulation;

/// <summary>What is recorded of all that the first robot touches, taken together; one property a series. Push and sideways force are what it exerts on what it touches, along x
/// and y of the floor as it sees it (not of its body): forward and to its left where it starts with heading zero [N].</summary>
/// <param name="part">The contacts.</param>
public sealed class ContactTrace(TracePart part)
{
    /// <summary>Normal force of all contacts; 0 while nothing touches [N].</summary>
    public Series Force { get; } = part.Add("contact_force_n", "N", p => p.Touch.Force);

    /// <summary>Push along the floor [N].</summary>
    public Series Push { get; } = part.Add("contact_push_n", "N", p => p.Touch.Along);

    /// <summary>Sideways force, to the left positive [N].</summary>
    public Series SideForce { get; } = part.Add("contact_side_force_n", "N", p => p.Touch.Across);

    /// <summary>Place along the floor, weighted by force; stays while nothing touches [m].</summary>
    public Series X { get; } = part.Add("contact_x_m", "m", p => p.Touch.X);

    /// <summary>Place across the floor, left positive, weighted by force; stays while nothing touches [m].</summary>
    public Series Y { get; } = part.Add("contact_y_m", "m", p => p.Touch.Y);
}
