namespace PushSim.Binding;

/// <summary>What bound a robot over a stretch of time.</summary>
/// <param name="Kinds">Each kind that bound a loaded driven wheel with its share of the robot's impulse [1], by what more of it would add, the most first; the shares add up to 1.</param>
/// <param name="LiftedShare">Share of the time in which a driven wheel was off the floor for longer than a hop [1].</param>
public sealed record BindingShares(IReadOnlyList<(BindingKind Kind, double Share)> Kinds, double LiftedShare)
{
    // A kind that sets less of a stretch, or a lift that lasts less of it, passes unnoticed [1].
    private const double Noticed = 0.1;

    /// <summary>The kind of which more would add most.</summary>
    public BindingKind Leading => Kinds[0].Kind;

    /// <summary>The kinds that set enough to be named, in the same order.</summary>
    public IReadOnlyList<BindingKind> Named => [.. Kinds.Where((k, i) => i == 0 || k.Share >= Noticed).Select(k => k.Kind)];

    /// <summary>Whether a driven wheel was off the floor for long enough to be told.</summary>
    public bool IsLifted => LiftedShare >= Noticed;

    /// <summary>A stretch of one kind.</summary>
    public static BindingShares Of(BindingKind kind) => new([(kind, 1.0)], 0.0);
}
