using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>A tyre's friction out of its pulls.</summary>
public sealed record TyreFit
{
    /// <summary>Name of the tyre.</summary>
    public required string Name { get; init; }

    /// <summary>Static friction with its 95 % interval [1]; without upper end if <see cref="IsStaticLowerBound"/>.</summary>
    public Interval StaticFriction => IsStaticLowerBound ? AtRest.OpenAbove() : AtRest;

    /// <summary>Static friction that the pulls show, if the tyre set them [1].</summary>
    public required Interval AtRest { get; init; }

    /// <summary>Whether no pull shows the breakaway.</summary>
    public required bool IsBreakawayUnseen { get; init; }

    /// <summary>Whether static friction is at least that, not that.</summary>
    public bool IsStaticLowerBound => IsBreakawayUnseen || Cause.IsLowerBound;

    /// <summary>Kinetic friction with its 95 % interval [1]; null where no plateau was long enough; without ends for a single display reading, without upper end where it is only a lower bound.</summary>
    public Interval? KineticFriction => Cause.IsLowerBound ? Sliding?.OpenAbove() : Sliding;

    /// <summary>Kinetic friction that the pulls show, if the tyre set them [1]; null where no plateau was long enough.</summary>
    public required Interval? Sliding { get; init; }

    /// <summary>Whether static friction comes of the simulated test, not of the peaks of the pulls.</summary>
    public bool IsStaticSimulated { get; init; }

    /// <summary>Whether kinetic friction comes of the simulated test, not of the plateaus of the pulls.</summary>
    public bool IsKineticSimulated { get; init; }

    /// <summary>How the engine's own test brought the frictions to the tyre's law; null where they stand as the pulls show them, sliding friction at the test's sliding speed.</summary>
    public TripResult? Trip { get; init; }

    /// <summary>What set the pulls.</summary>
    public required PullCause Cause { get; init; }

    /// <summary>Plateau force of each pull, or each reading [N].</summary>
    public required double[] Forces { get; init; }

    /// <summary>Friction of each pull, in the order of <see cref="Forces"/> [1].</summary>
    public IReadOnlyList<double> Frictions { get; init; } = [];

    /// <summary>Place of each pull in the order of all pulls of all tyres [1]; empty if that is not known.</summary>
    public IReadOnlyList<double> Order { get; init; } = [];

    /// <summary>Load on the tyres under test at the mean force [N].</summary>
    public required double Load { get; init; }

    /// <summary>Half-width of the error that all pulls have in common, as a share of the friction [1].</summary>
    public double CommonOff { get; init; }

    /// <summary>Exponent p of friction against load with its 95 % interval [1]; null where all pulls had about one load.</summary>
    public Interval? LoadExponent { get; init; }

    /// <summary>Pulls or readings [1].</summary>
    public required int Pulls { get; init; }

    /// <summary>What to know before believing it.</summary>
    public IReadOnlyList<PullWarning> Warnings { get; init; } = [];

    /// <summary>Where a breakaway is above what a reader of the log finds in it; null for nowhere.</summary>
    public BreakawayAbove? Above { get; init; }

    /// <summary>The logs it came from; empty for display readings.</summary>
    public IReadOnlyList<FoundTrace> Traces { get; init; } = [];

    /// <summary>Friction for a simulation [1]: kinetic as measured, static at least as much.</summary>
    public (double Static, double Kinetic) ForModel
    {
        get
        {
            double kinetic = Sliding?.Value ?? AtRest.Value;
            return (Math.Max(AtRest.Value, kinetic), kinetic);
        }
    }
}
