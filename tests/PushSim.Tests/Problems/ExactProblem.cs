namespace PushSim.Tests.Problems;

/// <summary>A problem whose solution is known at every time.</summary>
public abstract class ExactProblem : Problem
{
    public override double[] Start => Exact(0.0);

    public override double[] Reference => Exact(End);

    public override string Source => "closed form, computed here";

    public override bool TryExact(double t, Span<double> y)
    {
        Exact(t).CopyTo(y);
        return true;
    }

    protected abstract double[] Exact(double t);
}
