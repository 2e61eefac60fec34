using PushSim.Binding;
using PushSim.Powertrain;
using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>What one wheel can give and hold as the robot pulls at standstill or, where it rears up before it pulls with all it has, at that moment; where no steady pull was found, as its tyres break away.</summary>
/// <param name="Name">The wheel.</param>
/// <param name="Axle">Number of its axle, from the front, from 0 [1].</param>
/// <param name="IsDriven">Whether motors turn it.</param>
/// <param name="Load">Load that it carries while the robot pulls [N].</param>
/// <param name="RestLoad">Load at rest [N].</param>
/// <param name="MotorForce">What its motors can give at the floor; a drive's force is shared over its wheels by load [N].</param>
/// <param name="PeakForce">What its tyre holds as it breaks away [N].</param>
/// <param name="SlidingForce">What it holds sliding fast [N].</param>
/// <param name="Force">What it gives in the steady pull [N]; below zero for a skid, which creeps forward and is dragged along; NaN where there is none or it was not found.</param>
/// <param name="SpinSpeed">Speed of its surface in the steady pull, 0 stalled [m/s]; NaN where there is none or it was not found.</param>
/// <param name="Binding">What binds it in the steady pull; null for a wheel without motors and where there is no steady pull.</param>
public sealed record WheelLimit(
    string Name, int Axle, bool IsDriven, double Load, double RestLoad, double MotorForce, double PeakForce, double SlidingForce, double Force, double SpinSpeed,
    BindingKind? Binding);

/// <summary>A steady pull at standstill.</summary>
/// <param name="Force">Tension of the tether [N].</param>
/// <param name="IsMixed">Whether some driven wheels stand while others spin: then gear friction can hold more than this, by how the pull came about.</param>
public sealed record SteadyPull(double Force, bool IsMixed);

/// <summary>Forces over the speed range.</summary>
/// <param name="Speed">Speeds, rising from 0 [m/s].</param>
/// <param name="Motor">What the motors can give [N].</param>
/// <param name="Peak">What the tyres hold at most at that speed [N].</param>
/// <param name="Sliding">What they hold sliding fast [N].</param>
/// <param name="Binding">What binds at each speed.</param>
public sealed record ForceCurve(double[] Speed, double[] Motor, double[] Peak, double[] Sliding, IReadOnlyList<BindingKind> Binding);

/// <summary>Limits in one state of heat and charge.</summary>
public sealed record LimitState
{
    /// <summary>Which.</summary>
    public required LimitStateKind Kind { get; init; }

    /// <summary>The state.</summary>
    public required LimitCondition Condition { get; init; }

    /// <summary>What all motors together can give at the floor at standstill [N].</summary>
    public required double MotorForce { get; init; }

    /// <summary>What all driven tyres together hold as they break away, under the loads of that pull or, where the robot rears up before, of that moment [N].</summary>
    public required double TractionPeak { get; init; }

    /// <summary>What they hold sliding fast, under the loads of that pull or, where the robot rears up before they break away, of that moment [N].</summary>
    public required double TractionSliding { get; init; }

    /// <summary>Whether there is a steady pull.</summary>
    public required PullStatus Status { get; init; }

    /// <summary>Steady pull at standstill [N]; null where the robot rears up before, or the search came to no end: <see cref="Status"/> says which.</summary>
    public required double? Pull { get; init; }

    /// <summary>Pull at which the robot rears up on its hook [N]; null where its tyres or motors give out before. Known wherever <see cref="Status"/> says that it rears up.</summary>
    public required double? RearsUpAt { get; init; }

    /// <summary>Every kind that binds at least one loaded driven wheel in the steady pull, by what a tenth more of it buys, the most first; empty without a steady pull and where the battery cannot feed it.</summary>
    public required IReadOnlyList<BoundBy> Bound { get; init; }

    /// <summary>What binds most; null without a steady pull.</summary>
    public BindingKind? Binding => Bound.Count > 0 ? Bound[0].Kind : null;

    /// <summary>Speed above which the motors, below which the tyres bind [m/s]; null where one binds throughout.</summary>
    public required double? CrossingSpeed { get; init; }

    /// <summary>Top speed [m/s].</summary>
    public required double TopSpeed { get; init; }

    /// <summary>Battery voltage with all motors stalled [V].</summary>
    public required double StallVoltage { get; init; }

    /// <summary>Battery current with all motors stalled [A].</summary>
    public required double StallCurrent { get; init; }

