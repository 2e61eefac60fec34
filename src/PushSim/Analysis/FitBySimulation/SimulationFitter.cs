using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using PushSim.Analysis.Fit;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>Fits a tyre by running its pull or drag test in the engine until the simulated force follows the measured one: least squares by bounded
/// Levenberg-Marquardt steps in the logarithms of the parameters, from several starts. Every pull has its own clock and tare.</summary>
public static class SimulationFitter
{
    // Steps of a first search, and of one that goes on from it [1].
    private const int FirstSteps = 12;
    private const int MoreSteps = 6;

    // Relative change of the sum of squares, and step in the logarithm of a parameter, at which a search rests [1].
    private const double Rest = 1e-5;

    // Searches whose misfits differ by less came to the same place [1].
    private const double SamePlace = 0.01;

    // Slip speed and body stiffness of the starts, as multiples of the robot file's [1].
    private static readonly (double SlipSpeed, double Stiffness)[] Starts = [(1.0, 1.0), (0.2, 1.0), (3.0, 0.4), (1.0, 3.0)];

    /// <summary>Misfit in multiples of the noise above which the simulated test does not follow the log [1].</summary>
    internal const double PoorlyFollowed = 1.25;

    /// <summary>Pulls of which the scatter can be told [1].</summary>
    internal const int FewestPulls = 3;

    // Shares of the sliding that are followed one after the other: where a tyre chatters on and on, a run follows its beginning only [1]; least time of it [s].
    private static readonly double[] Shares = [0.1, 0.3, 0.6, 1.0];
    private const double LeastSliding = 0.25;

    // Share of the sliding below which a fit is not believed: a wrong tyre can follow that little [1].
    private const double LeastFollowed = 0.3;

    // Where even the shortest stretch is not followed, longer ones are used while their misfit stays below this multiple of its own [1].
    private const double FollowedOn = 1.5;

    // Searches of one stretch that the next one starts from [1].
    private const int MostGoneOnFrom = 2;

    // How far a pull's clock and tare may move in a search: as share of the time it takes to pull up [1], and at least [s]; [N].
    private const double ClockShare = 0.3;
    private const double ClockLeast = 0.05;
    private const double TareRange = 1.0;

    // How far one pull's friction may lie from that of all, in its logarithm [1].
    private const double FrictionRange = 0.5;

    // Margin at the end of the simulated test, for pulls whose clock moves during the fit [s].
    private const double Margin = 0.03;

    /// <summary>Steps that all searches of one tyre take at most [1]; most rest sooner.</summary>
    public static int MostSteps => (Starts.Length * FirstSteps) + ((Shares.Length - 1) * MostGoneOnFrom * MoreSteps);

    /// <summary>Fits one tyre; null if no pull slides, or the scenario's run with it fails.</summary>
    /// <param name="scenario">The test as it was done: robot, floor, tether and manoeuvre.</param>
    /// <param name="fit">What the logs show without a simulation: the start.</param>
    /// <param name="cancel">Stops the runs.</param>
    /// <param name="progress">Is told how many of <see cref="MostSteps"/> are done; the steps that a search has no need of count as done when it rests.</param>
    /// <exception cref="OperationCanceledException">The fit was cancelled.</exception>
    public static SimulationFit? Fit(ScenarioSettings scenario, TyreFit fit, CancellationToken cancel = default, Action<int>? progress = null)
    {
        var test = new SimulatedTest(scenario);
        MeasuredStretch[] all = [.. fit.Traces.SelectMany(MeasuredStretch.Of)];
        TyreSettings start = test.Tyre with { StaticFriction = fit.ForModel.Static, KineticFriction = fit.ForModel.Kinetic };
        if (all.Length == 0 || new TestModel(test, all, test.End, cancel).Start(start) is not double[] first)
        {
            return null;
        }

        MeasuredStretch[] pulls = [.. all.Select((p, j) => p.Until(test.End - Margin + TestModel.Later(first, j)))];
        double noise = fit.Traces.Max(t => Math.Max(t.Noise, t.Step / Math.Sqrt(12.0)));
        List<Stage> stages = Follow(test, pulls, first, start, noise, new SearchSteps(progress), cancel);
        if (stages.Count == 0)
        {
            return null;
        }

        List<(Vector<double> X, double Misfit)> firsts = stages[0].Found;
        int agreeing = firsts.Count(f => f.Misfit <= (1.0 + SamePlace) * firsts.Min(g => g.Misfit));
        (TestModel last, double used, List<(Vector<double> X, double Misfit)> ends) = stages[^1];
        (Vector<double> best, double misfit) = ends.MinBy(f => f.Misfit);
        FitDoubt doubt = misfit > PoorlyFollowed * noise ? FitDoubt.NotFollowed : used < LeastFollowed ? FitDoubt.FirstMoments : agreeing == 1 && firsts.Count > 1 ? FitDoubt.Disagreeing : FitDoubt.None;
        var intervals = new FitIntervals(last, best, doubt);
        FittedParameter[] parameters = [.. TestParameter.All.Select((_, k) => intervals.Of(k))];
        TyreSettings tyre = parameters.Where(p => p.IsTold).Aggregate(start, (t, p) => p.Parameter.Put(t, p.Value.Value));
        return new SimulationFit
        {
            Parameters = parameters,
            Tyre = tyre with { StaticFriction = Math.Max(tyre.StaticFriction, tyre.KineticFriction) },
            Pulls = [.. FollowedPulls(last, best)],
            Misfit = misfit,
            Noise = noise,
            Followed = used,
            Doubt = doubt,
            Starts = firsts.Count,
            Agreeing = agreeing,
            Runs = test.Runs,
        };
    }

