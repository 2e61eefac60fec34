using PushSim.Numerics;
using PushSim.Tests.Problems;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>Adaptive runs against exact or published solutions, in tolerance units, under a cap on work.</summary>
public class AdaptiveAccuracyTests
{
    private static readonly Dictionary<string, Func<Problem>> Problems = new()
    {
        ["A1"] = () => new Detest(1),
        ["A2"] = () => new Detest(2),
        ["A3"] = () => new Detest(3),
        ["A4"] = () => new Detest(4),
        ["A5"] = () => new Detest(5),
        ["riccati"] = () => new DrivenRiccati(),
        ["follower"] = () => new StiffFollower(20.0),
        ["brusselator"] = () => new Brusselator(),
        ["arenstorf"] = () => new Arenstorf(),
        ["pleiades"] = () => new Pleiades(),
        ["hires"] = () => new Hires(),
        ["vanderpol"] = () => new VanDerPol(),
    };

    // Problems that do not magnify errors: the global error must stay at the size of the tolerance.
    [Theory]
    [InlineData("ARK3(2)", "A1", 1e-4, 160)]
    [InlineData("ARK3(2)", "A2", 1e-4, 120)]
    [InlineData("ARK3(2)", "A4", 1e-4, 135)]
    [InlineData("ARK3(2)", "riccati", 1e-4, 90)]
    [InlineData("ARK3(2)", "follower", 1e-6, 440)]
    [InlineData("ARK4(3)", "A1", 1e-4, 130)]
    [InlineData("ARK4(3)", "A2", 1e-4, 115)]
    [InlineData("ARK4(3)", "A4", 1e-4, 100)]
    [InlineData("ARK4(3)", "riccati", 1e-4, 75)]
    [InlineData("ARK4(3)", "follower", 1e-4, 110)]
    [InlineData("ARK4(3)", "A1", 1e-6, 255)]
    [InlineData("ARK4(3)", "A2", 1e-6, 230)]
    [InlineData("ARK4(3)", "A4", 1e-6, 215)]
    [InlineData("ARK4(3)", "riccati", 1e-6, 160)]
    [InlineData("ARK4(3)", "follower", 1e-6, 330)]
    [InlineData("ARK5(4)", "A1", 1e-4, 195)]
    [InlineData("ARK5(4)", "A2", 1e-4, 155)]
    [InlineData("ARK5(4)", "A4", 1e-4, 110)]
    [InlineData("ARK5(4)", "riccati", 1e-4, 85)]
    [InlineData("ARK5(4)", "follower", 1e-4, 110)]
    public void Error_stays_below_five_tolerances_at_between_and_at_outputs(string method, string problem, double tolerance, int cap)
    {
        Problem p = Problems[problem]();
        ErrorObserver observer = new(p, tolerance, tolerance);
        IntegrationOutcome report = Run(p, method, tolerance, tolerance, out _, observer);

        Assert.Equal(IntegrationStatus.Completed, report.Status);
        Assert.True(observer.AtSteps is > 0.0 and < 5.0, $"at steps {observer.AtSteps:G4} tolerances, < 5; {p.Equation}; {p.Source}");
        Assert.True(observer.BetweenSteps < 5.0, $"between steps {observer.BetweenSteps:G4} tolerances, < 5; {p.Equation}; {p.Source}");
        Assert.True(observer.AtOutputs < 5.0, $"at outputs {observer.AtOutputs:G4} tolerances, < 5; {p.Equation}; {p.Source}");
        Assert.True(report.Evaluations <= cap, $"{report.Evaluations} evaluations, cap {cap}");
    }

    // A component slaved at 1e5 1/s, slower than the method's steps: the dense output must not show the noise of its slope.
    // The chord costs h^2 z''/8, some thousandths of the range here.
    // ARK3(2) at 1e-6 is left out: its slope noise is small enough to pass for a slope once in some hundred steps (0.009).
    [Theory]
    [InlineData("ARK3(2)", 1e-4)]
    [InlineData("ARK4(3)", 1e-4)]
    [InlineData("ARK5(4)", 1e-4)]
    [InlineData("ARK4(3)", 1e-6)]
    [InlineData("ARK5(4)", 1e-6)]
    public void Slaved_component_is_smooth_between_steps(string method, double tolerance)
    {
        StiffFollower p = new(1e5);
        ErrorObserver observer = new(p, tolerance, tolerance);
        IntegrationOutcome report = Run(p, method, tolerance, tolerance, out _, observer);
        Assert.Equal(IntegrationStatus.Completed, report.Status);
        double largest = observer.BetweenSteps * tolerance;
        Assert.True(largest < 0.005, $"between steps {largest:G4}, < 0.005; {p.Equation}");
    }

    // End values of problems whose fast part is slaved or that forget their past.
    [Theory]
    [InlineData("ARK3(2)", "hires", 1e-6, 6800)]
    [InlineData("ARK4(3)", "hires", 1e-6, 6100)]
    [InlineData("ARK5(4)", "hires", 1e-6, 8500)]
    [InlineData("ARK3(2)", "vanderpol", 1e-6, 11100)]
    [InlineData("ARK4(3)", "vanderpol", 1e-6, 10900)]
    [InlineData("ARK5(4)", "vanderpol", 1e-6, 13100)]
    public void Stiff_end_values_are_within_five_tolerances(string method, string problem, double tolerance, int cap)
    {
        Problem p = Problems[problem]();
        SilentObserver observer = new();
        IntegrationOutcome report = Run(p, method, tolerance, 1e-3 * tolerance, out double[] y, observer);

        Assert.Equal(IntegrationStatus.Completed, report.Status);
        double error = EndError(p.Reference, y, tolerance, 1e-3 * tolerance);
        Assert.True(error < 5.0, $"{error:G4} tolerances, < 5; {p.Source}");
        Assert.True(report.Evaluations <= cap, $"{report.Evaluations} evaluations, cap {cap}");
    }

