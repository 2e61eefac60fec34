using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Turning;

/// <summary>One point of a stability map.</summary>
/// <param name="Growth">Growth rate of the fastest growing mode [1/s]; NaN where no steady turn was found.</param>
/// <param name="Part">What moves most in it.</param>
/// <param name="Frequency">Its frequency [Hz].</param>
/// <param name="RingMargin">Least margin of the ring criterion over the wheels, below 1 buzzes [1]; NaN where nothing slides.</param>
/// <param name="Simulated">Whether a disturbance of 1e-4 grew in a simulation; null where none was made.</param>
/// <param name="Chatter">Whether its tyres chatter, by the rule of <see cref="ChatterReview"/>.</param>
public sealed record StabilityPoint(double Growth, TurnPart Part, double Frequency, double RingMargin, bool? Simulated, ChatterKind Chatter);

/// <summary>Where a steady turn chatters, over two inputs.</summary>
public sealed class StabilityMap
{
    /// <summary>Rows of a map that is as fine as usual [1].</summary>
    public const int UsualRows = 24;

    // Points along a row of such a map, and every so many of them simulated [1].
    private const int UsualPoints = 32;
    private const int EveryX = 5;
    private const int EveryY = 4;

    // Axes that span more than this factor are logarithmic [1].
    private const double LogarithmicFrom = 20.0;

    // Longest time a disturbed turn is followed [s].
    private const double FollowedFor = 2.0;

    /// <summary>Evaluations that a map is usually allowed: those of the shipped turns need less [1].</summary>
    public const long UsualWork = 100_000_000;

    private StabilityMap(double[] x, double[] y, StabilityPoint?[,] points, int leftOut) => (X, Y, Points, LeftOut) = (x, y, points, leftOut);

    /// <summary>Values of the first input [its own unit].</summary>
    public double[] X { get; }

    /// <summary>Values of the second input [its own unit].</summary>
    public double[] Y { get; }

    /// <summary>Points by index of x, then of y; null where the scenario cannot be had.</summary>
    public StabilityPoint?[,] Points { get; }

    /// <summary>Points that would have taken more work than is left for their row, and are null [1].</summary>
    public int LeftOut { get; }

    /// <summary>All points that are there.</summary>
    public IEnumerable<StabilityPoint> Found => Points.Cast<StabilityPoint?>().OfType<StabilityPoint>().Where(p => double.IsFinite(p.Growth));

    /// <summary>Simulated points whose growth agrees in sign with the eigenvalues, and all simulated ones [1].</summary>
    public (int Agree, int All) Agreement
    {
        get
        {
            StabilityPoint[] made = [.. Found.Where(p => p.Simulated is not null)];
            return (made.Count(p => p.Simulated == p.Growth > 0.0), made.Length);
        }
    }

    /// <summary>Whether an axis over these values is logarithmic; the values should then be spaced so, too.</summary>
    /// <param name="from">First value [unit of the axis].</param>
    /// <param name="to">Last value [unit of the axis].</param>
    public static bool IsLogarithmic(double from, double to) => from > 0.0 && to > 0.0 && Math.Max(to / from, from / to) >= LogarithmicFrom;

    /// <summary>Values from first to last, evenly spaced on the scale of their axis [unit of the axis].</summary>
    /// <param name="from">First value [unit of the axis].</param>
    /// <param name="to">Last value [unit of the axis].</param>
    /// <param name="count">Count of values, at least 2 [1].</param>
    public static double[] Spaced(double from, double to, int count)
    {
        bool isLog = IsLogarithmic(from, to);
        return [.. Enumerable.Range(0, count).Select(i => i / (count - 1.0)).Select(s => isLog ? from * Math.Pow(to / from, s) : from + (s * (to - from)))];
    }

