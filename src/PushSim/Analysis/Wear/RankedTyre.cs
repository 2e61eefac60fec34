using PushSim.Analysis.Turning;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Wear;

/// <summary>One material on the robot's wheels in the scenario.</summary>
/// <param name="Name">The material.</param>
/// <param name="Stop">Why it could not be run; null if it was.</param>
public sealed record RankedTyre(string Name, RunStop? Stop)
{
    /// <summary>Its wear; null if it could not be run or has no wear number.</summary>
    public WearResult? Wear { get; init; }

    /// <summary>Its grip over the runs; null where no dust settles on it or nobody asked.</summary>
    public GripSeries? Grip { get; init; }

    /// <summary>Its grip over the runs without wiping; null where it is not known.</summary>
    public GripLife? Life { get; init; }

    /// <summary>Whether it chatters.</summary>
    public ChatterVerdict Chatter { get; init; } = ChatterVerdict.Unknown(ChatterDoubt.Stopped);

    /// <summary>Whether its chatter or its grip over the runs would have taken more work than it has.</summary>
    public bool IsCut { get; init; }

    /// <summary>Its run's answers; null if it could not be run.</summary>
    public RunAnswers? Answers { get; init; }

    /// <summary>Mean sliding friction of the clean tyres at their loads, floor included; null if it could not be run [1].</summary>
    public double? CleanFriction { get; init; }

    /// <summary>Tread off the most worn wheel in a match; null if the width is not known [m].</summary>
    public double? DepthPerMatch => Wear?.Wheels.Max(w => w.Depth(w.PerMatch));

    /// <summary>Worn in a match by all wheels; null without a wear number [m^3].</summary>
    public double? VolumePerMatch => Wear?.Wheels.Sum(w => w.PerMatch);

    /// <summary>Worn in a match by all wheels; null if the density is not known [kg].</summary>
    public double? MassPerMatch => Wear?.Wheels.Sum(w => w.Mass(w.PerMatch));

    /// <summary>Runs each material and sorts them, least worn tread first; what could not be run comes last.</summary>
    /// <param name="materials">Name, and the scenario with its tyres or the reason why there is none.</param>
    /// <param name="withGrip">Whether to follow the dust over many runs too.</param>
    /// <param name="cancel">Stops it.</param>
    public static IReadOnlyList<RankedTyre> Rank(IEnumerable<(string Name, ScenarioSettings? Scenario, string Reason)> materials, bool withGrip, CancellationToken cancel) =>
        Rank(materials, withGrip, WorkBudget.Endless(cancel), long.MaxValue);

    /// <summary>The same with a limit of work for what each material is asked besides its run. All processors work at it.</summary>
    /// <param name="materials">Name, and the scenario with its tyres or the reason why there is none.</param>
    /// <param name="withGrip">Whether to follow the dust over many runs too.</param>
    /// <param name="work">What the evaluations are booked to.</param>
    /// <param name="most">Evaluations for the grip and for the chatter of each [1].</param>
    /// <param name="oneDone">Called after each material, from several threads; may be null.</param>
    public static IReadOnlyList<RankedTyre> Rank(
        IEnumerable<(string Name, ScenarioSettings? Scenario, string Reason)> materials, bool withGrip, WorkBudget work, long most, Action? oneDone = null)
    {
        RankedTyre[] ranked = SideBySide.Do([.. materials], (m, _) =>
        {
            RankedTyre one = m.Scenario is null ? new RankedTyre(m.Name, RunStop.Refused(m.Reason)) : Run(m.Name, m.Scenario, withGrip, work, most);
            oneDone?.Invoke();
            return one;
        }, work.Free());
        return [.. ranked.OrderBy(r => r.DepthPerMatch ?? double.PositiveInfinity).ThenBy(r => r.VolumePerMatch ?? double.PositiveInfinity)];
    }

    private static RankedTyre Run(string name, ScenarioSettings scenario, bool withGrip, WorkBudget work, long most)
    {
        RunResult result = Simulator.Run(scenario, work.Free());
        if (result.Status == RunStatus.Failed)
        {
            return new RankedTyre(name, result.Stop);
        }

        List<(double[] Before, double[]? After)> dust = [];
        GripSeries? grip = null;
        GripLife? life = null;
        WorkBudget runs = work.Limited(most);
        bool isWhole = WorkBudget.Try(() =>
        {
            grip = withGrip ? GripSeries.Of(scenario, result, runs, dust) : null;
            life = GripLife.Of(scenario, result, runs, dust);
        });
        ChatterVerdict chatter = ChatterReview.Of(result, work.Limited(most));
        return new RankedTyre(name, Stop: null)
        {
            Wear = WearResult.Of(result),
            Grip = grip,
            Life = life,
            Chatter = chatter,
            IsCut = !isWhole || chatter.IsCureLeftOut || chatter.NoModes == NoModesCause.LeftOut,
            Answers = result.Answers,
            CleanFriction = GripSeries.CleanFriction(scenario),
        };
    }
}
