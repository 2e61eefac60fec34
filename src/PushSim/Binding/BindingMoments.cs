namespace PushSim.Binding;

/// <summary>What bound one wheel at each sample of a run.</summary>
/// <param name="Wheel">Index of the wheel.</param>
/// <param name="IsDriven">Whether motors turn it.</param>
/// <param name="Kinds">One kind a sample.</param>
/// <param name="Force">Its force along its rim at each sample [N].</param>
public sealed record BindingMoments(int Wheel, bool IsDriven, BindingKind[] Kinds, IReadOnlyList<double> Force)
{
    /// <summary>Share of the time by <see cref="BindingKind"/> [1]; adds up to 1.</summary>
    public IReadOnlyList<double> TimeShare => Shares(_ => 1.0, BindingKind.Nothing);

    /// <summary>Share of the impulse, the integral of the force's size, by <see cref="BindingKind"/> [1]; adds up to 1.</summary>
    public IReadOnlyList<double> ImpulseShare => Shares(i => Math.Abs(Force[i]), BindingKind.Nothing);

    /// <summary>That impulse over a run of a length [N s].</summary>
    /// <param name="length">The length [s].</param>
    public double Impulse(double length) => Kinds.Length < 2 ? 0.0 : length / (Kinds.Length - 1) * Enumerable.Range(0, Kinds.Length).Sum(i => Weight(i) * Math.Abs(Force[i]));

    // samples stand at equal distance: each counts for one, the ends for half
    private double Weight(int i) => Kinds.Length > 1 && (i == 0 || i == Kinds.Length - 1) ? 0.5 : 1.0;

    // Shares that add up to 1; a sum of nothing is all of one kind.
    private double[] Shares(Func<int, double> size, BindingKind ifNone)
    {
        double[] parts = new double[BindingRule.Kinds];
        for (int i = 0; i < Kinds.Length; i++)
        {
            parts[(int)Kinds[i]] += Weight(i) * size(i);
        }

        double sum = parts.Sum();
        return [.. parts.Select((p, k) => sum > 0.0 ? p / sum : k == (int)ifNone ? 1.0 : 0.0)];
    }
}