    /// <summary>True if the battery cannot deliver what the controllers ask for with all motors stalled, as it would fall below half of its voltage at rest: motor force and stall current are then too high.</summary>
    public required bool IsStarved { get; init; }
}

/// <summary>What 10 % more of a part buys.</summary>
/// <param name="Input">The part.</param>
/// <param name="Output">What it changes.</param>
/// <param name="Base">Value as it is [unit of the output].</param>
/// <param name="Changed">Value with 1.10 times the part [unit of the output].</param>
/// <param name="ChangePercent">The change as a share of the value (of a shove margin: of the own push) [%].</param>
/// <param name="Slope">Derivative by the part's factor, at 1, from dual numbers [unit of the output].</param>
/// <param name="SlopePercent">What the slope alone promises for 10 %, in the same measure [%].</param>
public sealed record Gain(LimitInput Input, LimitOutput Output, double Base, double Changed, double ChangePercent, double Slope, double SlopePercent);

/// <summary>One ratio of the ratio curve.</summary>
/// <param name="Factor">Multiple of the ratios in the file [1].</param>
/// <param name="Pull">Steady pull [N].</param>
/// <param name="DashTime">Time for the first metre [s]; NaN if it does not get there.</param>
/// <param name="TopSpeed">Top speed [m/s].</param>
public sealed record RatioPoint(double Factor, double Pull, double DashTime, double TopSpeed);

/// <summary>The trade between pull and dash over the gear ratio.</summary>
/// <param name="Points">Ratios, rising.</param>
/// <param name="BestForPull">Least factor tried that gives <see cref="NearlyMost"/> of the greatest pull [1].</param>
/// <param name="BestForDash">Factor of the shortest dash [1].</param>
/// <param name="MeanRatio">Mean gear ratio of the file [1].</param>
public sealed record RatioCurve(IReadOnlyList<RatioPoint> Points, double BestForPull, double BestForDash, double MeanRatio)
{
    /// <summary>
    /// Share of the greatest pull that counts as nearly all of it [1]. Tyres grip a few percent more where they spin more slowly, so that with a share nearer
    /// to 1 the deepest gear would be the answer of every robot whose tyres hold its pull.
    /// </summary>
    public const double NearlyMost = 0.95;

    /// <summary>Whether all ratios pull nearly alike.</summary>
    public bool IsFlat => Points.Min(p => p.Pull) > NearlyMost * Points.Max(p => p.Pull);

    /// <summary>At which end of what was tried a factor lies.</summary>
    public RatioEdge Edge(double factor) => factor == Points[0].Factor ? RatioEdge.Lowest : factor == Points[^1].Factor ? RatioEdge.Highest : RatioEdge.None;
}

/// <summary>One motor in a wiring study.</summary>
/// <param name="Drive">Its drive.</param>
/// <param name="Current">Its current [A].</param>
/// <param name="Power">Power at its terminals [W].</param>
/// <param name="PowerShare">Share of its controller side's power [1].</param>
/// <param name="Force">What its wheels push [N].</param>
/// <param name="SurfaceSpeed">Speed of its wheels' surface, 0 stalled [m/s].</param>
public sealed record WiredMotor(string Drive, double Current, double Power, double PowerShare, double Force, double SurfaceSpeed);

/// <summary>One wiring with one wheel that lost its grip.</summary>
/// <param name="Wiring">How the motors are wired.</param>
/// <param name="Case">How the wheel lost it.</param>
/// <param name="Wheel">The wheel that lost it.</param>
/// <param name="Pull">Steady pull of the robot [N].</param>
/// <param name="Motors">Motors on that wheel's side.</param>
public sealed record WiringCase(Wiring Wiring, WheelLoss Case, string Wheel, double Pull, IReadOnlyList<WiredMotor> Motors);

/// <summary>The whole answer of the limits command.</summary>
public sealed record LimitReport
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

    /// <summary>Wirings; empty where no side has two motors on separate drives.</summary>
    public required IReadOnlyList<WiringCase> Wirings { get; init; }

    /// <summary>Heat and charge over a match.</summary>
    public required MatchResult Match { get; init; }

    /// <summary>Own push at standstill; the opponent's [N].</summary>
    public required double? OwnPush { get; init; }

    /// <summary>The opponent's push at standstill (a twin's without an opponent) [N].</summary>
    public required double? OpponentPush { get; init; }
}
