using PushSim.Numerics;
using PushSim.Tests.Problems;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>Error against step, fixed steps, four halvings: the slope is the order.</summary>
public class OrderOfAccuracyTests
{
    public static TheoryData<string, string> Rows
    {
        get
        {
            TheoryData<string, string> rows = new();
            foreach (AdditiveTableau tableau in AdditiveTableau.All)
            {
                rows.Add(tableau.Name, "explicit");
                rows.Add(tableau.Name, "additive");
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Slope_is_the_order(string name, string kind)
    {
        (double slope, double[] errors) = Slope(name, kind);
        double order = AdditiveTableau.ByName(name).Order;
        Assert.True(Math.Abs(slope - order) < 0.2, $"slope {slope:F3}, order {order}, errors {string.Join(" ", errors)}");
    }

    /// <summary>Slope of the logarithm of the error at the end over that of the step, and the errors.</summary>
    internal static (double Slope, double[] Errors) Slope(string name, string kind)
    {
        AdditiveTableau tableau = AdditiveTableau.ByName(name);
        double[] x = new double[5];
        double[] logarithms = new double[5];
        for (int halving = 0; halving < 5; halving++)
        {
            Problem problem = kind == "explicit" ? new DrivenRiccati() : new StiffFollower(20.0);
            int steps = 40 << halving;
            x[halving] = -Math.Log(steps);
            logarithms[halving] = Math.Log(ErrorAtEnd(problem, tableau, steps));
        }

        return (MathNet.Numerics.Fit.Line(x, logarithms).B, [.. logarithms.Select(Math.Exp)]);
    }

    // Largest error of the explicit and the implicit part together, so that neither hides behind the other.
    private static double ErrorAtEnd(Problem problem, AdditiveTableau tableau, int steps)
    {
        // out of the norm no step is ever refused, and all are as long as allowed
        double step = problem.End / steps;
        IntegrationSettings settings = new()
        {
            AbsoluteTolerances = [.. Enumerable.Repeat(double.PositiveInfinity, problem.Start.Length)],
            InitialStep = step,
            MaximumStep = step * (1.0 + 1e-9),
        };
        double[] y = problem.Start;
        IntegrationOutcome report = new SingleRun<Problem>(problem, tableau).Run(0.0, problem.End, y, [], settings, new SilentObserver());
        Assert.Equal(steps, report.Steps);

        double[] reference = problem.Reference;
        double worst = 0.0;
        for (int i = 0; i < reference.Length; i++)
        {
            worst = Math.Max(worst, Math.Abs(y[i] - reference[i]));
        }

        return worst;
    }
}
