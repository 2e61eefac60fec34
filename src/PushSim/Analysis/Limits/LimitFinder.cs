using PushSim.Binding;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Surroundings;

namespace PushSim.Analysis.Limits;

/// <summary>Motors or traction: forces, states, gains, best ratio, wiring, heat of one robot.</summary>
public static class LimitFinder
{
    /// <summary>What "warm" means [degree Celsius].</summary>
    public const double Warm = 60.0;

    // Share of the pull from which on the friction of skids is told.
    private const double TellingDrag = 0.05;

    private const double PartCharge = 0.8;
    private const int CurvePoints = 49;
    private const int RatioPoints = 21;
    private const double LeastRatio = 0.4;
    private const double GreatestRatio = 2.5;
    private const int Bisections = 40;

    // End of the scenario of a robot that only stands; it is never run [s].
    private const double IdleTime = 1.0;

    /// <summary>All limits of a scenario's first robot.</summary>
    /// <param name="scenario">Checked settings; without a tether the robot is held at the height of its centre of mass.</param>
    /// <param name="throttle">Throttle 0..1; null: the greatest that the scenario commands, full if none [1].</param>
    /// <param name="pattern">Duty pattern of the match; null: the usual one.</param>
    /// <exception cref="SimulationException">The robot does not stand on its wheels, or nothing drives it; a round of the pattern lasts less than <see cref="DutyPattern.ShortestRound"/>.</exception>
    public static LimitReport Find(ScenarioSettings scenario, double? throttle = null, DutyPattern? pattern = null)
    {
        scenario = SceneBuilder.InCanonicalOrder(scenario);
        if (scenario.Robot.Drives.All(d => d.Motors.Count == 0))
        {
            throw new SimulationException($"{scenario.Robot.Name} has no motors, so that there is nothing to compare with its tyres; add [[motor]] and [[drive]] to its file, or drag it: kind = \"drag\"");
        }

        if (scenario.Robot.Battery is null || scenario.Robot.Controllers.Count == 0)
        {
            throw new SimulationException($"{scenario.Robot.Name} has no controller or no battery for its motors; add [[controller]] or [battery] to its file");
        }

        pattern ??= new DutyPattern();
        if (!(pattern.Round >= DutyPattern.ShortestRound))
        {
            throw new SimulationException("a round of pushing, dashing, turning and resting lasts less than a second; make one of them longer");
        }

        LimitHook hook = Hook(scenario);
        var now = new LimitCondition { Throttle = throttle ?? Throttle(scenario) };
        Task<MatchResult> match = Task.Run(() => new MatchHeat(scenario, now, hook).Run(pattern));
        Task<RatioCurve?> ratio = Task.Run(() => Ratio(scenario, now, hook));
        LimitState state = State(LimitStateKind.AsInFile, scenario, now, hook);
        LimitState[] states =
        [
            State(LimitStateKind.ColdFull, scenario, now with { Charge = 1.0 }, hook),
            State(LimitStateKind.WarmFull, scenario, now with { Charge = 1.0, WindingTemperature = Warm }, hook),
            State(LimitStateKind.ColdPart, scenario, now with { Charge = PartCharge }, hook),
            State(LimitStateKind.WarmPart, scenario, now with { Charge = PartCharge, WindingTemperature = Warm }, hook),
        ];
        var model = new LimitModel<R1>(scenario, now, null, 1.0);
        var curves = new ForceCurves(model, hook);
        double[] speeds = [.. Enumerable.Range(0, CurvePoints).Select(k => Math.Max(0.1, state.TopSpeed) * k / (CurvePoints - 1.0))];
        var gains = new GainFinder(scenario, now, hook);
        double[] values = gains.Values(null, 1.0);
        List<WheelLimit> wheels = Wheels(scenario, now, hook);
        (IReadOnlyList<WiringCase> wirings, IReadOnlyList<(Wiring Wiring, WheelLoss Case)> unfound) = WiringStudy.Find(scenario, now, hook);
        IReadOnlyList<int[]> axles = Axles(scenario);
        MatchResult heat = match.GetAwaiter().GetResult();
        return new LimitReport
        {
            Scenario = scenario,
            Hook = hook,
            Warnings = [.. Warnings(scenario, state, wheels, (state.MotorForce + model.AlongGravity.Value) * Lengthening(hook)), .. Heat(heat), .. Unfound(state, unfound), .. PlausibilityFinder.Of(scenario, state).Doubts.Select(d => new LimitWarning.Doubtful(d))],
            Now = state,
            States = states,
            Wheels = wheels,
            Total = curves.Curve(speeds, _ => true),
            Axles = [.. axles.Index().Where(a => a.Item.Any(i => model.IsDrivenWheel[i])).Select(a => new AxleCurve(a.Index, axles.Count, curves.Curve(speeds, i => a.Item.Contains(i))))],
            Outputs = Enum.GetValues<LimitOutput>().Where(o => double.IsFinite(values[(int)o])).ToDictionary(o => o, o => values[(int)o]),
            Gains = gains.All(values),
            Ratio = ratio.GetAwaiter().GetResult(),
            BestThrottle = BestThrottleFinder.Of(scenario),
            Wirings = wirings,
            Match = heat,
            OwnPush = gains.OwnPush,
            OpponentPush = gains.OpponentPush,
        };
    }

