using System.Collections;
using System.Reflection;
using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>Matches in lanes against the scalar integrator and the recorded run: the same outcome to the bit.</summary>
public class MatchBatchTests
{
    // PUSHSIM_STRUCTURES=20 tries so many kinds of match
    private static readonly int Structures = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_STRUCTURES"), out int n) ? n : 12;
    private const double End = 0.22;
    private const int PerStructure = 10;

    // fewer where each costs ten times as much
    public static TheoryData<double, int> Tolerances => new() { { 1e-3, Structures }, { 1e-4, Structures }, { 1e-6, Structures / 4 } };

    [Theory]
    [MemberData(nameof(Tolerances))]
    public void Random_matches_have_the_same_bits_in_every_width(double tolerance, int structures)
    {
        int touching = 0;
        for (int structure = 0; structure < structures; structure++)
        {
            ScenarioSettings s = RandomMatches.Of(structure, end: End);
            s = s with { Numerics = s.Numerics with { Tolerance = tolerance } };
            MatchOutcome[] alone = [.. Enumerable.Range(0, PerStructure).Select(i => MatchBatch.RunAlone(i, RandomMatches.Draw(s, i)))];
            touching += alone.Count(o => o.FirstContact > 0.0);
            foreach (int lanes in new[] { 1, 4, 8 })
            {
                MatchOutcome[] batch = Play(new MatchBatch(threads: 1, lanes), s, PerStructure);
                Assert.Equal(alone, batch);
            }
        }

        Assert.True(touching > structures * PerStructure / 2, $"only {touching} matches touched");
    }

    [Theory]
    [InlineData(3e-3)]
    [InlineData(1e-3)]
    public void Random_matches_in_single_precision_have_the_same_bits_in_every_width(double tolerance)
    {
        for (int structure = 0; structure < Structures; structure++)
        {
            ScenarioSettings s = RandomMatches.Of(structure, end: End);
            s = s with { Numerics = s.Numerics with { Tolerance = tolerance, Precision = Precision.Single } };
            MatchOutcome[] alone = [.. Enumerable.Range(0, PerStructure).Select(i => MatchBatch.RunAlone(i, RandomMatches.Draw(s, i)))];
            foreach (int lanes in new[] { 1, 8, 16 })
            {
                Assert.Equal(alone, Play(new MatchBatch(threads: 1, lanes, Precision.Single), s, PerStructure));
            }
        }
    }

    // Statuses, endings and winners, ground and times of the recorded run, whose sample rate must not matter.
    [Theory]
    [InlineData(Precision.Double)]
    [InlineData(Precision.Single)]
    public void The_recorded_run_gives_the_same_outcome(Precision precision)
    {
        for (int structure = 0; structure < Structures; structure++)
        {
            ScenarioSettings s = RandomMatches.Of(structure, end: End);
            s = s with { Numerics = s.Numerics with { SampleRate = structure % 2 == 0 ? 100.0 : 1000.0, Precision = precision }, Shove = s.Shove with { Line = 0.15 } };
            for (int i = 0; i < 4; i++)
            {
                ScenarioSettings match = RandomMatches.Draw(s, i);
                MatchOutcome o = MatchBatch.RunAlone(i, match);
                RunResult run = Simulator.Run(match);
                Assert.Equal(run.Status, o.Status);
                Assert.Equal(run.RhsEvaluations, o.Evaluations);
                Assert.Equal(run.Steps, o.Steps);
                Assert.Equal(run.Shove!.Ending, o.Ending);
                Assert.Equal(run.Shove.Winner, o.Winner);
                Assert.Equal(run.Shove.GroundGained, o.GroundGained);
                Assert.Equal(run.Shove.EndTime, o.EndTime);
                Assert.Equal(run.Shove.FirstContact ?? double.NaN, o.FirstContact);
                Assert.Equal(run.Shove.TurnedAside, (o.First.TurnedAside, o.Opponent.TurnedAside));
            }
        }
    }