    // Problems that accumulate or magnify errors: a step may add one tolerance, magnified at most as a disturbance of the
    // start is, which is measured here by disturbing it.
    [Theory]
    [InlineData("ARK3(2)", "A3", 1e-6, 1980)]
    [InlineData("ARK3(2)", "A5", 1e-6, 480)]
    [InlineData("ARK3(2)", "brusselator", 1e-6, 2950)]
    [InlineData("ARK3(2)", "arenstorf", 1e-6, 3700)]
    [InlineData("ARK3(2)", "pleiades", 1e-6, 4080)]
    [InlineData("ARK4(3)", "A3", 1e-6, 900)]
    [InlineData("ARK4(3)", "A5", 1e-6, 190)]
    [InlineData("ARK4(3)", "brusselator", 1e-6, 1290)]
    [InlineData("ARK4(3)", "arenstorf", 1e-6, 1700)]
    [InlineData("ARK4(3)", "pleiades", 1e-6, 1960)]
    [InlineData("ARK5(4)", "A3", 1e-6, 725)]
    [InlineData("ARK5(4)", "A5", 1e-6, 205)]
    [InlineData("ARK5(4)", "brusselator", 1e-6, 1550)]
    [InlineData("ARK5(4)", "arenstorf", 1e-6, 1810)]
    [InlineData("ARK5(4)", "pleiades", 1e-6, 2020)]
    public void Error_at_the_end_is_explained_by_steps_and_magnification(string method, string problem, double tolerance, int cap)
    {
        Problem p = Problems[problem]();
        SilentObserver observer = new();
        IntegrationOutcome report = Run(p, method, tolerance, tolerance, out double[] y, observer);

        Assert.Equal(IntegrationStatus.Completed, report.Status);
        double allowed = report.Steps * Math.Max(1.0, Magnification(p));
        double error = EndError(p.Reference, y, tolerance, tolerance);
        Assert.True(error < allowed, $"{error:G4} tolerances, allowed {allowed:G4}; {p.Source}");
        Assert.True(report.Evaluations <= cap, $"{report.Evaluations} evaluations, cap {cap}");
    }

    // Sharp values: at a tight tolerance the published digits come out.
    [Theory]
    [InlineData("A1", 1e-11)]
    [InlineData("A2", 1e-11)]
    [InlineData("A3", 1e-9)]
    [InlineData("A4", 1e-9)]
    [InlineData("A5", 1e-9)]
    [InlineData("brusselator", 1e-10)]
    [InlineData("arenstorf", 1e-5)]
    [InlineData("pleiades", 1e-7)]
    public void Tight_run_reproduces_the_end_values(string problem, double largest)
    {
        Problem p = Problems[problem]();
        double error = EndError(p.Reference, End(p, "ARK5(4)", 1e-12, 1e-12), 0.0, 1.0, absolute: true);
        Assert.True(error < largest, $"difference {error:G4}, largest {largest:G4}; {p.Source}");
    }

    /// <summary>State at the end of a problem by an adaptive run at the given tolerances.</summary>
    internal static double[] End(Problem p, string method, double relative, double absolute)
    {
        SilentObserver observer = new();
        IntegrationOutcome report = Run(p, method, relative, absolute, out double[] y, observer);
        Assert.Equal(IntegrationStatus.Completed, report.Status);
        return y;
    }

    private static IntegrationOutcome Run(
        Problem p, string method, double relative, double absolute, out double[] y, IStepObserver observer)
    {
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName(method));
        y = p.Start;
        IntegrationSettings settings = new()
        {
            RelativeTolerance = relative,
            AbsoluteTolerances = [.. Enumerable.Repeat(absolute, y.Length)],
        };
        return integration.Run(0.0, p.End, y, [], settings, observer);
    }

    private static double EndError(double[] reference, double[] y, double relative, double unit, bool absolute = false)
    {
        double worst = 0.0;
        for (int i = 0; i < y.Length; i++)
        {
            double difference = Math.Abs(y[i] - reference[i]);
            double scale = absolute ? 1.0 : unit + (relative * Math.Abs(reference[i]));
            worst = double.IsNaN(reference[i]) ? worst : Math.Max(worst, difference / scale);
        }

        return worst;
    }

    // Change of the end per change of one start component, both in tolerance units of 1 + |y|; the largest over components.
    private static double Magnification(Problem p)
    {
        const double Disturbance = 1e-7;
        double[] plain = Tight(p, p.Start);
        double worst = 0.0;
        for (int i = 0; i < plain.Length; i++)
        {
            double[] start = p.Start;
            double step = Disturbance * (1.0 + Math.Abs(start[i]));
            start[i] += step;
            double[] other = Tight(p, start);
            for (int k = 0; k < plain.Length; k++)
            {
                worst = Math.Max(worst, Math.Abs(other[k] - plain[k]) / (Disturbance * (1.0 + Math.Abs(plain[k]))));
            }
        }

        return worst;
    }

    private static double[] Tight(Problem p, double[] start)
    {
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK5(4)"));
        double[] y = [.. start];
        IntegrationSettings settings = new()
        {
            RelativeTolerance = 1e-11,
            AbsoluteTolerances = [.. Enumerable.Repeat(1e-11, y.Length)],
        };
        SilentObserver observer = new();
        integration.Run(0.0, p.End, y, [], settings, observer);
        return y;
    }
}
