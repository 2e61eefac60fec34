namespace PushSim.Tyres;

/// <summary>What kind of wheel it is: its shape, and the friction table where it has one.</summary>
/// <param name="shape">Where its states stand and what is on.</param>
/// <param name="table">The table, or null.</param>
internal sealed class WheelKind<T>(WheelShape shape, FrictionTable<T>? table = null)
    where T : struct, IReal<T>
{
    public readonly WheelShape Shape = shape with { TablePoints = table?.Speed.Length ?? 0 };

    public readonly FrictionTable<T>? Table = table;

    /// <summary>The same wheel with one friction at every slip speed, and gives its numbers that friction [1]; load and dust act on it as before.</summary>
    public WheelKind<T> Flat(ref WheelParameters<T> p, T friction)
    {
        (p.KineticFriction, p.FrictionDrop) = (friction, 0.0);
        return new WheelKind<T>(Shape with { HasRise = false });
    }
}
