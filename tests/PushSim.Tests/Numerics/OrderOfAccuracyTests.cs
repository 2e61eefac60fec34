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
    public void SlopeIsTheOrder(string name, string kind)
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
        AdditiveStepper<Problem> stepper = new(problem, tableau);
        double[] absolute = [.. Enumerable.Repeat(1.0, problem.Start.Length)];
        stepper.Start(0.0, problem.Start);
        stepper.Restart();
        for (int n = 1; n <= steps; n++)
        {
            stepper.Try(problem.End * n / steps, absolute, 1.0, 1);
            stepper.FinishTrial();
            stepper.Advance();
        }

        double[] reference = problem.Reference;
        double worst = 0.0;
        for (int i = 0; i < reference.Length; i++)
        {
            worst = Math.Max(worst, Math.Abs(stepper.State[i] - reference[i]));
        }

        return worst;
    }
}
