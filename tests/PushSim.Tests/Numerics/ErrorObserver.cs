using PushSim.Numerics;
using PushSim.Tests.Problems;

namespace PushSim.Tests.Numerics;

/// <summary>Largest error against the exact solution in tolerance units: at step ends, inside steps, at fixed output times.</summary>
internal sealed class ErrorObserver(Problem problem, double absolute, double relative, int outputs = 101) : IStepObserver
{
    private readonly double[] _exact = new double[problem.Start.Length];
    private readonly double[] _dense = new double[problem.Start.Length];
    private int _next;

    public double AtSteps { get; private set; }

    public double BetweenSteps { get; private set; }

    public double AtOutputs { get; private set; }

    public StepDecision OnStep(DenseOutput step)
    {
        AtSteps = Math.Max(AtSteps, Error(step, step.T1));
        foreach (double share in (ReadOnlySpan<double>)[0.2, 0.5, 0.8])
        {
            BetweenSteps = Math.Max(BetweenSteps, Error(step, step.T0 + (share * (step.T1 - step.T0))));
        }

        for (; _next < outputs && problem.End * _next / (outputs - 1) <= step.T1; _next++)
        {
            AtOutputs = Math.Max(AtOutputs, Error(step, problem.End * _next / (outputs - 1)));
        }

        return StepDecision.Continue;
    }

    private double Error(DenseOutput step, double t)
    {
        problem.TryExact(t, _exact);
        step.Evaluate(t, _dense);
        double worst = 0.0;
        for (int i = 0; i < _exact.Length; i++)
        {
            worst = Math.Max(worst, Math.Abs(_dense[i] - _exact[i]) / (absolute + (relative * Math.Abs(_exact[i]))));
        }

        return worst;
    }
}