    // Searches over longer and longer stretches, as far as a run follows; empty if no start gives a run that pulls.
    private static List<Stage> Follow(SimulatedTest test, MeasuredStretch[] pulls, double[] first, TyreSettings start, double noise, SearchSteps count, CancellationToken cancel)
    {
        List<Stage> stages = [];
        double followed = 0.0;
        foreach (double share in Shares)
        {
            MeasuredStretch[] part = [.. pulls.Select(p => p.UpTo(share, LeastSliding))];
            var model = new TestModel(test, part, part.Select((p, j) => p.Time[^1] - TestModel.Later(first, j)).Max() + Margin + ClockLeast, cancel);
            double[][] from = stages.Count == 0 ? [.. FirstStarts(model, start)] : [.. stages[^1].Found.OrderBy(f => f.Misfit).Take(MostGoneOnFrom).Select(f => f.X.ToArray())];
            List<(Vector<double> X, double Misfit)> found = [.. from.Select(x => Search(model, x, stages.Count == 0 ? FirstSteps : MoreSteps, count))];
            if (found.Count == 0)
            {
                break;
            }

            double least = found.Min(f => f.Misfit);
            followed = stages.Count == 0 ? Math.Max(PoorlyFollowed * noise, least > PoorlyFollowed * noise ? FollowedOn * least : 0.0) : followed;
            if (least > followed)
            {
                break;
            }

            stages.Add(new Stage(model, share, found));
        }

        return stages;
    }

    private static IEnumerable<double[]> FirstStarts(TestModel model, TyreSettings tyre) =>
        Starts.Select(s => model.Start(tyre with { SlipSpeed = s.SlipSpeed * tyre.SlipSpeed, BodyStiffness = s.Stiffness * tyre.BodyStiffness })).OfType<double[]>();

    private static IEnumerable<FollowedPull> FollowedPulls(TestModel model, Vector<double> x)
    {
        Vector<double> forces = model.Forces(x);
        int row = 0;
        for (int j = 0; j < model.Pulls.Count; j++)
        {
            MeasuredStretch pull = model.Pulls[j];
            double tare = TestModel.Tare(x, j);
            yield return new FollowedPull(pull.Time, [.. pull.Force.Select(f => f - tare)], [.. forces.SubVector(row, pull.Force.Length).Select(f => f - tare)]);
            row += pull.Force.Length;
        }
    }

    private static (Vector<double> X, double Misfit) Search(TestModel model, double[] start, int steps, SearchSteps count)
    {
        int pulls = model.Pulls.Count;
        double[] low = [.. TestParameter.All.Select(p => Math.Log(p.Low)), .. Enumerable.Range(0, pulls).SelectMany(j => new[] { TestModel.Later(start, j) - Clock(j), TestModel.Tare(start, j) - TareRange, -FrictionRange })];
        double[] high = [.. TestParameter.All.Select(p => Math.Log(p.High)), .. Enumerable.Range(0, pulls).SelectMany(j => new[] { TestModel.Later(start, j) + Clock(j), TestModel.Tare(start, j) + TareRange, FrictionRange })];
        double Clock(int j) => Math.Max(ClockLeast, ClockShare * (model.Pulls[j].PeakTime - model.Pulls[j].Time[0]));
        Vector<double> V(double[] x) => Vector<double>.Build.Dense(x);
        IObjectiveModel objective = ObjectiveFunction.NonlinearModel((x, _) => model.Forces(x), (x, _) => Slopes(x), V([.. Enumerable.Range(0, model.Measured.Count).Select(i => (double)i)]), model.Measured);
        var solver = new LevenbergMarquardtMinimizer(functionTolerance: Rest, stepTolerance: Rest, gradientTolerance: 1e-12, maximumIterations: steps);
        Vector<double> x = solver.FindMinimum(objective, V(start), V(low), V(high)).MinimizingPoint;
        count.EndSearch(steps);
        return (x, Misfit(model, x));

        Matrix<double> Slopes(Vector<double> at)
        {
            Matrix<double> slopes = model.Jacobian(at);
            count.Step(steps);
            return slopes;
        }
    }

    private static double Misfit(TestModel model, Vector<double> x) => (model.Measured - model.Forces(x)).L2Norm() / Math.Sqrt(model.Measured.Count);

    // How far the searches are: the slopes are nearly all of the work of a step.
    private sealed class SearchSteps(Action<int>? tell)
    {
        private int _before;
        private int _here;

        public void Step(int most)
        {
            _here = Math.Min(_here + 1, most);
            tell?.Invoke(_before + _here);
        }

        public void EndSearch(int most)
        {
            (_before, _here) = (_before + most, 0);
            tell?.Invoke(_before);
        }
    }

    // What the searches over one stretch came to.
    private sealed record Stage(TestModel Model, double Share, List<(Vector<double> X, double Misfit)> Found);
}