    /// <summary>Computes a map as fine as usual, from the first to the last value of each input.</summary>
    /// <param name="x">Ends of the first input [its own unit].</param>
    /// <param name="y">Ends of the second input [its own unit].</param>
    /// <param name="scenarioAt">The scenario at two values; null where there is none. Called from several threads.</param>
    /// <param name="rowDone">Called after each row, from several threads; may be null.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static StabilityMap Compute(
        (double From, double To) x, (double From, double To) y, Func<double, double, ScenarioSettings?> scenarioAt, Action? rowDone = null, CancellationToken cancel = default) =>
        Compute(x, y, scenarioAt, rowDone, WorkBudget.Endless(cancel));

    /// <summary>The same within a limit of work, the same for each row.</summary>
    /// <param name="x">Ends of the first input [its own unit].</param>
    /// <param name="y">Ends of the second input [its own unit].</param>
    /// <param name="scenarioAt">The scenario at two values; null where there is none. Called from several threads.</param>
    /// <param name="rowDone">Called after each row, from several threads; may be null.</param>
    /// <param name="work">The work for all rows.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static StabilityMap Compute((double From, double To) x, (double From, double To) y, Func<double, double, ScenarioSettings?> scenarioAt, Action? rowDone, WorkBudget work) =>
        Compute(Spaced(x.From, x.To, UsualPoints), Spaced(y.From, y.To, UsualRows), scenarioAt, EveryX, EveryY, rowDone, work);

    /// <summary>Computes a map. Rows run side by side; each is followed from point to point, so that the map is the same for any number of threads.</summary>
    /// <param name="x">Values of the first input [its own unit].</param>
    /// <param name="y">Values of the second input [its own unit].</param>
    /// <param name="scenarioAt">The scenario at two values; null where there is none. Called from several threads.</param>
    /// <param name="everyX">Every so many points along x one is simulated [1].</param>
    /// <param name="everyY">The same along y [1].</param>
    /// <param name="rowDone">Called after each row, from several threads; may be null.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static StabilityMap Compute(
        double[] x, double[] y, Func<double, double, ScenarioSettings?> scenarioAt, int everyX, int everyY, Action? rowDone = null, CancellationToken cancel = default) =>
        Compute(x, y, scenarioAt, everyX, everyY, rowDone, WorkBudget.Endless(cancel));

    private static StabilityMap Compute(double[] x, double[] y, Func<double, double, ScenarioSettings?> scenarioAt, int everyX, int everyY, Action? rowDone, WorkBudget work)
    {
        var points = new StabilityPoint?[x.Length, y.Length];
        int leftOut = 0;
        Parallel.For(0, y.Length, new ParallelOptions { CancellationToken = work.Cancel }, j =>
        {
            double[]? guess = null;
            WorkBudget row = work.Part(1.0 / y.Length);
            for (int i = 0; i < x.Length; i++)
            {
                work.Cancel.ThrowIfCancellationRequested();
                bool isSimulated = i % everyX == everyX / 2 && j % everyY == everyY / 2;
                if (scenarioAt(x[i], y[j]) is ScenarioSettings scenario && !WorkBudget.Try(() => points[i, j] = Point(scenario, ref guess, isSimulated, row)))
                {
                    Interlocked.Increment(ref leftOut);
                }
            }

            rowDone?.Invoke();
        });
        return new StabilityMap(x, y, points, leftOut);
    }

    private static StabilityPoint Point(ScenarioSettings scenario, ref double[]? guess, bool isSimulated, WorkBudget work)
    {
        SteadyTurn? turn = ChatterReview.Steady(scenario, guess, out NoModesCause cause, work);
        guess = turn?.State;

        // a run only where small swings die out: there a large one may keep itself going
        ChatterKind chatter = ChatterReview.Of(turn, cause, () => Simulator.Run(scenario, work).Chatter, work).Kind;
        if (turn is null)
        {
            return new StabilityPoint(double.NaN, TurnPart.Drift, 0.0, double.NaN, null, chatter);
        }

        bool? grows = isSimulated ? Disturbance.Follow(turn, 1, FollowedFor).Sign > 0 : null;
        TurnMode first = turn.Modes[0];
        return new StabilityPoint(first.Growth, first.Part, first.Frequency, turn.RingMargin ?? double.NaN, grows, chatter);
    }
}
