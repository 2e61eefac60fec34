using MathNet.Numerics.Distributions;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Statistics;
using PushSim.Files;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Notebook;
using PushSim.Scenarios.Scenes;

namespace PushSim.Scenarios.Studies;

/// <summary>
/// What to change first: every change plays the same draws as the robot as it is, and the difference of the win shares is taken match by match (<see cref="Comparison"/>). All changes play a
/// first share of the matches; those that may be the best play all of them. Of the best ones, pairs are tried for what they bring beyond their sum.
/// </summary>
public sealed class AdviceStudy
{
    // Changes that play all matches, and those of them that are tried in pairs [1].
    private const int Finalists = 10, MostPaired = 4;

    private readonly AdviceRequest _request;
    private readonly Action<long, long>? _step;
    private readonly CancellationToken _cancel;
    private readonly long _screen;
    private readonly List<string> _notes = [];
    private double _z = ShareInterval.Z;
    private int _pairs;
    private long _done;
    private long _due;

    private AdviceStudy(AdviceRequest request, Action<long, long>? step, CancellationToken cancel)
    {
        (_request, _step, _cancel) = (request, step, cancel);
        _screen = Math.Min(request.Matches, 96);
    }

    /// <summary>Finds advice.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="step">Told how many matches are played, and are to be played at most; null: nobody.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static AdviceResult Of(AdviceRequest request, Action<long, long>? step = null, CancellationToken cancel = default) => new AdviceStudy(request, step, cancel).Run();

    private AdviceResult Run()
    {
        ReadResult read = ScenarioReader.Check(_request.Robot, _request.Read);
        var none = new AdviceResult { Robot = _request.Robot, Opponents = _request.Opponents, WinShare = default, Matches = 0, Changes = [], Pairs = [], Measurements = [] };
        if (read.Robot is not RobotSettings robot)
        {
            Problem[] problems = read.Scenario is null ? [.. read.Problems] : [new Problem(_request.Robot, 0, 0, Severity.Error, "this is a scenario, not a robot", "name a robot; --scene takes the scenario")];
            return none with { Problems = problems, CannotRead = read.CannotRead };
        }

        List<Side> sides = [];
        bool isSteel = false;
        foreach (string opponent in _request.Opponents)
        {
            DrawableResult pair = DrawableScenario.OfPair(_request.Robot, opponent, _request.Scene, _request.Read);
            if (pair.Scenario is not DrawableScenario scenario)
            {
                return none with { Problems = pair.Read.Problems, CannotRead = pair.Read.CannotRead };
            }

            isSteel |= pair.Read.Inputs.Any(i => i.Key == "floor.shelf" && i.Text.Contains("steel", StringComparison.OrdinalIgnoreCase));
            sides.Add(new Side(opponent, new ContestKey(_request.Seed, scenario.Label), new FileMatchSource(scenario, new ContestKey(_request.Seed, scenario.Label))));
        }

        IReadOnlyList<AdviceChange> all = _request.Changes ?? AdviceCandidates.Of(_request.Read, robot, read, Season(), _request.Limit, sides[0].Source.Middle, isSteel);
        List<AdviceChange> changes = Allowed(all, robot);
        _z = ShareInterval.ZOf(changes.Count);
        _due = sides.Count * (_request.Matches + (changes.Count * _screen) + (Math.Min(Finalists, changes.Count) * (_request.Matches - _screen)) + (MostPaired * (MostPaired - 1) / 2 * _request.Matches));
        foreach (Side side in sides)
        {
            side.Base = Play(side.Source, 0, _request.Matches);
        }

        List<Tried> tried = [.. changes.Select(c => Try(c, sides, _screen)).OfType<Tried>()];
        HashSet<Tried> best = [.. tried.OrderByDescending(t => t.Gain.High).Take(Finalists)];
        tried = [.. Alike(tried.Select(t => best.Contains(t) && _screen < _request.Matches ? Try(t.Change, sides, _request.Matches, t) ?? t : t)).OrderByDescending(t => t.Gain.Value)];
        AdvicePair[] pairs = [.. Pairs(tried, sides, robot)];
        return new AdviceResult
        {
            Robot = robot.Name,
            Opponents = [.. sides.Select(s => s.Source.Opponent)],
            WinShare = Share(sides),
            Matches = _request.Matches,
            Changes = [.. tried.Select(t => (t.Change, t.Gain, t.Matches))],
            Pairs = pairs,
            PairsTried = _pairs,
            Measurements = AdviceMeasurements.Of(sides.Select(s => (s.Source, s.Base))),
            Notes = _notes,
            Problems = [.. read.Problems],
        };
    }

