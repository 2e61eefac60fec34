using PushSim.Analysis.Limits;
using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

/// <summary>
/// What is said to bind a steady pull does: more of it adds to the pull, and what is free is not named. Over random robots in the state of their file and in every state of
/// heat and charge that the limits tell. PUSHSIM_BINDING_ROBOTS sets another count than the one below.
/// </summary>
public class SteadyBindingTests(ITestOutputHelper output)
{
    private const int UsualCount = 200;

    // Gains that differ by less of their sum are level [1]; that of a series wiring, which is no number, has no order beside a tenth more of the others.
    private const double Level = 0.1;

    [Fact]
    public void More_of_what_binds_a_pull_adds_to_it()
    {
        int count = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_BINDING_ROBOTS"), out int n) ? n : UsualCount;
        int states = 0, starved = 0, ordered = 0, alike = 0;
        int[] named = new int[BindingRule.Kinds];
        int[] left = new int[BindingRule.Kinds];
        for (int seed = 0; seed < count; seed++)
        {
            ScenarioSettings s = SceneBuilder.InCanonicalOrder(PullAgreementTests.Pull(Weakened(seed)));
            foreach (LimitCondition condition in Conditions(s.Robot))
            {
                LimitState state = LimitFinder.State(LimitStateKind.AsInFile, s, condition, LimitFinder.Hook(s));
                if (state.Status != PullStatus.Found || !(state.Pull > 0.0))
                {
                    continue;
                }

                // a battery that cannot feed the motors in the pull itself: what binds is not known
                Dictionary<BindingKind, double>? force = Forces(s, condition);
                Assert.Equal(force is null, state.Bound.Count == 0);
                if (force is null)
                {
                    starved++;
                    continue;
                }

                states++;
                string where = FormattableString.Invariant($"seed {seed}, charge {condition.Charge}, winding {condition.WindingTemperature}, {state.Pull:0.0000} N: {string.Join(", ", state.Bound)}");
                Assert.All(state.Bound, b => Assert.True(b.GainPercent > 0.0 && force.ContainsKey(b.Kind), where));
                Assert.Equal(state.Bound.OrderByDescending(b => b.GainPercent), state.Bound);
                state.Bound.ToList().ForEach(b => named[(int)b.Kind]++);
                force.Keys.Except(state.Bound.Select(b => b.Kind)).ToList().ForEach(k => left[(int)k]++);
                var tally = new BindingTally();
                force.ToList().ForEach(f => tally.Add(f.Key, f.Value, 1.0));
                bool isClear = state.Bound.Count > 1 && state.Bound.All(b => b.Kind != BindingKind.Series) && state.Bound[0].GainPercent - state.Bound[1].GainPercent > Level * state.Bound.Sum(b => b.GainPercent);
                ordered += isClear ? 1 : 0;
                alike += isClear && tally.Leading() == state.Binding ? 1 : 0;
            }
        }

        output.WriteLine($"seeds 0 to {count - 1}: {states} steady pulls, {starved} more starve the battery; named {Words(named)}; not named, for more of it adds nothing: {Words(left)}; a run, which has forces and no gains, would name the same first in {alike} of {ordered}");
        Assert.True(states > 4 * count, $"only {states} steady pulls");
        Assert.True(ordered > 0.02 * states && alike > 0.9 * ordered, $"{alike} of {ordered}");
    }

    private static string Words(int[] counts) => string.Join(", ", counts.Select((c, k) => (c, k)).Where(x => x.c > 0).Select(x => $"{(BindingKind)x.k} {x.c}"));

    // Force of the wheels by what binds them, as a run shares its impulse out
    private static Dictionary<BindingKind, double>? Forces(ScenarioSettings s, LimitCondition condition)
    {
        var model = new LimitModel<R1>(s, condition, null, 1.0);
        LimitHook hook = LimitFinder.Hook(s);
        StandingPull pull = StandingPull.Solve(model, hook).Steady!;
        double[] force = pull.WheelForces(model, hook, new R1[model.Wheels.Length]);
        BindingKind?[] kinds = SteadyBinding.Wheels(model, hook, pull);
        return Math.Abs(model.BusResidual.Value) > MatchWatch.BusFailure ? null : kinds.Zip(force).Where(x => x.First is not (null or BindingKind.Nothing or BindingKind.Lifted)).GroupBy(x => x.First!.Value).ToDictionary(g => g.Key, g => g.Sum(x => x.Second));
    }

    /// <summary>A random robot of which anything may bind: the usual ones are strong, and slide; every fourth stays so. Geared for speed, on a worn battery, its current limited.</summary>
    internal static RobotSettings Weakened(int seed)
    {
        RobotSettings robot = RandomRobots.Scenario(seed).Robot;
        if (seed % 4 == 0)
        {
            return robot;
        }

        var r = new Random(seed);
        double gearing = Math.Pow(0.08, r.NextDouble());
        double worn = Math.Pow(20.0, r.NextDouble());
        double limit = r.Next(2) == 0 ? 1.0 + (4.0 * r.NextDouble()) : double.PositiveInfinity;
        return robot with
        {
            Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (m.Motor, gearing * m.Ratio))] })],
            Controllers = [.. robot.Controllers.Select(c => c with { CurrentLimit = Math.Min(c.CurrentLimit, limit * c.Motors.Count) })],
            Battery = robot.Battery! with { Resistance = worn * robot.Battery.Resistance },
        };
    }

    private static IEnumerable<LimitCondition> Conditions(RobotSettings robot)
    {
        IEnumerable<LimitCondition> all =
        [
            new(), new() { Charge = 1.0 }, new() { Charge = 1.0, WindingTemperature = LimitFinder.Warm }, new() { Charge = 0.8 }, new() { Charge = 0.8, WindingTemperature = LimitFinder.Warm },
        ];

        // and hot enough that a limit is folded back
        return robot.Controllers.All(c => c.ThermalResistance > 0.0 && double.IsFinite(c.CurrentLimit))
            ? [.. all, new() { ControllerTemperatures = [.. robot.Controllers.Select(c => c.FoldBackTemperature + 10.0)] }] : all;
    }
}