    // both take it from the same watch, so in every match, at whatever rate the run is sampled
    [Fact]
    public void A_match_and_the_recorded_run_name_the_same_limit()
    {
        int told = 0;
        HashSet<BindingKind> seen = [];
        for (int structure = 0; structure < 2 * Structures; structure++)
        {
            ScenarioSettings match = RandomMatches.Draw(RandomMatches.Of(structure, end: End), 0);
            match = match with { Numerics = match.Numerics with { SampleRate = structure % 2 == 0 ? 100.0 : 1000.0 } };
            MatchOutcome o = MatchBatch.RunAlone(0, match);
            RunResult run = Simulator.Run(match);
            if (run.Shove?.FirstContact is not null && run.Status != RunStatus.Failed)
            {
                told++;
                Assert.Equal((o.First.LimitedBy, o.Opponent.LimitedBy), (run.Answers.LimitedBy ?? BindingKind.Nothing, run.Opponent!.Answers.LimitedBy ?? BindingKind.Nothing));
                seen.UnionWith([o.First.LimitedBy, o.Opponent.LimitedBy]);
            }
        }

        Assert.True(told > Structures, $"only {told} matches touched");
        Assert.True(seen.Count > 1, string.Join(", ", seen));
    }

    [Fact]
    public void Threads_and_order_change_nothing()
    {
        const int Count = 60;
        ScenarioSettings s = RandomMatches.Damped(end: 0.4);
        MatchOutcome[] one = Play(new MatchBatch(threads: 1, lanes: 4), s, Count);
        MatchOutcome[] three = Play(new MatchBatch(threads: 3, lanes: 8), s, Count);
        Assert.Equal(one, three);
        MatchOutcome[] backwards = new MatchOutcome[Count];
        new MatchBatch(threads: 2, lanes: 8).Run(0, Count, i => RandomMatches.Draw(s, Count - 1 - i), (in MatchOutcome o) => backwards[Count - 1 - o.Number] = o with { Number = Count - 1 - o.Number });
        Assert.Equal(one, backwards);
    }

    [Fact]
    public void Matches_of_other_structures_and_matches_that_cannot_start_are_played_in_between()
    {
        ScenarioSettings usual = RandomMatches.Damped(end: 0.3);
        ScenarioSettings other = RandomMatches.Of(3, end: 0.3);
        ScenarioSettings falls = usual with { Robot = usual.Robot with { Chassis = usual.Robot.Chassis with { CentreOfMassX = 0.2 } } };
        ScenarioSettings Match(long i) => i % 7 == 3 ? falls : RandomMatches.Draw(i % 5 == 2 ? other : usual, i);
        MatchOutcome[] outcomes = new MatchOutcome[40];
        new MatchBatch(threads: 2, lanes: 8).Run(0, outcomes.Length, Match, (in MatchOutcome o) => outcomes[o.Number] = o);
        for (int i = 0; i < outcomes.Length; i++)
        {
            Assert.Equal(MatchBatch.RunAlone(i, Match(i)), outcomes[i]);
            Assert.Equal(i % 7 == 3 ? MatchFailure.Refused : MatchFailure.None, outcomes[i].Failure);
        }
    }

    [Fact]
    public void A_fault_in_a_delegate_ends_the_batch_and_is_told()
    {
        ScenarioSettings s = RandomMatches.Damped(end: 0.3);
        var batch = new MatchBatch(threads: 2);
        AggregateException e = Assert.Throws<AggregateException>(() => batch.Run(0, 1000, i => i == 20 ? throw new InvalidOperationException("no match") : RandomMatches.Draw(s, i), (in MatchOutcome _) => { }));
        Assert.Contains(e.InnerExceptions, x => x.Message == "no match");
        Assert.Throws<AggregateException>(() => batch.Run(0, 10, _ => TestRobots.Launch(), (in MatchOutcome _) => { }));
    }

    [Fact]
    public void Cancelling_keeps_what_was_finished()
    {
        ScenarioSettings s = RandomMatches.Damped(end: 0.3);
        using var cancel = new CancellationTokenSource();
        int finished = 0;
        Assert.Throws<OperationCanceledException>(() => new MatchBatch(threads: 2).Run(0, long.MaxValue, i => RandomMatches.Draw(s, i), (in MatchOutcome _) =>
        {
            if (++finished == 30)
            {
                cancel.Cancel();
            }
        }, cancel.Token));
        Assert.InRange(finished, 30, 30 + (2 * 8));
    }

