using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>One pull of a log: its parts by sample index, and its forces with the tare taken off.</summary>
public sealed record FoundPull
{
    /// <summary>First sample off the slack level.</summary>
    public required int Start { get; init; }

    /// <summary>Sample of the breakaway peak, or of the arrival at the plateau without one.</summary>
    public required int Peak { get; init; }

    /// <summary>First sample of the sliding plateau; equal to <see cref="PlateauTo"/> if it is too short.</summary>
    public required int PlateauFrom { get; init; }

    /// <summary>Sample behind the plateau's last.</summary>
    public required int PlateauTo { get; init; }

    /// <summary>Sample where the force lets go.</summary>
    public required int End { get; init; }

    /// <summary>Samples of the ramp up to the peak [1].</summary>
    public required int RampSamples { get; init; }

    /// <summary>Time and force of the straight ramp fitted, from and to (s, N); empty when none was.</summary>
    public IReadOnlyList<(double Time, double Force)> Ramp { get; init; } = [];

    /// <summary>Whether the ramp bent before the tyre let go, so that the breakaway force is the greatest reading.</summary>
    public bool RampBends { get; init; }

    /// <summary>Plateau force with its 95 % interval [N]; null when the plateau is too short.</summary>
    public Interval? Plateau { get; init; }

    /// <summary>Breakaway force [N]; a lower bound, without ends, unless <see cref="Quality"/> is Seen.</summary>
    public required Interval Breakaway { get; init; }

    /// <summary>Highest reading of the pull, with the tare taken off [N]; NaN where it was not looked for.</summary>
    public double HighestReading { get; init; } = double.NaN;

    /// <summary>How well the breakaway is seen.</summary>
    public required BreakawayQuality Quality { get; init; }

    /// <summary>Tare taken off at the plateau [N].</summary>
    public required double Tare { get; init; }

    /// <summary>Whether slack before and after let a drift be taken out.</summary>
    public required bool SeesDrift { get; init; }

    /// <summary>Independent readings that the plateau counts for [1].</summary>
    public double EffectiveReadings { get; init; }
}