    // changes that differ in their place only, and with which every match ends alike
    private static IEnumerable<Tried> Alike(IEnumerable<Tried> tried) => tried
        .GroupBy(t => t.Change.Place.Length == 0 ? t.Change.Name : $"{t.Change.Name[..^t.Change.Place.Length]}|{t.Change.Grams}|{t.Change.Price}|{string.Join(';', t.Ends.Select(e => string.Concat(e.Select(m => m.HasFailed ? '!' : (char)('1' + m.Winner)))))}")
        .Select(g => g.First() with { Change = g.First().Change.OrAt([.. g.Skip(1).Select(t => t.Change)]) });

    private SeasonStudy? Season()
    {
        string? file = NotebookReader.FileOf(GarageFolder.Of(_request.Read.Garage));
        return file is not null && Disk.Look(file) == FileKind.File && SeasonStudy.Of(file, _request.Read.Garage) is { First: not null } season ? season : null;
    }

    private List<AdviceChange> Allowed(IReadOnlyList<AdviceChange> all, RobotSettings robot)
    {
        AdviceChange[] tooHeavy = [.. all.Where(c => IsTooHeavy(c, robot))];
        if (tooHeavy.Length > 0)
        {
            _notes.Add(FormattableString.Invariant($"over {1000.0 * _request.Limit!.Value:0} g and left out: {string.Join("; ", tooHeavy.Take(4).Select(c => c.Name))}{(tooHeavy.Length > 4 ? FormattableString.Invariant($" and {tooHeavy.Length - 4} more") : "")}"));
        }

        return [.. all.Except(tooHeavy)];
    }

    private bool IsTooHeavy(AdviceChange change, RobotSettings robot) => _request.Limit is double limit && change.Grams > 0.0 && robot.Chassis.Mass + (1e-3 * change.Grams) > limit + 1e-6;

    private Tried? Try(AdviceChange change, IReadOnlyList<Side> sides, long matches, Tried? known = null)
    {
        List<IReadOnlyList<MatchEnd>> ends = [];
        foreach ((Side side, int i) in sides.Select((s, i) => (s, i)))
        {
            ReadOptions options = _request.Read with { Set = [.. _request.Read.Set, .. change.Set], TyreMaterial = change.Material ?? _request.Read.TyreMaterial };
            DrawableResult pair = DrawableScenario.OfPair(_request.Robot, side.Opponent, _request.Scene, options);
            if (pair.Scenario is not DrawableScenario scenario)
            {
                _notes.Add($"{change.Name}: {pair.Read.Problems.FirstOrDefault(p => p.Severity == Severity.Error)?.Message ?? "cannot be read"}");
                return null;
            }

            IReadOnlyList<MatchEnd> old = known?.Ends[i] ?? [];
            ends.Add([.. old, .. Play(new FileMatchSource(scenario, side.Contest, change: change.Made), known?.Matches ?? 0, matches)]);
        }

        return new Tried(change, ends, matches, Gain(ends, sides, matches));
    }

    private IReadOnlyList<MatchEnd> Play(FileMatchSource source, long from, long to)
    {
        IReadOnlyList<MatchEnd> ends = from >= to ? [] : Campaign.Run(new BatchMatchRunner(source.Middle), source, (from, to), [], 0.0, _request.Threads, _ => _step?.Invoke(++_done, _due), _cancel);
        _cancel.ThrowIfCancellationRequested();
        return ends;
    }

    private Interval Gain(IReadOnlyList<IReadOnlyList<MatchEnd>> ends, IReadOnlyList<Side> sides, long matches) => Differ(ends, [.. sides.Select(s => s.Base)], matches, _z);

