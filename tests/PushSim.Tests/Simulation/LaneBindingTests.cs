using System.Reflection;
using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>What binds each wheel at the end of each step of random matches: read in 8 lanes, 4 and 1 it is what the scalar scene reads, to the bit.</summary>
public class LaneBindingTests
{
    private const int Matches = 12;
    private const double End = 0.22;

    // end of the step, then kind, load and force of each driven wheel of both robots
    private static double[] Row<T>(double time, StepFeatures<T> features, int lane)
        where T : struct, ILanes<T>, IReal<T> =>
        [time, .. features.Robots.SelectMany(r => r.Kinds.Concat(r.Slides).Concat(r.Loads).Concat(r.Forces)).Select(x => Lane.Get(x, lane))];

    public static TheoryData<int> Structures => [.. Enumerable.Range(0, 12)];

    [Theory]
    [MemberData(nameof(Structures))]
    public void Every_width_reads_the_same(int structure)
    {
        ScenarioSettings s = RandomMatches.Of(structure, End);
        List<double[]>[] alone = [.. Enumerable.Range(0, Matches).Select(i => Alone(RandomMatches.Draw(s, i)))];
        Assert.True(alone.Sum(m => m.Count) > 20 * Matches);
        Assert.Contains(alone, m => m.Any(row => row[1] != (double)BindingKind.Nothing));
        Same(alone, InLanes<R8>(s));
        Same(alone, InLanes<R4>(s));
        Same(alone, InLanes<R1>(s));
    }

    private static void Same(List<double[]>[] expected, List<double[]>[] actual)
    {
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i].Count, actual[i].Count);
            for (int k = 0; k < expected[i].Count; k++)
            {
                Assert.Equal(expected[i][k].Select(BitConverter.DoubleToInt64Bits), actual[i][k].Select(BitConverter.DoubleToInt64Bits));
            }
        }
    }

    private static List<double[]> Alone(ScenarioSettings match)
    {
        var prepared = new PreparedMatch();
        prepared.Prepare(0, match);
        var observer = new Watcher(prepared);
        if (prepared.Scene is not null)
        {
            new SingleRun<SceneSystem>(prepared.Scene, prepared.Tableau).Run(0.0, prepared.Scenario.Manoeuvre.EndTime, [.. prepared.Start], prepared.Breakpoints, prepared.Settings, observer);
        }

        return observer.Rows;
    }

    private static List<double[]>[] InLanes<T>(ScenarioSettings s)
        where T : struct, ILanes<T>, IReal<T>
    {
        var first = new PreparedMatch();
        first.Prepare(0, RandomMatches.Draw(s, 0));
        var scene = new LaneScene<T>(first);
        var spy = new Spy<T>(scene, s);
        scene.Take(spy);
        new LaneIntegration<T, LaneScene<T>, Spy<T>>(scene, spy, first.Tableau).Run(TestContext.Current.CancellationToken);
        return spy.Rows;
    }

    private sealed class Watcher(PreparedMatch match) : IStepObserver
    {
        private readonly StepFeatures<R1>? _features = match.Scene is null ? null : StepFeatures<R1>.Of(match.Scene);
        private readonly MatchWatch _watch = Started(match);

        public List<double[]> Rows { get; } = [];

        public StepDecision OnStep(DenseOutput step)
        {
            _features!.Read();
            Rows.Add(Row(step.T1, _features, 0));
            return _watch.OnStep(step.AsLaneStep(), _features, 0);
        }

        private static MatchWatch Started(PreparedMatch match)
        {
            var watch = new MatchWatch();
            if (match.Scene is not null)
            {
                watch.Start(match.Scene, match.Scenario);
            }

            return watch;
        }
    }

    // Stands between the lanes and their scene, and notes what it read for whichever match is in a lane
    private sealed class Spy<T>(LaneScene<T> scene, ScenarioSettings scenario) : ILaneFeed<T>, IMatchQueue
        where T : struct, ILanes<T>, IReal<T>
    {
        private readonly StepFeatures<T> _features = (StepFeatures<T>)typeof(LaneScene<T>).GetField("_features", BindingFlags.Instance | BindingFlags.NonPublic)!.GetValue(scene)!;
        private readonly int[] _match = new int[T.Lanes];
        private int _next;

        public List<double[]>[] Rows { get; } = [.. Enumerable.Range(0, Matches).Select(_ => new List<double[]>())];

        public bool TryTake(PreparedMatch match)
        {
            if (_next == Matches)
            {
                return false;
            }

            match.Prepare(_next, RandomMatches.Draw(scenario, _next));
            _next++;
            return true;
        }

        public void Done(in MatchOutcome outcome)
        {
        }

        public bool TryBegin(int lane, Span<double> y, out LaneRun run)
        {
            bool begins = scene.TryBegin(lane, y, out run);
            _match[lane] = _next - 1;
            return begins;
        }

        public double EnterSegment(int lane, int index) => scene.EnterSegment(lane, index);

        public void OnStepEnds() => scene.OnStepEnds();

        public StepDecision OnStep(int lane, in LaneStep step)
        {
            Rows[_match[lane]].Add(Row(step.T1, _features, lane));
            return scene.OnStep(lane, step);
        }

        public void End(int lane, in IntegrationOutcome report) => scene.End(lane, report);
    }
}
