using PushSim.Numerics;

namespace PushSim.Tests.Problems;

/// <summary>A named initial value problem with its equation and what is known about its solution.</summary>
public abstract class Problem : IAdditiveSystem
{
    public abstract string Name { get; }

    public abstract string Equation { get; }

    /// <summary>Where the end values or the exact solution come from.</summary>
    public abstract string Source { get; }

    public abstract double[] Start { get; }

    public abstract double End { get; }

    public virtual int ImplicitCount => 0;

    public int ExplicitCount => Start.Length - ImplicitCount;

    /// <summary>Evaluations counted by the problem itself.</summary>
    public long Calls { get; private set; }

    /// <summary>Known state at <see cref="End"/>; NaN where nothing is known.</summary>
    public abstract double[] Reference { get; }

    /// <summary>Exact solution, if there is one in closed form.</summary>
    public virtual bool TryExact(double t, Span<double> y) => false;

    public void Evaluate(double t, double g, Span<double> y, Span<double> dy)
    {
        Calls++;
        Rates(t, g, y, dy);
    }

    public override string ToString() => Name;

    protected abstract void Rates(double t, double g, Span<double> y, Span<double> dy);
}
