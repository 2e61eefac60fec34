using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Wear;

/// <summary>What a manoeuvre costs in tread, wheel by wheel.
/// <code>V' = k_w a N |v_p|      depth = V/(2 pi R w f)      mass = rho V</code>
/// k_w = ISO 4649 volume loss over 10 N times 40 m, a the floor's abrasiveness against the standard sheet, v_p the bristle end's slide, zero
/// while it sticks (Archard, J. Appl. Phys. 24, 1953, from memory). They rank and do not forecast; what is shown of them says so.</summary>
public sealed record WearResult
{
    // A shorter straight drive is none [m].
    private const double LeastWay = 0.05;

    // A slower yaw is no turn [rad/s].
    private const double LeastYawRate = 0.05;

    /// <summary>Every wheel with a wear number, in the order of the wheels.</summary>
    public required IReadOnlyList<WheelWear> Wheels { get; init; }

    /// <summary>Time of this manoeuvre in a match [s].</summary>
    public required double MatchTime { get; init; }

    /// <summary>Time of one turn of the robot once settled; null unless it turns [s].</summary>
    public required double? TurnTime { get; init; }

    /// <summary>Names of the wheels whose tyres have no wear number, which are left out of everything here.</summary>
    public IReadOnlyList<string> UnknownWheels { get; init; } = [];

    /// <summary>Most worn wheel over the mean of all that have a wear number, at the settled rate [1]; 1 is even. Null if nothing wears.</summary>
    public double? Unevenness
    {
        get
        {
            double mean = Wheels.Average(w => w.VolumeRate);
            return mean > 0.0 ? Wheels.Max(w => w.VolumeRate) / mean : null;
        }
    }

    /// <summary>Worn per turn by all wheels together; null unless it turns [m^3].</summary>
    public double? PerTurn => TurnTime * Wheels.Sum(w => w.VolumeRate);

    /// <summary>The wear of a run; null if none of its wheels has a wear number or nothing was recorded.</summary>
    /// <param name="run">The run.</param>
    /// <param name="straight">A straight drive of the same robot, see <see cref="StraightDrive"/>; null: none.</param>
    public static WearResult? Of(RunResult run, RunResult? straight = null)
    {
        if (run.Time.Length < 2 || run.Trace.Wheels.All(w => w.Wear is null))
        {
            return null;
        }

        var history = new RunHistory(run.Scenario, run.Trace, run.Bindings);
        double start = AnswerFinder.FirstCommand(history);
        double end = run.Time[^1];
        double since = IsTurn(run) ? end - (AnswerFinder.SettledShare * (end - start)) : start;
        int from = Math.Min(history.IndexAt(since), run.Time.Length - 2);
        double? turn = TimeOfTurn(run, from);
        double match = (run.Scenario.TyreLife ?? new TyreLifeSettings()).MatchTime;
        return new WearResult
        {
            MatchTime = match,
            TurnTime = turn,
            UnknownWheels = [.. run.Trace.Wheels.Where(w => w.Wear is null).Select(w => w.Name)],
            Wheels = [.. run.Scenario.Robot.Wheels.Select((w, i) => Of(run, straight, w, i, from, match, turn)).OfType<WheelWear>()],
        };
    }

    private static WheelWear? Of(RunResult run, RunResult? straight, WheelSettings wheel, int index, int from, double match, double? turn)
    {
        if (run.Trace.Wheels[index] is not { Wear: Series volume, FrictionWork: Series work })
        {
            return null;
        }

        TyreSettings tyre = wheel.Tyre;
        double rate = (volume[^1] - volume[from]) / (run.Time[^1] - run.Time[from]);
        double perJoule = tyre.SpecificWear * run.Scenario.Floor.Abrasiveness / LeastFriction(run, tyre);
        return new WheelWear(wheel.Name, tyre.Name, volume[^1], work[^1], rate)
        {
            DepthPerVolume = 1.0 / (2.0 * Math.PI * wheel.Radius * tyre.TreadArea * tyre.CoverWidth),
            Density = tyre.CoverDensity,
            PerTurn = turn * rate,
            PerMatch = match * rate,
            PerStraightMetre = PerMetre(straight, t => t.Wheels[index].Wear),
            MostPerStraightMetre = PerMetre(straight, t => t.Wheels[index].FrictionWork) * perJoule,
        };
    }

    // Over all of the straight drive, its start from rest included: once a robot only keeps its speed next to nothing wears.
    private static double? PerMetre(RunResult? straight, Func<Trace, Series?> what)
    {
        if (straight is null || straight.Time.Length < 2 || what(straight.Trace) is not Series values)
        {
            return null;
        }

        double way = straight.Trace.Body.X[^1];
        return way > LeastWay ? values[^1] / way : null;
    }

    // The friction that makes most wear out of a joule: that of fast sliding, dusty if dust can settle.
    private static double LeastFriction(RunResult run, TyreSettings tyre)
    {
        double least = tyre.FrictionTable?.Min(p => p.Friction) ?? tyre.KineticFriction;
        bool hasDust = tyre.FoulingDistance > 0.0 && run.Scenario.Floor.Dust > 0.0;
        return run.Scenario.Floor.FrictionScale * least * (hasDust ? Math.Min(1.0, tyre.DustyFriction) : 1.0);
    }

    private static double? TimeOfTurn(RunResult run, int from)
    {
        Series heading = run.Trace.Body.Heading;
        double rate = Math.Abs(heading[^1] - heading[from]) / (run.Time[^1] - run.Time[from]);
        return IsTurn(run) && rate > LeastYawRate ? 2.0 * Math.PI / rate : null;
    }

    private static bool IsTurn(RunResult run) => run.Scenario.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn;
}
