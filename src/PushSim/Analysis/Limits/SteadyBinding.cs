using PushSim.Binding;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Limits;

/// <summary>What binds a robot in its steady pull: each wheel by <see cref="BindingRule"/> in the pull's own moment, the robot by what its wheels say.</summary>
internal static class SteadyBinding
{
    // A gain below is rounding [%].
    private const double Rounding = 1e-7;

    /// <summary>What binds each wheel; null for one without motors.</summary>
    public static BindingKind?[] Wheels(LimitModel<R1> model, LimitHook? hook, StandingPull pull)
    {
        R1[] load = new R1[model.Wheels.Length];
        double[] force = pull.WheelForces(model, hook, load);
        return Wheels(model, load, force, d => pull.Omega[d]);
    }

    /// <summary>The same in any state whose torques the model was just asked for.</summary>
    /// <param name="model">The robot.</param>
    /// <param name="load">Load of each wheel [N].</param>
    /// <param name="force">Force of each wheel [N].</param>
    /// <param name="spin">Speed of each drive whose wheels slide on a standing robot, 0 for one that stands [rad/s].</param>
    public static BindingKind?[] Wheels(LimitModel<R1> model, R1[] load, double[] force, Func<int, double> spin)
    {
        BindingReader<R1> reader = model.Binding;
        R1[] slides = new R1[reader.Driven.Length];
        R1[] kinds = new R1[slides.Length];
        for (int i = 0; i < slides.Length; i++)
        {
            slides[i] = Slides(model, reader.Driven[i], load[reader.Driven[i]], force[reader.Driven[i]], spin(model.Kinds[reader.Driven[i]].Shape.Drive));
        }

        reader.Read(model.Controllers, model.ControllerWork, model.BusVoltage, model.OpenCircuit, slides, slides, default, kinds);
        BindingKind?[] all = new BindingKind?[load.Length];
        for (int i = 0; i < slides.Length; i++)
        {
            all[reader.Driven[i]] = load[reader.Driven[i]].Value > 0.0 ? (BindingKind)(int)kinds[i].Value : BindingKind.Lifted;
        }

        return all;
    }

    /// <summary>Every kind that binds at least one loaded driven wheel and of which more would add to the pull, the most first. The gain is that of the pull's own moment, its slope: a whole
    /// tenth can break a standing wheel loose, and then the pull falls.</summary>
    public static IReadOnlyList<BoundBy> Find(LimitModel<R1> model, LimitCondition condition, LimitHook? hook, StandingPull pull)
    {
        double now = pull.Pull(model, hook).Value;
        BindingKind[] kinds = [.. Wheels(model, hook, pull).OfType<BindingKind>().Where(k => k is not (BindingKind.Nothing or BindingKind.Lifted)).Distinct()];

        // a battery that cannot feed the motors stands at half of its voltage whatever its resistance: nothing is known to bind
        return !(now > 0.0) || Math.Abs(model.BusResidual.Value) > MatchWatch.BusFailure ? []
            : [.. kinds.Select(k => new BoundBy(k, Gain(model.Scenario, condition, hook, pull, k, now))).Where(b => b.GainPercent > Rounding).OrderByDescending(b => b.GainPercent).ThenBy(b => b.Kind)];
    }

    /// <summary>The input whose change shows what a kind holds back; null for a series wiring, which is no number.</summary>
    public static LimitInput? Input(BindingKind kind) => kind switch
    {
        BindingKind.Tyre => LimitInput.Friction,
        BindingKind.CurrentLimit or BindingKind.Heat => LimitInput.CurrentLimit,
        BindingKind.Battery => LimitInput.BatteryResistance,
        BindingKind.Motor => LimitInput.MotorConstant,
        _ => null,
    };

    // The wheel's own bristle in a steady slide, as a run would have it
    private static R1 Slides(LimitModel<R1> model, int wheel, R1 load, double force, double spin)
    {
        ref WheelParameters<R1> p = ref model.Wheels[wheel];
        R1 surface = Math.Max(1e-12, Math.Abs(p.DriveRatio.Value * p.Radius.Value * spin));
        R1 slip = spin != 0.0 ? surface : 0.0;
        R1 mu = model.FloorOf[wheel] * WheelEquations.Friction(p, model.Kinds[wheel], slip, load);
        R1 grip = spin != 0.0 ? SteadyTyre.Share(p, model.Kinds[wheel].Shape, mu, 1.0) : load.Value > 0.0 ? Math.Abs(force) / (load * mu) : 0.0;
        R1 alpha = R1.Max(0.0, R1.Min(1.0, (grip - p.ElasticShare) / (1.0 - p.ElasticShare)));
        return BindingRule.Slides(model.Kinds[wheel].Shape, alpha, slip, grip);
    }

    private static double Gain(ScenarioSettings scenario, LimitCondition condition, LimitHook? hook, StandingPull pull, BindingKind kind, double now)
    {
        if (Input(kind) is LimitInput input)
        {
            double slope = pull.Pull(new LimitModel<Dual<R1>>(scenario, condition, input, new Dual<R1>(1.0, 1.0)), hook).Slope.Value;
            return 100.0 * (GainFinder.More - 1.0) * (input == LimitInput.BatteryResistance ? -slope : slope) / now;
        }

        var parallel = new LimitModel<R1>(scenario with { Robot = InParallel(scenario.Robot) }, condition, null, 1.0);
        return StandingPull.Solve(parallel, hook).Steady is { } other ? 100.0 * (other.Pull(parallel, hook).Value - now) / now : double.NaN;
    }

    internal static RobotSettings InParallel(RobotSettings robot) => robot with
    {
        Controllers = [.. robot.Controllers.Select(c => c.Wiring == Wiring.Series ? c with { Wiring = Wiring.Parallel, CurrentLimit = c.CurrentLimit * c.Motors.Count } : c)],
    };
}
