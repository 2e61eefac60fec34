using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>What a round trip through the engine makes of the frictions that pulls show.</summary>
public sealed record TripResult
{
    /// <summary>Static friction of the tyre's law with its 95 % interval [1]; null where breakaway was not seen.</summary>
    public Interval? Static { get; init; }

    /// <summary>Kinetic friction of the tyre's law with its 95 % interval [1]; null where it slides too slowly to tell it.</summary>
    public Interval? Kinetic { get; init; }

    /// <summary>Friction at the speed at which it slid in the test [1].</summary>
    public required Interval AtSpeed { get; init; }

    /// <summary>That speed [m/s]; NaN where it was not looked for.</summary>
    public double Speed { get; init; } = double.NaN;

    /// <summary>Whether it slides so slowly, against its slip speed, that kinetic friction cannot be told.</summary>
    public bool IsTooSlow { get; init; }

    /// <summary>Whether no tyre makes the engine show what the pulls show: then breakaway is a lower bound, and sliding friction stands at the speed of the test.</summary>
    public bool IsLost { get; init; }

    /// <summary>How far what the engine's log shows is from what the pulls show, as a share [1].</summary>
    public double Off { get; init; }

    /// <summary>The fit with the law's frictions in place of those that the pulls show.</summary>
    public TyreFit Into(TyreFit pulls) => pulls with
    {
        Trip = this,
        AtRest = Static ?? (IsLost || IsTooSlow ? AtLeast(pulls) : pulls.AtRest),
        IsBreakawayUnseen = pulls.IsBreakawayUnseen || IsLost || IsTooSlow,
        Sliding = Kinetic ?? pulls.Sliding,
        Above = Static is null ? pulls.Above : null,
        Warnings = [.. pulls.Warnings.Where(w => Static is null || w is not PullWarning.RampBends)],
    };

    // a tyre at rest holds no less than it holds sliding, whatever the peak of its pulls is made of
    private static Interval AtLeast(TyreFit pulls) => pulls.Sliding is { IsBounded: true } s ? new Interval(s.Value, s.Low, double.NaN) : pulls.AtRest.OpenAbove();
}
