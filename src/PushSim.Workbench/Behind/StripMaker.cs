using PushSim.Scenarios.Editing;
using PushSim.Words.Answers;
using PushSim.Words.Limits;
using PushSim.Words.Matches;
using PushSim.Workbench.Answers;
using PushSim.Workbench.Designs;
using PushSim.Workbench.Events;

namespace PushSim.Workbench.Behind;

/// <summary>Strips: the answer at places of each value's range. Shoves are played in lanes.</summary>
internal sealed class StripMaker(EventHub hub)
{
    /// <summary>Places of a strip [1].</summary>
    public const int Count = 24;

    // A slower shove fills no strip to its whole height [m/s].
    private const double LeastFull = 0.2;

    private readonly Dictionary<string, StripMessage> _done = new(StringComparer.Ordinal);
    private readonly LaneRuns _lanes = new();
    private Design? _design;
    private string _mode = "";

    /// <summary>One match at each place, then a closer search for the flips.</summary>
    public void Matches(BehindJob job, CancellationToken cancel)
    {
        EditRow[] rows = Rows(job, "match");
        if (rows.Length == 0)
        {
            return;
        }

        var scene = new StripScene(job);
        if (job.Read.Scenario!.Opponent is null)
        {
            Numbers(job, scene, rows, cancel);
            return;
        }

        StripState[] strips = [.. rows.Select(r => new StripState(r, [.. r.Places(Count)]))];
        (int Strip, int Place)[] all = [.. strips.SelectMany((s, i) => Enumerable.Range(0, s.Places.Length).Select(p => (i, p)))];
        _lanes.Run(all.Length, n => scene.At(strips[all[n].Strip].Row, strips[all[n].Strip].Places[all[n].Place]), job.Read.Scenario, (n, outcome) =>
        {
            StripState strip = strips[all[n].Strip];
            strip.Put(all[n].Place, outcome);
            if (strip.IsFull)
            {
                Tell(job, strip, isDone: false);
            }
        }, cancel);

        FlipSearch.Narrow(strips, scene, job.Read.Scenario, _lanes, cancel);
        foreach (StripState strip in strips)
        {
            Tell(job, strip, isDone: true);
        }
    }

    /// <summary>Shares of drawn matches at each place, from the same draws as the odds.</summary>
    /// <param name="job">The job.</param>
    /// <param name="share">Share of wins at the values that hold [1]; null if it is not known.</param>
    /// <param name="cancel">Ends it.</param>
    public void Shares(BehindJob job, double? share, CancellationToken cancel)
    {
        EditRow[] rows = Rows(job, "odds");
        if (rows.Length == 0)
        {
            return;
        }

        var scene = new StripScene(job);
        foreach (StripMessage strip in ShareStrips.Of(job, scene, [.. rows.Where(scene.HasDrawn)], share, _lanes, cancel))
        {
            Send(strip);
        }
    }

    private EditRow[] Rows(BehindJob job, string mode)
    {
        if (!ReferenceEquals(_design, job.Design) || _mode != mode)
        {
            _done.Clear();
            (_design, _mode) = (job.Design, mode);
        }

        return [.. job.Keys.Where(k => !_done.TryGetValue(k, out StripMessage? m) || !m.Done).Select(k => job.Rows.FirstOrDefault(r => StateMaker.KeyOf(r) == k)).OfType<EditRow>().Where(r => r.Value is not null && r.Places(Count).Count > 1)];
    }

    private void Send(StripMessage strip)
    {
        _done[strip.Key] = strip;
        hub.Send("strip", strip, WireContext.Default.StripMessage, "strip " + strip.Key);
    }

    private void Tell(BehindJob job, StripState strip, bool isDone)
    {
        ScenarioSettings scenario = job.Read.Scenario!;
        (string, string) names = (scenario.Robot.Name, scenario.Opponent!.Robot.Name);
        double full = Math.Max(LeastFull, strip.Outcomes.Max(o => Math.Abs(Speed(o))));
        string words = StripWords.OfMatch(
            [.. strip.Places.Zip(strip.Outcomes, (x, o) => (x, o.Status == RunStatus.Failed ? (int?)null : o.Winner, o.EndTime))], strip.Flips, strip.Row.Value!.Value, strip.Row.Tolerance, strip.Row.Unit, names, isRough: !isDone,
            strip.Row.Factor);
        (double Place, int Below, int Above)? near = strip.Flips.Count == 0 ? null : strip.Flips.MinBy(f => Math.Abs(f.Place - strip.Row.Value.Value));
        string key = StateMaker.KeyOf(strip.Row);
        Send(new StripMessage
        {
            Number = job.Number, Key = key, Mode = "match",
            Points = [.. strip.Places.Zip(strip.Outcomes, (x, o) => new StripPoint(Math.Round(x, 6), Math.Round(Speed(o) / full, 3), State(o), Short: Short(o, names)))],
            Flip = near is { } flip ? new FlipMessage(flip.Place, StripWords.Shown(flip.Place, strip.Row.Unit)) : null,
            Flips = [.. strip.Flips.Select(f => f.Place)],
            Words = words, BeforeX = job.BeforeValues.TryGetValue(key, out double x) ? x : null, Done = isDone,
        });
    }

    private static double Speed(in MatchOutcome o) => o.Status == RunStatus.Failed || !(o.EndTime > o.FirstContact) ? 0.0 : o.GroundGained / (o.EndTime - o.FirstContact);

    private static string State(in MatchOutcome o) => o.Status == RunStatus.Failed ? "failed" : o.Winner == 0 ? "win" : o.Winner == 1 ? "lose" : "nobody";

    private static string Short(in MatchOutcome o, (string Own, string Other) names) =>
        o.Status == RunStatus.Failed ? "cannot be played" : o.Winner < 0 ? "nobody moves" : string.Create(CultureInfo.InvariantCulture, $"{(o.Winner == 0 ? names.Own : names.Other)} wins after {o.EndTime:0.00} s");

    /// <summary>The order of what matters most.</summary>
    public IReadOnlyList<string> Order(BehindJob job, CancellationToken cancel) => job.Read.Scenario is { Opponent: not null } ? MatterOrder.Of(job, new StripScene(job), _lanes, cancel) : MatterOrder.Cheap(job.Rows);

    /// <summary>Strips of a robot alone: its steady pull.</summary>
    public void Limits(BehindJob job, CancellationToken cancel)
    {
        LimitMeasure pull = LimitMeasure.All[0];
        NumberStrips.Tell(job, Rows(job, "match"), pull, (row, x) => job.Design.With(row, row.Written(x), job.Read)?.Read().Robot is { } robot ? LimitAnswer.Pull(robot) : null, Send, cancel);
    }

    // what is no contest: the number that is usually asked
    private void Numbers(BehindJob job, StripScene scene, EditRow[] rows, CancellationToken cancel)
    {
        Answer asked = AnswerCatalogue.Defaults(job.Read.Scenario!.Manoeuvre.Kind)[0];
        NumberStrips.Tell(job, rows, asked, (row, x) => scene.At(row, x) is { } at ? asked.Of(AnswerRun.Fast(at, cancel)) : null, Send, cancel);
    }
}
