using MathNet.Numerics.Distributions;
using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Analysis.Statistics;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Words.Fits;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>A tyre fitted by simulating its test: logs made by the engine, with noise, scatter and clocks of their own, must give it back.</summary>
public class SimulationFitTests(ITestOutputHelper output)
{
    // Fixed before the run; seeds 1 to 100 had set when a fit is believed (360 of 400 inside, before it was tightened)
    private static readonly int FirstSeed = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_SIMULATED_FITS_FIRST"), out int f) ? f : 10_001;

    // PUSHSIM_SIMULATED_FITS=400 dotnet test -c Release tests/PushSim.Tests --filter SimulationFitTests runs the full count; ..._FIRST=20001 takes other seeds
    private static readonly int Intervals = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_SIMULATED_FITS"), out int n) ? n : 5;

    // Computed here: of 400 intervals of 95 %, 364 to 393 hold the truth with probability 0.999; of fewer, the same of the binomial distribution
    [Fact]
    public void The_true_tyre_lies_in_its_intervals_as_often_as_promised()
    {
        int inside = 0;
        Dictionary<string, (int Inside, int Told)> each = [];
        int told = 0;
        int tests = 0;
        int refused = 0;
        var most = TimeSpan.Zero;
        for (int seed = FirstSeed; told < Intervals; seed++, tests++)
        {
            SimulatedPulls made = SimulatedPulls.Make(seed, 6);
            var watch = System.Diagnostics.Stopwatch.StartNew();
            SimulationFit fit = Assert.IsType<SimulationFit>(Fit(made));
            most = watch.Elapsed > most ? watch.Elapsed : most;
            FittedParameter[] sure = [.. fit.Parameters.Where(p => p.IsTold).Take(Intervals - told)];
            refused += sure.Length == 0 ? 1 : 0;
            told += sure.Length;
            foreach (FittedParameter p in sure)
            {
                double truth = p.Parameter.Of(made.Tyre);
                bool isIn = p.Value.Low <= truth && truth <= p.Value.High;
                inside += isIn ? 1 : 0;
                (int held, int all) = each.GetValueOrDefault(p.Parameter.Key);
                each[p.Parameter.Key] = (held + (isIn ? 1 : 0), all + 1);
                if (!isIn)
                {
                    output.WriteLine(FormattableString.Invariant($"seed {seed} {p.Parameter.Key} {truth:G4}: {p.Value.Value:G4} ({p.Value.Low:G4} to {p.Value.High:G4}), misfit {fit.Misfit / fit.Noise:0.00} of the noise, followed {fit.Followed}, {fit.Agreeing} of {fit.Starts} agree"));
                }
            }
        }

        output.WriteLine(FormattableString.Invariant($"{inside} of {told} inside, from {tests} tests of which {refused} told nothing; the slowest fit took {most.TotalSeconds:0.0} s"));
        output.WriteLine(string.Join(", ", each.Select(e => FormattableString.Invariant($"{e.Key} {e.Value.Inside} of {e.Value.Told}"))));
        (int fewest, int greatest) = Intervals == 400 ? (364, 393) : (Quantile(0.0005), Quantile(0.9995));
        Assert.InRange(inside, fewest, greatest);
        Assert.InRange(refused, 0, tests / 2);

        // each number by itself: of so many intervals of 95 % fewer hold once in ten thousand; five numbers are asked
        foreach ((string key, (int Inside, int Told) e) in each)
        {
            Assert.True(e.Inside == e.Told || Binomial.CDF(0.95, e.Told, e.Inside) > 1e-4, $"{key}: {e.Inside} of {e.Told}");
        }
    }

    // a slow even drag slides at one speed only: how friction falls with speed cannot be seen
    [Fact]
    public void A_slow_drag_does_not_tell_the_slip_speed()
    {
        SimulatedPulls made = SimulatedPulls.Make(3, 4, isDrag: true);
        SimulationFit fit = Assert.IsType<SimulationFit>(Fit(made));
        FittedParameter slip = fit.Parameters.Single(p => p.Parameter.Key == "slip_speed_m_per_s");
        output.WriteLine(string.Join(Environment.NewLine, fit.Parameters.Select(p => p.ToString())));
        Assert.False(slip.IsTold);
        Assert.NotEqual(UntoldCause.None, slip.Why);
        Assert.Equal(TestRobots.SoftTyre.SlipSpeed, fit.Tyre.SlipSpeed);
    }

