namespace PushSim.Binding;

/// <summary>A stretch of time in which the same kinds bind a robot's driven wheels.</summary>
/// <param name="From">Its start [s].</param>
/// <param name="To">Its end [s].</param>
/// <param name="Kinds">
/// What binds at least one loaded driven wheel, by the force that it sets, the most first; <see cref="BindingKind.Nothing"/> alone without a command, <see cref="BindingKind.Lifted"/> last
/// where a driven wheel is off the floor.
/// </param>
public sealed record BindingSpan(double From, double To, IReadOnlyList<BindingKind> Kinds);
