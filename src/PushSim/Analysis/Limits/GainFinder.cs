using PushSim.Contact;
using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>Re-evaluates pull, launch, turn and shove with one part scaled, and their slopes by dual numbers.</summary>
internal sealed class GainFinder
{
    /// <summary>How much of a part is more [1].</summary>
    public const double More = 1.10;

    private const double LaunchTime = 0.5;
    private const double LaunchDistance = 1.0;

    // Below this share of an output a change is rounding [1].
    private const double Rounding = 1e-9;

    private readonly ScenarioSettings _scenario;
    private readonly LimitCondition _condition;
    private readonly LimitHook _hook;
    private readonly LimitHook _contact;
    private readonly StandingPull? _pull;
    private readonly StandingPull? _push;
    private readonly SpotTurn? _turn;

    public GainFinder(ScenarioSettings scenario, LimitCondition condition, LimitHook hook)
    {
        (_scenario, _condition, _hook, _contact) = (scenario, condition, hook, ContactHook(scenario));
        _pull = StandingPull.Solve(Model<R1>(null, 1.0), hook).Steady;
        _push = StandingPull.Solve(Model<R1>(null, 1.0), _contact).Steady;
        _turn = SpotTurn.Solve(Model<R1>(null, 1.0));
        OwnPush = _push is null ? null : _push.Pull(Model<R1>(null, 1.0), _contact).Value;
        OpponentPush = Opponent();
    }

    /// <summary>Own push, and the opponent's or a twin's [N].</summary>
    public double? OwnPush { get; }

    public double? OpponentPush { get; }

    /// <summary>Values with one part scaled, NaN where there is none.</summary>
    public double[] Values(LimitInput? input, double factor)
    {
        double[] values = new double[5];
        LimitModel<R1> model = Model<R1>(input, factor);
        values[(int)LimitOutput.Pull] = StandingPull.Solve(model, _hook).Steady?.Pull(model, _hook).Value ?? double.NaN;
        values[(int)LimitOutput.ShoveMargin] = (StandingPull.Solve(model, _contact).Steady?.Pull(model, _contact).Value ?? double.NaN) - (OpponentPush ?? double.NaN);
        var launch = new LaunchEstimate<R1>(Model<R1>(input, factor));
        values[(int)LimitOutput.LaunchDistance] = launch.Starts ? launch.DistanceAt(LaunchTime).Value : double.NaN;
        values[(int)LimitOutput.LaunchTime] = launch.Starts ? launch.TimeFor(LaunchDistance).Value : double.NaN;
        values[(int)LimitOutput.SpotTurnRate] = SpotTurn.Solve(Model<R1>(input, factor))?.Rate ?? double.NaN;
        return values;
    }

    /// <summary>Derivatives by the part's factor at 1, NaN where there is none.</summary>
    public double[] Slopes(LimitInput input)
    {
        var one = new Dual<R1>(1.0, 1.0);
        double[] slopes = new double[5];
        LimitModel<Dual<R1>> model = Model(input, one);
        slopes[(int)LimitOutput.Pull] = _pull?.Pull(model, _hook).Slope.Value ?? double.NaN;
        slopes[(int)LimitOutput.ShoveMargin] = _push?.Pull(model, _contact).Slope.Value ?? double.NaN;
        var launch = new LaunchEstimate<Dual<R1>>(Model(input, one));
        slopes[(int)LimitOutput.LaunchDistance] = launch.Starts ? launch.DistanceAt(LaunchTime).Slope.Value : double.NaN;
        slopes[(int)LimitOutput.LaunchTime] = launch.Starts ? launch.TimeFor(LaunchDistance).Slope.Value : double.NaN;
        slopes[(int)LimitOutput.SpotTurnRate] = _turn?.RateOf(Model(input, one)).Slope.Value ?? double.NaN;
        return slopes;
    }

    /// <summary>All gains of all parts, sorted by output and size.</summary>
    public List<Gain> All(double[] now)
    {
        LimitInput[] inputs = Enum.GetValues<LimitInput>();

        // each part has models of its own, so that the order of the work changes no bit
        (double[] Changed, double[] Slopes)[] found = new (double[], double[])[inputs.Length];
        Parallel.For(0, inputs.Length, n => found[n] = (Values(inputs[n], More), Slopes(inputs[n])));
        List<Gain> gains = [];
        foreach ((LimitInput input, (double[] changed, double[] slopes)) in inputs.Zip(found))
        {
            foreach (LimitOutput output in Enum.GetValues<LimitOutput>())
            {
                int i = (int)output;
                double measure = Math.Abs(output == LimitOutput.ShoveMargin ? OwnPush ?? double.NaN : now[i]);
                double change = changed[i] - now[i];
                change = Math.Abs(change) < Rounding * measure ? 0.0 : change;
                double slope = Math.Abs(slopes[i]) < Rounding * measure ? 0.0 : slopes[i];
                if (double.IsFinite(change) && double.IsFinite(measure) && measure > 0.0)
                {
                    gains.Add(new Gain(input, output, now[i], changed[i], 100.0 * change / measure, slope, 100.0 * (More - 1.0) * slope / measure));
                }
            }
        }

        return [.. gains.OrderBy(g => g.Output).ThenByDescending(g => Math.Abs(g.ChangePercent)).ThenBy(g => g.Input)];
    }

    private LimitModel<T> Model<T>(LimitInput? input, T factor)
        where T : struct, IReal<T> => new(_scenario, _condition, input, factor);

    private double? Opponent()
    {
        if (LimitFinder.OpponentScene(_scenario) is not ScenarioSettings scene)
        {
            return OwnPush;
        }

        var model = new LimitModel<R1>(scene, new LimitCondition(), null, 1.0);
        return StandingPull.Solve(model, _contact).Steady?.Pull(model, _contact).Value;
    }

    // Push acts at the middle of the common height of the two front faces; against nothing known, of the own one.
    private static LimitHook ContactHook(ScenarioSettings scenario)
    {
        FaceSettings own = Front(scenario.Robot.OutlineOrBox);
        FaceSettings other = scenario.Opponent is null ? own : Front(scenario.Opponent.Robot.OutlineOrBox);
        double low = Math.Max(own.LowerEdge, other.LowerEdge);
        double high = Math.Min(own.UpperEdge, other.UpperEdge);
        return new LimitHook(0.0, 0.5 * (low + Math.Max(low, high)), 0.0);
    }

    private static FaceSettings Front(OutlineSettings outline)
    {
        int n = outline.Corners.Count;
        return outline.Faces[Enumerable.Range(0, n).MaxBy(i => outline.Corners[i].X + outline.Corners[(i + 1) % n].X)];
    }
}
