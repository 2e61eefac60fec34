using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Tyres;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>A tyre fitted by running the test in the engine.</summary>
public sealed record SimulationFit
{
    /// <summary>The parameters, in the order of <see cref="TestParameter.All"/>.</summary>
    public required IReadOnlyList<FittedParameter> Parameters { get; init; }

    /// <summary>The tyre with what the test tells; the rest as the robot file has it.</summary>
    public required TyreSettings Tyre { get; init; }

    /// <summary>The pulls, measured and simulated.</summary>
    public required IReadOnlyList<FollowedPull> Pulls { get; init; }

    /// <summary>Root mean square of measured less simulated force [N].</summary>
    public required double Misfit { get; init; }

    /// <summary>Whether that is no difference of forces but of runs that failed or ended too soon.</summary>
    public bool IsNowhere => Misfit > 0.01 * TestModel.Nowhere;

    /// <summary>Standard deviation of the cell's noise and steps, from where the force is steady [N].</summary>
    public required double Noise { get; init; }

    /// <summary>Share of the sliding that the simulated test follows, and that was used [1].</summary>
    public required double Followed { get; init; }

    /// <summary>Why nothing of it is to be believed.</summary>
    public required FitDoubt Doubt { get; init; }

    /// <summary>Searches from different starts [1].</summary>
    public required int Starts { get; init; }

    /// <summary>Searches that came to the same misfit [1].</summary>
    public required int Agreeing { get; init; }

    /// <summary>Runs of the engine [1].</summary>
    public required int Runs { get; init; }

    /// <summary>
    /// The fit of the pulls with the frictions that the simulated test tells in place of its own, so that each has one value: the simulated test knows of the cell's filter
    /// and the robot's mass, which pull the peak of a trace down and up. Where the two intervals do not meet, that is warned of.
    /// </summary>
    /// <param name="pulls">What the pulls show.</param>
    public TyreFit Into(TyreFit pulls)
    {
        Interval? atRest = Told(TestParameter.Frictions[0]);
        Interval? sliding = Told(TestParameter.Frictions[1]);
        (bool IsStatic, Interval? OfPulls, Interval? Simulated)[] both = [(true, pulls.IsBreakawayUnseen ? null : pulls.AtRest, atRest), (false, pulls.Sliding, sliding)];
        return pulls with
        {
            AtRest = atRest ?? pulls.AtRest,
            IsBreakawayUnseen = atRest is null && pulls.IsBreakawayUnseen,
            Sliding = sliding ?? pulls.Sliding,
            IsStaticSimulated = atRest is not null,
            IsKineticSimulated = sliding is not null,
            Above = atRest is null ? pulls.Above : null,
            Warnings =
            [
                .. pulls.Warnings.Where(w => atRest is null || w is not (PullWarning.LowerBound or PullWarning.RampBends)),
                .. both.Where(b => b is { OfPulls: { IsBounded: true } p, Simulated: { } s } && (p.High < s.Low || s.High < p.Low)).Select(b => new PullWarning.Disagreement(b.IsStatic, b.OfPulls!.Value, b.Simulated!.Value)),
            ],
        };

        Interval? Told(int k) => Parameters[k].IsTold ? Parameters[k].Value : null;
    }

    /// <summary>Whether the simulated test does not follow the log to within the cell's noise.</summary>
    public bool IsPoorlyFollowed => Misfit > SimulationFitter.PoorlyFollowed * Noise;

    /// <summary>Whether there are too few pulls to tell their scatter.</summary>
    public bool HasFewPulls => Pulls.Count < SimulationFitter.FewestPulls;
}
