namespace PushSim.Simulation;

/// <summary>All contacts of the first robot taken together at a moment: what it exerts on what it touches [N], along x and y of the floor as it sees it, and where [m]. Places are
/// weighted by force, and stay where they were while nothing touches; before the first touch they are the origin.</summary>
internal sealed class TouchSum(SceneSystem scene)
{
    private readonly SceneContact<R1>[] _contacts = [.. scene.Contacts.Where(c => c.First == 0)];

    public double Force { get; private set; }

    public double Along { get; private set; }

    public double Across { get; private set; }

    public double X { get; private set; }

    public double Y { get; private set; }

    /// <summary>Takes them from the equations as they were evaluated last.</summary>
    public void Read()
    {
        double force = 0.0, along = 0.0, across = 0.0, x = 0.0, y = 0.0;
        foreach (SceneContact<R1> contact in _contacts)
        {
            double normal = contact.Pair.NormalForce.Value;
            force += normal;
            along -= contact.Pair.ForceX.Value;
            across -= contact.Pair.ForceY.Value;
            x += normal * contact.Pair.CentreX.Value;
            y += normal * contact.Pair.CentreY.Value;
        }

        (Force, Along, Across) = (force, along, across);
        (X, Y) = force > 0.0 ? (x / force, y / force) : (X, Y);
    }
}