    // another tether than the one that was used, fifty times softer
    [Fact]
    public void A_test_that_is_not_this_one_is_said_to_be_so()
    {
        SimulatedPulls made = SimulatedPulls.Make(3, 4);
        TetherSettings loose = made.Scenario.Tether! with { Stiffness = 0.02 * made.Scenario.Tether!.Stiffness };
        List<int> steps = [];
        SimulationFit fit = Assert.IsType<SimulationFit>(Fit(made with { Scenario = made.Scenario with { Tether = loose } }, steps.Add));
        Assert.Contains(SimulationFitWords.Warnings(fit), w => w.Contains("follows the log to"));

        // how far it is: from the first step on, never back, and within what was said to be the most
        Assert.Equal(1, steps[0]);
        Assert.InRange(steps.Distinct().Count(), 12, SimulationFitter.MostSteps);
        Assert.Equal(steps.Order(), steps);
        Assert.InRange(steps[^1], 48, SimulationFitter.MostSteps);
        Assert.Equal(84, SimulationFitter.MostSteps);
        Assert.DoesNotContain(fit.Parameters, p => p.IsTold);
    }

    // pulls that ask for one tyre at the same time share its run, whatever the threads do
    [Fact]
    public void A_tyre_is_run_once_for_all_pulls_that_ask_for_it()
    {
        SimulatedPulls made = SimulatedPulls.Make(3, 4);
        FoundTrace found = PullFinder.Find(made.Trace);
        MeasuredStretch[] pulls = [.. MeasuredStretch.Of(found)];
        Assert.True(pulls.Length > 2);
        var test = new SimulatedTest(made.Scenario);
        var model = new TestModel(test, pulls, test.End, default);
        double[] start = model.Start(test.Tyre)!;
        model.Forces(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(start));
        Assert.Equal(1, test.Runs);

        // one that differs from pull to pull is another tyre for each
        for (int j = 0; j < pulls.Length; j++)
        {
            start[TestModel.Parameters + (3 * j) + 2] = 0.01 * (j % 2);
        }

        model.Forces(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(start));
        Assert.Equal(2, test.Runs);
    }

    // each friction has one value: that of the simulated test where it tells one; two intervals that do not meet are told
    [Theory]
    [InlineData(0.94, 0.96, true, true)]
    [InlineData(0.89, 0.93, true, false)]
    [InlineData(0.94, 0.96, false, false)]
    public void A_friction_has_one_value(double low, double high, bool isTold, bool disagrees)
    {
        TyreFit pulls = PullFit.OfReadings("a", [0.73, 0.74, 0.75], [0.895, 0.90, 0.905], GripLoad.Fixed(1.0), null, isDrag: true);
        double middle = 0.5 * (low + high);
        SimulationFit simulated = Made(middle, low, high, isTold);
        TyreFit one = simulated.Into(pulls);
        Assert.Equal(isTold ? middle : 0.90, one.StaticFriction.Value, 1e-12);
        Assert.Equal(isTold, one.IsStaticSimulated);
        Assert.Equal(pulls.Sliding, one.Sliding);
        Assert.False(one.IsKineticSimulated);
        Assert.Equal(disagrees, PullWords.Warnings(one).Any(w => w.StartsWith("breakaway: the pull trace says 0.888 to 0.912, the simulated test 0.940 to 0.960. They do not agree", StringComparison.Ordinal)));
    }

    private static SimulationFit Made(double atRest, double low, double high, bool isTold) => new()
    {
        Parameters = [.. TestParameter.All.Select((p, k) => new FittedParameter(p, new Interval(atRest, low, high), k == 0 && isTold, k == 0 && isTold ? UntoldCause.None : UntoldCause.Faint))],
        Tyre = TestRobots.SoftTyre, Pulls = [], Misfit = 0.1, Noise = 0.1, Followed = 1.0, Doubt = FitDoubt.None, Starts = 4, Agreeing = 2, Runs = 100,
    };

    private static SimulationFit? Fit(SimulatedPulls made, Action<int>? progress = null)
    {
        GripLoad load = GripLoad.Of(made.Scenario.Robot, made.Scenario.Tether!.HookHeight, made.Scenario.Manoeuvre.Kind == ManoeuvreKind.DragTest);
        return SimulationFitter.Fit(made.Scenario, PullFit.OfTraces("tyre", [PullFinder.Find(made.Trace)], load, null, made.Scenario.Manoeuvre.Kind == ManoeuvreKind.DragTest), progress: progress);
    }

    private static int Quantile(double share)
    {
        var binomial = new Binomial(0.95, Intervals);
        int k = 0;
        while (binomial.CumulativeDistribution(k) < share)
        {
            k++;
        }

        return k;
    }
}