    private static Interval Differ(IReadOnlyList<IReadOnlyList<MatchEnd>> ends, IReadOnlyList<IReadOnlyList<MatchEnd>> others, long matches, double z) =>
        Mean([.. ends.Select((e, i) => Comparison.Of(e, others[i].Where(b => b.Number < matches))).Select(c => (c.Difference, Bounds: c.BoundsAt(z))).Select(c => new Interval(c.Difference, c.Bounds.Low, c.Bounds.High))]);

    private static Interval Share(IReadOnlyList<Side> sides) =>
        Mean([.. sides.Select(s => Tally.Of(s.Base)).Select(t => new Interval(t.Share(t.Wins), t.WinInterval.Low, t.WinInterval.High))]);

    // opponents are drawn for themselves, so the distances to the ends add by their squares
    private static Interval Mean(IReadOnlyList<Interval> parts)
    {
        double value = parts.Average(p => p.Value);
        double low = Math.Sqrt(parts.Sum(p => (p.Value - p.Low) * (p.Value - p.Low))) / parts.Count;
        double high = Math.Sqrt(parts.Sum(p => (p.High - p.Value) * (p.High - p.Value))) / parts.Count;
        return new Interval(value, value - low, value + high);
    }

    private IEnumerable<AdvicePair> Pairs(List<Tried> tried, IReadOnlyList<Side> sides, RobotSettings robot)
    {
        Tried[] best = [.. tried.Where(t => t.Matches == _request.Matches && AdviceOrder.IsSure(t.Gain)).DistinctBy(t => t.Change.Kind).Take(MostPaired)];
        double z = ShareInterval.ZOf(best.Length * (best.Length - 1) / 2);
        foreach ((Tried a, Tried b) in best.SelectMany((a, i) => best.Skip(i + 1).Select(b => (a, b))))
        {
            AdviceChange both = a.Change.With(b.Change);
            if (IsTooHeavy(both, robot) || Try(both, sides, _request.Matches) is not Tried together)
            {
                continue;
            }

            _pairs++;
            Interval beyond = Mean([.. sides.Select((s, i) => Beyond(s.Base, a.Ends[i], b.Ends[i], together.Ends[i], z))]);
            if (beyond.Low > 0.0 || beyond.High < 0.0)
            {
                yield return new AdvicePair(a.Change, b.Change, together.Gain, beyond, Differ(together.Ends, a.Ends, _request.Matches, z));
            }
        }
    }

    // wins together less those of each, plus those of neither, match by match; the normal interval of their mean
    private static Interval Beyond(IReadOnlyList<MatchEnd> neither, IReadOnlyList<MatchEnd> first, IReadOnlyList<MatchEnd> second, IReadOnlyList<MatchEnd> both, double z)
    {
        Dictionary<long, int> Wins(IReadOnlyList<MatchEnd> ends) => ends.Where(e => !e.HasFailed).ToDictionary(e => e.Number, e => e.Winner == 0 ? 1 : 0);
        (Dictionary<long, int> n, Dictionary<long, int> a, Dictionary<long, int> b) = (Wins(neither), Wins(first), Wins(second));
        double[] off = [.. Wins(both).Where(w => n.ContainsKey(w.Key) && a.ContainsKey(w.Key) && b.ContainsKey(w.Key)).Select(w => (double)(w.Value - a[w.Key] - b[w.Key] + n[w.Key]))];
        return off.Length < 2 ? new Interval(0.0, -1.0, 1.0) : Interval.OfMean(off, 1.0 - (2.0 * Normal.CDF(0.0, 1.0, -z)));
    }

    private sealed class Side(string opponent, ContestKey contest, FileMatchSource source)
    {
        public string Opponent => opponent;

        public ContestKey Contest => contest;

        public FileMatchSource Source => source;

        public IReadOnlyList<MatchEnd> Base { get; set; } = [];
    }

    private sealed record Tried(AdviceChange Change, IReadOnlyList<IReadOnlyList<MatchEnd>> Ends, long Matches, Interval Gain);
}
