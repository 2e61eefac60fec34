using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>The whole answer of the limits command.</summary>
public sealed record LimitResult
{
    /// <summary>The scenario that was asked about, in canonical order.</summary>
    public required ScenarioSettings Scenario { get; init; }

    /// <summary>Where it is held back.</summary>
    public required LimitHook Hook { get; init; }

    /// <summary>What to know before believing them.</summary>
    public required IReadOnlyList<LimitWarning> Warnings { get; init; }

    /// <summary>As in the file: heat and charge at the start, the scenario's throttle.</summary>
    public required LimitState Now { get; init; }

    /// <summary>Cold and warm, full and at 80 % side by side.</summary>
    public required IReadOnlyList<LimitState> States { get; init; }

    /// <summary>Each wheel.</summary>
    public required IReadOnlyList<WheelLimit> Wheels { get; init; }

    /// <summary>Total over speed, then each axle with motors from the front.</summary>
    public required ForceCurve Total { get; init; }

    /// <summary>Each driven axle, from the front.</summary>
    public required IReadOnlyList<AxleCurve> Axles { get; init; }

    /// <summary>Values as they are, by output; null where it does not apply.</summary>
    public required IReadOnlyDictionary<LimitOutput, double> Outputs { get; init; }

    /// <summary>Gains, the largest first.</summary>
    public required IReadOnlyList<Gain> Gains { get; init; }

    /// <summary>Outputs whose gains are worth a table or a picture: the margin over a twin, which is none by itself, is left to scripts.</summary>
    public IEnumerable<LimitOutput> ShownOutputs => Gains.Select(g => g.Output).Distinct().Where(o => o != LimitOutput.ShoveMargin || Scenario.Opponent is not null);

    /// <summary>The ratio curve; null without motors.</summary>
    public required RatioCurve? Ratio { get; init; }

    /// <summary>The throttle of the hardest push; null where there is none.</summary>
    public required Runs.BestThrottle? BestThrottle { get; init; }

    /// <summary>Wirings; empty where no side has two motors on separate drives.</summary>
    public required IReadOnlyList<WiringCase> Wirings { get; init; }

    /// <summary>Heat and charge over a match.</summary>
    public required DutyHeat Match { get; init; }

    /// <summary>Own push at standstill; the opponent's [N].</summary>
    public required double? OwnPush { get; init; }

    /// <summary>The opponent's push at standstill (a twin's without an opponent) [N].</summary>
    public required double? OpponentPush { get; init; }
}