    /// <summary>Steady pull at standstill in a state.</summary>
    public static SteadyPull? Pull(ScenarioSettings scenario, LimitCondition condition)
    {
        scenario = SceneBuilder.InCanonicalOrder(scenario);
        var model = new LimitModel<R1>(scenario, condition, null, 1.0);
        LimitHook hook = Hook(scenario);
        return StandingPull.Solve(model, hook).Steady is { } pull ? new SteadyPull(pull.Pull(model, hook).Value, pull.IsMixed) : null;
    }

    /// <summary>A robot that only stands on a level floor, for who asks about the robot alone.</summary>
    /// <param name="robot">The robot.</param>
    /// <param name="name">Name of the scenario.</param>
    public static ScenarioSettings Standing(RobotSettings robot, string name) => new()
    {
        Name = name, Robot = robot, Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.Hold, Commands = [], EndTime = IdleTime },
    };

    /// <summary>The opponent alone on the same floor as it sees it; null without one.</summary>
    internal static ScenarioSettings? OpponentScene(ScenarioSettings scenario) => scenario.Opponent is not OpponentSettings other ? null : scenario with
    {
        Robot = other.Robot, Manoeuvre = other.Manoeuvre, Opponent = null, Tether = null, Floor = scenario.Floor with { SlopeX = -scenario.Floor.SlopeX, SlopeY = -scenario.Floor.SlopeY },
    };

    /// <summary>Greatest throttle that the scenario commands [1]; full where none.</summary>
    internal static double Throttle(ScenarioSettings scenario)
    {
        double most = scenario.Manoeuvre.GreatestThrottle;
        return most > 0.0 ? most : 1.0;
    }

    /// <summary>Where the scenario holds the robot back.</summary>
    internal static LimitHook Hook(ScenarioSettings scenario)
    {
        if (scenario.Tether is not TetherSettings t || scenario.Manoeuvre.Traits.IsDragged)
        {
            return new LimitHook(scenario.Robot.Chassis.CentreOfMassX, scenario.Robot.Chassis.CentreOfMassHeight, 0.0);
        }

        (double sine, double cosine) = Math.SinCos(scenario.Manoeuvre.InitialHeading);
        double hookX = t.HookX - scenario.Robot.Chassis.CentreOfMassX;
        double hookY = t.HookY - scenario.Robot.Chassis.CentreOfMassY;
        double away = double.Hypot(t.AnchorX - ((cosine * hookX) - (sine * hookY)), t.AnchorY - ((sine * hookX) + (cosine * hookY)));
        return new LimitHook(t.HookX, t.HookHeight, away > 0.0 ? (t.AnchorHeight - t.HookHeight) / (away + t.Slack) : 0.0);
    }

    internal static LimitState State(LimitStateKind kind, ScenarioSettings scenario, LimitCondition condition, LimitHook hook)
    {
        var model = new LimitModel<R1>(scenario, condition, null, 1.0);
        var curves = new ForceCurves(model, hook);
        HeldForces? peak = curves.Tyres(0.0, isSliding: false);
        double[] load = peak?.Load ?? StaticState.Solve(scenario).Loads;

        // one set of loads: a robot that rears up first never slides under its sliding loads
        double sliding = peak is { TipsAt: not null } ? curves.Tyres(0.0, isSliding: true, load).Sum() : curves.Tyres(0.0, isSliding: true)?.Force.Sum() ?? double.NaN;
        double motor = curves.Motors(0.0, load).Sum();
        double voltage = model.BusVoltage.Value;
        double current = model.BatteryCurrent.Value;
        bool isStarved = Math.Abs(model.BusResidual.Value) > MatchWatch.BusFailure;

        double hold = peak?.Force.Sum() ?? double.NaN;
        PullSearch search = StandingPull.Solve(model, hook);
        double? tips = peak?.TipsAt ?? (search.Status == PullStatus.RearsUp ? curves.Tipping(search.TipsAt)?.TipsAt : null);
        double top = new LaunchEstimate<R1>(new LimitModel<R1>(scenario, condition, null, 1.0)).TopSpeed.Value;
        return new LimitState
        {
            Kind = kind,
            Condition = condition,
            MotorForce = motor,
            TractionPeak = hold,
            TractionSliding = sliding,
            Status = search.Status,
            Pull = search.Steady?.Pull(model, hook).Value,
            RearsUpAt = (tips + model.AlongGravity.Value) * Lengthening(hook),
            Bound = search.Steady is { } steady ? SteadyBinding.Find(model, condition, hook, steady) : [],
            CrossingSpeed = motor > hold ? Crossing(curves, top) : null,
            TopSpeed = top,
            StallVoltage = voltage,
            StallCurrent = current,
            IsStarved = isStarved,
        };
    }

    // Tension of the tether over its horizontal part
    private static double Lengthening(LimitHook hook) => Math.Sqrt(1.0 + (hook.Rise * hook.Rise));

    private static double? Crossing(ForceCurves curves, double top)
    {
        double low = 0.0;
        double high = 1.05 * top;
        if (!(curves.Surplus(high) < 0.0))
        {
            return null;
        }

        for (int n = 0; n < Bisections; n++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = curves.Surplus(middle) > 0.0 ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    private static List<WheelLimit> Wheels(ScenarioSettings scenario, LimitCondition condition, LimitHook hook)
    {
        var model = new LimitModel<R1>(scenario, condition, null, 1.0);
        var curves = new ForceCurves(model, hook);
        double[] rest = StaticState.Solve(scenario).Loads;
        R1[] load = new R1[rest.Length];
        PullSearch search = StandingPull.Solve(model, hook);
        StandingPull? pull = search.Steady;
        double[] force = pull?.WheelForces(model, hook, load) ?? [.. rest.Select(_ => double.NaN)];
        BindingKind?[]? kinds = pull is null ? null : SteadyBinding.Wheels(model, hook, pull);
        double[] carried = pull is not null ? [.. load.Select(n => n.Value)] : curves.Tyres(0.0, isSliding: false)?.Load ?? rest;
        double[] motor = curves.Motors(0.0, carried);
        IReadOnlyList<int[]> axles = Axles(scenario);
        List<WheelLimit> list = [];
        for (int i = 0; i < rest.Length; i++)
        {
            int d = model.Kinds[i].Shape.Drive;
            double spin = pull is null ? double.NaN : d >= 0 ? pull.Omega[d] * model.Wheels[i].DriveRatio.Value * model.Wheels[i].Radius.Value : 0.0;
            double peak = SteadyTyre.Peak(model.Wheels[i], model.Kinds[i], model.FloorOf[i], carried[i]).Value;
            list.Add(new WheelLimit(
                scenario.Robot.Wheels[i].Name, axles.Index().First(a => a.Item.Contains(i)).Index, model.IsDrivenWheel[i], carried[i], rest[i],
                motor[i], peak, LaunchEstimate<R1>.SlidingForce(model.Wheels[i], model.Kinds[i], model.FloorOf[i], carried[i]).Value, force[i], spin,
                kinds?[i]));
        }

        return list;
    }

    // Wheels whose centres stand within a tenth of the wheelbase are one axle.
    private static IReadOnlyList<int[]> Axles(ScenarioSettings scenario)
    {
        double[] x = [.. scenario.Robot.Wheels.Select(w => w.X)];
        double near = 0.1 * (x.Max() - x.Min());
        List<List<int>> axles = [];
        for (int i = 0; i < x.Length; i++)
        {
            if (axles.Count > 0 && Math.Abs(x[axles[^1][0]] - x[i]) <= near)
            {
                axles[^1].Add(i);
            }
            else
            {
                axles.Add([i]);
            }
        }

        return [.. axles.Select(a => a.ToArray())];
    }

    private static RatioCurve? Ratio(ScenarioSettings scenario, LimitCondition condition, LimitHook hook)
    {
        List<RatioPoint> points = [];
        for (int n = 0; n < RatioPoints; n++)
        {
            double factor = LeastRatio * Math.Pow(GreatestRatio / LeastRatio, n / (RatioPoints - 1.0));
            points.Add(RatioAt(scenario, condition, hook, factor));
        }

        RatioPoint[] dashes = [.. points.Where(p => double.IsFinite(p.DashTime))];
        RatioPoint[] pulls = [.. points.Where(p => double.IsFinite(p.Pull))];
        double[] ratios = [.. scenario.Robot.Drives.SelectMany(d => d.Motors).Select(m => m.Ratio)];
        if (dashes.Length == 0 || pulls.Length == 0)
        {
            return null;
        }

        double most = pulls.Max(p => p.Pull);
        return new RatioCurve(points, pulls.First(p => p.Pull >= RatioCurve.NearlyMost * most).Factor, Lowest(points, dashes), ratios.Average());
    }

    private static RatioPoint RatioAt(ScenarioSettings scenario, LimitCondition condition, LimitHook hook, double factor)
    {
        var model = new LimitModel<R1>(scenario, condition, LimitInput.Ratio, factor);
        double pull = StandingPull.Solve(model, hook).Steady?.Pull(model, hook).Value ?? double.NaN;
        var launch = new LaunchEstimate<R1>(new LimitModel<R1>(scenario, condition, LimitInput.Ratio, factor));
        return new RatioPoint(factor, pull, launch.Starts ? launch.TimeFor(1.0).Value : double.NaN, launch.TopSpeed.Value);
    }

    // Least of a parabola through the best point and its neighbours, over the logarithm of the factor
    private static double Lowest(List<RatioPoint> points, RatioPoint[] dashes)
    {
        int best = points.IndexOf(dashes.MinBy(p => p.DashTime)!);
        if (best == 0 || best == points.Count - 1 || !double.IsFinite(points[best - 1].DashTime) || !double.IsFinite(points[best + 1].DashTime))
        {
            return points[best].Factor;
        }

        double left = points[best - 1].DashTime - points[best].DashTime;
        double right = points[best + 1].DashTime - points[best].DashTime;
        double step = Math.Log(points[best + 1].Factor / points[best].Factor);
        return points[best].Factor * Math.Exp(0.5 * step * (left - right) / (left + right));
    }

    // a robot that has no steady pull as it is has been told so
    private static IEnumerable<LimitWarning> Unfound(LimitState state, IReadOnlyList<(Wiring Wiring, WheelLoss Case)> cases)
    {
        if (cases.Count > 0 && state.Status == PullStatus.Found)
        {
            yield return new LimitWarning.Unfound(cases);
        }
    }

    private static IEnumerable<LimitWarning> Heat(MatchResult match)
    {
        if (match.Overheating is { } hot)
        {
            yield return new LimitWarning.Overheats(hot, match.PeakWinding ?? double.NaN);
        }
    }

    // The last is the pull [N] that the motors could give if the tyres held it: on a slope gravity has a share in it
    private static List<LimitWarning> Warnings(ScenarioSettings scenario, LimitState state, List<WheelLimit> wheels, double motorPull)
    {
        List<LimitWarning> warnings = [];
        double drag = -wheels.Sum(w => Math.Min(0.0, w.Force));
        if (state.Pull is double creeping && drag > TellingDrag * creeping)
        {
            warnings.Add(new LimitWarning.Creeping(creeping, drag));
        }

        if (state.Status == PullStatus.NotFound)
        {
            warnings.Add(new LimitWarning.NotFound());
        }

        if (state.Status == PullStatus.RearsUp)
        {
            warnings.Add(new LimitWarning.RearsUp());
        }
        else if (state.RearsUpAt is double tips && motorPull > tips)
        {
            warnings.Add(new LimitWarning.MayTip(tips));
        }

        if (state.IsStarved)
        {
            warnings.Add(new LimitWarning.Starved());
        }
        else if (scenario.Robot.Battery!.CutOffVoltage > state.StallVoltage)
        {
            warnings.Add(new LimitWarning.BelowCutOff(state.StallVoltage, scenario.Robot.Battery.CutOffVoltage));
        }

        if (Math.Abs(scenario.Floor.SlopeY) > 0.0)
        {
            warnings.Add(new LimitWarning.SlopeAcross());
        }

        if (scenario.Floor.Patches.Count > 0)
        {
            warnings.Add(new LimitWarning.Patches());
        }

        warnings.AddRange(scenario.Robot.Drives.SelectMany(d => d.Motors).Where(m => m.Motor.StandstillTorqueShare < 1.0).Select(m => m.Motor.Name).Distinct().Select(m => new LimitWarning.Sensorless(m)));
        return warnings;
    }
}
