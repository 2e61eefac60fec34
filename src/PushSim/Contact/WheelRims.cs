namespace PushSim.Contact;

/// <summary>The wheels of a body as numbers of the kernel, how fast they turn, and what a contact does to them.</summary>
internal sealed class WheelRims<T> : INumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Hubs from the centre of mass, radii, half widths [m].</summary>
    public readonly T[] X, Y, Z, Radius, HalfWidth;

    /// <summary>Stiffness of an edge's length on the tread, its tyre's in series [N/m^2]; friction [1].</summary>
    public readonly T[] Stiffness, Friction;

    /// <summary>Turning about the axle against the body, positive rolling forward: to be set before a contact is evaluated [rad/s].</summary>
    public readonly T[] Spin;

    /// <summary>Moment of the contact on each wheel about its axle, positive as <see cref="Spin"/> [N m].</summary>
    public readonly T[] Torque;

    /// <param name="wheels">The wheels.</param>
    /// <param name="edgeStiffness">Stiffness of an edge against a face [N/m^2].</param>
    public WheelRims(IReadOnlyList<RoundWheel> wheels, double edgeStiffness)
    {
        X = Aligned.Copy([.. wheels.Select(w => (T)w.X)]);
        Y = Aligned.Copy([.. wheels.Select(w => (T)w.Y)]);
        Z = Aligned.Copy([.. wheels.Select(w => (T)w.Z)]);
        Radius = Aligned.Copy([.. wheels.Select(w => (T)w.Radius)]);
        HalfWidth = Aligned.Copy([.. wheels.Select(w => (T)w.HalfWidth)]);

        // flush, both ends of the line of contact at depth d carry 2 k d (b + l0/4)
        Stiffness = Aligned.Copy([.. wheels.Select(w => (T)(1.0 / ((1.0 / edgeStiffness) + (2.0 * (w.HalfWidth + (0.25 * EdgeProfile.CapLength)) / w.Stiffness))))]);
        Friction = Aligned.Copy([.. wheels.Select(w => (T)w.Friction)]);
        Spin = Aligned.Array<T>(wheels.Count);
        Torque = Aligned.Array<T>(wheels.Count);
    }

    /// <summary>Number of wheels.</summary>
    public int Count => X.Length;

    public void Show(NumberWalk<T> walk)
    {
        foreach (T[] numbers in (T[][])[X, Y, Z, Radius, HalfWidth, Stiffness, Friction])
        {
            walk.Take(numbers);
        }
    }

    /// <summary>Forgets the moments.</summary>
    public void Release() => Torque.AsSpan().Clear();

    /// <summary>Adds moments of a part, or of two that are mirror partners.</summary>
    /// <param name="first">Of the one [N m].</param>
    /// <param name="second">Of the other [N m]; empty without one.</param>
    public void Add(ReadOnlySpan<T> first, ReadOnlySpan<T> second)
    {
        for (int i = 0; i < first.Length; i++)
        {
            Torque[i] = Torque[i] + (second.Length > 0 ? first[i] + second[i] : first[i]);
        }
    }

    /// <summary>Power that the contact gives to the wheels' turning [W].</summary>
    public T Power()
    {
        T sum = 0.0;
        for (int i = 0; i < Torque.Length; i++)
        {
            sum = sum + (Torque[i] * Spin[i]);
        }

        return sum;
    }
}