    // Every number of the equations goes into the lane: after filling with numbers that are all different, lane 2 holds them all.
    [Fact]
    public void No_number_is_forgotten_when_a_lane_is_filled()
    {
        ScenarioSettings s = SceneBuilder.InCanonicalOrder(RandomMatches.Of(0, end: End));
        var scene = new SceneSystem(s with { Tether = TestRobots.Pull().Tether });
        var lanes = new SceneEquations<R4>(
            [.. scene.Robots.Select(r => ModelBuilder.Build<R4>(r.Scenario, r.Layout))], SceneBuilder.Contacts<R4>(s));
        int next = 1;
        var seen = new HashSet<object>(ReferenceEqualityComparer.Instance);
        string[] work = ["WheelWork", "MotorWork", "ControllerWork", "DriveFriction", "DriveCapacity"];
        Walk(scene.Equations, "", work, seen, (_, _) => new R1 { Value = next++ });
        new LaneNumbers<R4>().Carry(lanes, 2, scene.Equations);
        List<double> expected = [], actual = [];
        Walk(scene.Equations, "", work, new(ReferenceEqualityComparer.Instance), (_, x) => { expected.Add(((R1)x).Value); return x; });
        List<string> paths = [];
        Walk(lanes, "", work, new(ReferenceEqualityComparer.Instance), (path, x) => { paths.Add(path); actual.Add(Lane.Get((R4)x, 2)); return x; });
        Assert.Equal(expected.Count, actual.Count);
        Assert.True(expected.Count > 500);
        string[] missing = [.. paths.Where((_, i) => expected[i] != actual[i])];
        Assert.True(missing.Length == 0, string.Join(", ", missing));
    }

    private static readonly HashSet<string> s_results =
    [
        "BusVoltage", "BatteryCurrent", "BusResidual", "GivenPower", "SlowVoltage", "BatteryFactor", "AccelerationX", "AccelerationY", "Motion", "Sine", "Cosine", "Wrench", "OpenCircuit",
        "NormalForce", "UprightForce", "CentreX", "CentreY", "CentreZ", "ForceX", "ForceY", "ForceZ", "FrictionForce", "OnA", "OnB", "ClosingSpeed", "LostPower",
        "Tension", "Stretch", "DampingPower", "AnchorPower", "Sums", "_poses", "_motion", "_wrench", "_attitude", "_rollRate", "_pitchRate", "_yawRate", "Attitude",
        "SightX", "SightY", "Spin", "Torque", "_wheelsOnA", "_wheelsOnB", "_wheelPairs", "_meeting", "_pairs", "_forces", "_x", "_y", "_z", "Lowest",
    ];

    // All fields of a number type below an object, in order; results and work of an evaluation left out, the scene's wall pose kept.
    private static void Walk(object target, string path, string[] skip, HashSet<object> seen, Func<string, object, object> visit)
    {
        if (!target.GetType().IsValueType && !seen.Add(target))
        {
            return;
        }

        foreach (FieldInfo field in target.GetType().GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic))
        {
            string name = field.Name.TrimStart('<').Split('>')[0];
            if (skip.Contains(name) || s_results.Contains(name) || name is "Layout")
            {
                continue;
            }

            object? value = field.GetValue(target);
            if (value is null or string or bool or int or double || field.FieldType.IsEnum)
            {
                continue;
            }

            if (value is R1 or R4)
            {
                field.SetValue(target, visit($"{path}.{name}", value));
            }
            else if (value is Array array)
            {
                for (int i = 0; i < array.Length; i++)
                {
                    object? item = array.GetValue(i);
                    if (item is R1 or R4)
                    {
                        array.SetValue(visit($"{path}.{name}[{i}]", item), i);
                    }
                    else if (item is not null and not int and not bool && item is not ValueTuple<int, int>)
                    {
                        Walk(item, $"{path}.{name}[{i}]", skip, seen, visit);
                        array.SetValue(item, i);
                    }
                }
            }
            else if (value is not ICollection && value is not Delegate)
            {
                Walk(value, $"{path}.{name}", skip, seen, visit);
                if (value.GetType().IsValueType)
                {
                    field.SetValue(target, value);
                }
            }
        }
    }

    private static MatchOutcome[] Play(MatchBatch batch, ScenarioSettings s, int count)
    {
        MatchOutcome[] outcomes = new MatchOutcome[count];
        batch.Run(0, count, i => RandomMatches.Draw(s, i), (in MatchOutcome o) => outcomes[o.Number] = o);
        return outcomes;
    }
}
