using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Analysis.Wear;

/// <summary>Grip over many runs of one manoeuvre on a dusty floor: each run is simulated with the dust that the last one left, D' = dust (|v_p|/L_d)(1 - D),
/// mu = mu_clean (1 + (ratio - 1) D); a cleaning takes a share of D off. Limits: dust on the board does not get less, none falls off by
/// itself, and the wheels pick it up by sliding only, not by rolling.</summary>
public sealed record GripSeries
{
    /// <summary>Before the first run, after each, and after each cleaning.</summary>
    public required IReadOnlyList<GripAfterRun> Runs { get; init; }

    /// <summary>Loss of grip that was looked for [1].</summary>
    public required double GripLoss { get; init; }

    /// <summary>The first run after which grip has fallen by that share; null if it did not within these runs.</summary>
    public int? RunsUntilLoss => Runs.FirstOrDefault(r => r.Run > 0 && !r.IsCleaned && r.Grip <= 1.0 - GripLoss)?.Run;

    /// <summary>The series; null if no wheel of the robot takes dust there.</summary>
    /// <param name="scenario">The run that is repeated; without <see cref="ScenarioSettings.TyreLife"/> its usual values hold.</param>
    /// <param name="first">The first run, if it is there already.</param>
    /// <param name="cancel">Stops it.</param>
    public static GripSeries? Of(ScenarioSettings scenario, RunResult? first, CancellationToken cancel) => Of(scenario, first, WorkBudget.Endless(cancel));

    /// <summary>The same within a limit of work.</summary>
    /// <param name="scenario">The run that is repeated.</param>
    /// <param name="first">The first run, if it is there already.</param>
    /// <param name="work">What is left for it.</param>
    /// <param name="isCut">Whether there is none because more was needed.</param>
    public static GripSeries? Of(ScenarioSettings scenario, RunResult? first, WorkBudget work, out bool isCut)
    {
        GripSeries? series = null;
        isCut = !WorkBudget.Try(() => series = Of(scenario, first, work));
        return series;
    }

    /// <summary>The same as a part of more work.</summary>
    /// <param name="scenario">The run that is repeated.</param>
    /// <param name="first">The first run, if it is there already.</param>
    /// <param name="work">What is left for it.</param>
    /// <param name="known">Dust before and after runs of this scenario that are known; takes those of this series, too.</param>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    internal static GripSeries? Of(ScenarioSettings scenario, RunResult? first, WorkBudget work, ICollection<(double[] Before, double[]? After)>? known = null)
    {
        known ??= [];
        TyreLifeSettings life = scenario.TyreLife ?? new TyreLifeSettings();
        if (!scenario.Robot.Wheels.Any(w => TakesDust(w.Tyre, scenario.Floor)))
        {
            return null;
        }

        // a few samples would do, but the load-weighted mean wants the settled loads
        ScenarioSettings run = Canonical(scenario);
        double[] loads = StaticState.Solve(run).Loads;
        double[] fouling = [.. run.Robot.Wheels.Select(w => w.InitialFouling)];
        List<GripAfterRun> runs = [State(run, loads, fouling, 0, isCleaned: false)];
        for (int n = 1; n <= life.Runs; n++)
        {
            double[] before = fouling;
            (double[]? was, double[]? after) = known.FirstOrDefault(k => k.Before.SequenceEqual(before));
            if (was is null)
            {
                RunResult result = n == 1 && first is not null ? first : Simulator.Run(With(run, before), work);
                after = result.Status == RunStatus.Failed ? null : [.. result.Trace.Wheels.Select((w, i) => w.Fouling?[^1] ?? before[i])];
                known.Add((before, after));
            }

            if (after is null)
            {
                break;
            }

            fouling = after;
            runs.Add(State(run, loads, fouling, n, isCleaned: false));
            if (life.CleanEvery > 0 && n % life.CleanEvery == 0 && n < life.Runs)
            {
                fouling = [.. fouling.Select(d => d * (1.0 - life.CleaningShare))];
                runs.Add(State(run, loads, fouling, n, isCleaned: true));
            }
        }

        return new GripSeries { Runs = runs, GripLoss = life.GripLoss };
    }

    /// <summary>Whether a tyre gets dusty on a floor.</summary>
    public static bool TakesDust(TyreSettings tyre, FloorSettings floor) => tyre.FoulingDistance > 0.0 && floor.Dust > 0.0;

    /// <summary>Friction of a clean tyre that slides fast, at a load: mu_k (N/(f N0))^-p, the ratio kept within 0.05 to 20 as in the model [1].</summary>
    /// <param name="tyre">The tyre.</param>
    /// <param name="load">Its load N [N].</param>
    public static double SlidingFriction(TyreSettings tyre, double load)
    {
        double ratio = Math.Clamp(load / (tyre.TreadArea * tyre.ReferenceLoad), 0.05, 20.0);
        return (tyre.FrictionTable?[^1].Friction ?? tyre.KineticFriction) * Math.Pow(ratio, -tyre.LoadExponent);
    }

    /// <summary>Mean of that over the wheels of a robot that stands on a scenario's floor, by their loads, floor included [1].</summary>
    public static double CleanFriction(ScenarioSettings scenario)
    {
        ScenarioSettings run = Canonical(scenario);
        double[] loads = StaticState.Solve(run).Loads;
        return State(run, loads, new double[loads.Length], 0, isCleaned: false).Friction;
    }

    private static ScenarioSettings Canonical(ScenarioSettings scenario) => SceneBuilder.InCanonicalOrder(scenario);

    private static ScenarioSettings With(ScenarioSettings scenario, double[] fouling) => scenario with
    {
        Robot = scenario.Robot with { Wheels = [.. scenario.Robot.Wheels.Select((w, i) => w with { InitialFouling = fouling[i] })] },
    };

    private static GripAfterRun State(ScenarioSettings run, double[] loads, double[] fouling, int number, bool isCleaned)
    {
        double[] grip = new double[loads.Length];
        double now = 0.0;
        double clean = 0.0;
        for (int i = 0; i < loads.Length; i++)
        {
            TyreSettings tyre = run.Robot.Wheels[i].Tyre;
            grip[i] = TakesDust(tyre, run.Floor) ? 1.0 + ((tyre.DustyFriction - 1.0) * fouling[i]) : 1.0;
            double full = loads[i] * run.Floor.FrictionScale * SlidingFriction(tyre, loads[i]);
            clean += full;
            now += full * grip[i];
        }

        return new GripAfterRun(number, [.. fouling], grip, now / clean, now / loads.Sum(), isCleaned);
    }
}
