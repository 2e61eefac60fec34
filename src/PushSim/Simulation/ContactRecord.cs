using PushSim.Numerics;

namespace PushSim.Simulation;

/// <summary>
/// The recorded series of what the first robot touches, all contacts taken together. Push and sideways force are what it exerts on what it touches, along x and y of the
/// floor as it sees it (not of its body): forward and to its left where it starts with heading zero [N].
/// </summary>
internal sealed class ContactRecord
{
    private readonly SceneSystem _scene;
    private readonly Channel _force;
    private readonly Channel _along;
    private readonly Channel _across;
    private readonly Channel _x;
    private readonly Channel _y;
    private readonly int _samples;

    public ContactRecord(SceneSystem scene, int samples)
    {
        (_scene, _samples) = (scene, samples);
        _force = Make("contact_force_n", "Contact force, normal", "N");
        _along = Make("contact_push_n", "Push of the first robot along the floor", "N");
        _across = Make("contact_side_force_n", "Sideways force of the first robot", "N");
        _x = Make("contact_x_m", "Place of the contact along the floor", "m");
        _y = Make("contact_y_m", "Place of the contact across the floor", "m");
    }

    public IReadOnlyList<Channel> Channels(int count) =>
        [.. new[] { _force, _along, _across, _x, _y }.Select(c => count == _samples ? c : c with { Values = c.Values[..count] })];

    // Places are weighted by force, and stay where they were while nothing touches; before the first touch they are the origin.
    public void Sample(int index)
    {
        double force = 0.0, along = 0.0, across = 0.0, x = 0.0, y = 0.0;
        foreach (SceneContact<R1> contact in _scene.Contacts.Where(c => c.First == 0))
        {
            double normal = contact.Pair.NormalForce.Value;
            force += normal;
            along -= contact.Pair.ForceX.Value;
            across -= contact.Pair.ForceY.Value;
            x += normal * contact.Pair.CentreX.Value;
            y += normal * contact.Pair.CentreY.Value;
        }

        _force.Values[index] = force;
        _along.Values[index] = along;
        _across.Values[index] = across;
        _x.Values[index] = force > 0.0 ? x / force : index > 0 ? _x.Values[index - 1] : 0.0;
        _y.Values[index] = force > 0.0 ? y / force : index > 0 ? _y.Values[index - 1] : 0.0;
    }

    private Channel Make(string key, string label, string unit) => new(key, label, unit, new double[_samples]);
}
