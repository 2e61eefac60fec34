using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Wear;

/// <summary>Grip of tyres that nobody wipes, run after run: mean sliding friction of all wheels by their loads, floor included.</summary>
/// <param name="Clean">Before the first run [1].</param>
/// <param name="AfterOne">After one [1].</param>
/// <param name="AfterSix">After six [1].</param>
/// <param name="WipeEvery">The run after which grip has fallen by the loss; null if it has not within the runs [1].</param>
/// <param name="GripLoss">That loss, as a share of the clean grip [1].</param>
/// <param name="Runs">Runs that were looked at [1].</param>
/// <param name="Dust">Dust of the floor, 1 fouls a tyre over its own distance [1].</param>
public sealed record GripLife(double Clean, double AfterOne, double AfterSix, int? WipeEvery, double GripLoss, int Runs, double Dust)
{
    /// <summary>Runs after which grip is told again.</summary>
    public const int Six = 6;

    /// <summary>Grip over the runs; null where a tyre's fouling or the floor's dust is not known, or a run could not be made.</summary>
    /// <param name="scenario">One run.</param>
    /// <param name="first">The first of them, if it is there already; null: not.</param>
    /// <param name="cancel">Stops it.</param>
    public static GripLife? Of(ScenarioSettings scenario, RunResult? first, CancellationToken cancel) => Of(scenario, first, WorkBudget.Endless(cancel));

    /// <summary>The same as a part of more work.</summary>
    /// <param name="scenario">One run.</param>
    /// <param name="first">The first of them, if it is there already; null: not.</param>
    /// <param name="work">What is left for it.</param>
    /// <param name="known">Dust before and after runs of this scenario that are known.</param>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    internal static GripLife? Of(ScenarioSettings scenario, RunResult? first, WorkBudget work, ICollection<(double[] Before, double[]? After)>? known = null)
    {
        if (!scenario.Robot.Wheels.All(w => GripSeries.TakesDust(w.Tyre, scenario.Floor)))
        {
            return null;
        }

        TyreLifeSettings life = scenario.TyreLife ?? new TyreLifeSettings();
        int most = Math.Max(Six, life.Runs);
        GripSeries? series = GripSeries.Of(scenario with { TyreLife = life with { CleanEvery = 0, Runs = most } }, first, work, known);
        return series?.Runs.Count == most + 1
            ? new GripLife(series.Runs[0].Friction, series.Runs[1].Friction, series.Runs[Six].Friction, series.RunsUntilLoss, life.GripLoss, most, scenario.Floor.Dust)
            : null;
    }
}
