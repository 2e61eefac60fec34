using System.Diagnostics;
using PushSim.Analysis.Chance;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Keys;
using PushSim.Words.Matches;
using PushSim.Words.Tables;
using PushSim.Words.Terms;
using PushSim.Workbench.Events;

namespace PushSim.Workbench.Behind;

/// <summary>Drawn matches of the open design, the same as those of the command `odds` with its usual seed: the share of wins narrows as they come in.</summary>
internal sealed class OddsStream(EventHub hub)
{
    // Usual seed of the commands [1].
    private const ulong Seed = 1;

    // Matches until it ends, whole blocks of draws: ± 3 % of the share [1].
    private const int Most = 32 * LatinBlock.Size;

    // Stretches of the histogram [1].
    private const int Bins = 24;

    // Matches behind which an interval is kept to be shown [1].
    private static readonly int[] s_kept = [20, 100, 1000];

    private (string Text, double Share)? _before;

    /// <summary>Plays them and tells as they come.</summary>
    /// <returns>The share of wins [1]; null if none could be played.</returns>
    public double? Play(BehindJob job, CancellationToken cancel)
    {
        if (DrawableScenario.Open(job.Design.Shown, job.Design.Options).Scenario is not { } scenario)
        {
            return null;
        }

        var source = new FileMatchSource(scenario, new ContestKey(Seed, scenario.Label));
        var runner = new BatchMatchRunner(source.Middle);
        var ends = new SortedDictionary<long, MatchEnd>();
        List<IntervalMessage> history = [];
        Tally tally = new();
        for (long from = 0; from < Most;)
        {
            // the first share soon, then blocks large enough for all lanes
            long to = Math.Min(Most, from < LatinBlock.Size ? LatinBlock.Size : from + (3 * LatinBlock.Size));
            Fill(runner, source, from, to, ends, cancel);
            from = to;
            tally = Tally.Of(ends.Values);
            if (tally.Matches == 0)
            {
                continue;
            }

            while (history.Count < s_kept.Length && tally.Matches >= s_kept[history.Count])
            {
                history.Add(new IntervalMessage(tally.Matches, tally.WinInterval.Low, tally.WinInterval.High));
            }

            Tell(job, source, tally, ends, [.. history], from >= Most, null);
        }

        if (tally.Matches > 0 && Before(job, cancel) is double before)
        {
            Tell(job, source, tally, ends, history, isDone: true, before);
        }

        return tally.Matches == 0 ? null : tally.Share(tally.Wins);
    }

    private static void Fill(BatchMatchRunner runner, FileMatchSource source, long from, long to, SortedDictionary<long, MatchEnd> ends, CancellationToken cancel)
    {
        runner.Run(source, [.. Enumerable.Range(0, (int)(to - from)).Select(i => from + i)], end => ends[end.Number] = end, Environment.ProcessorCount, cancel);
        cancel.ThrowIfCancellationRequested();
    }

    private void Tell(BehindJob job, FileMatchSource source, Tally tally, SortedDictionary<long, MatchEnd> ends, IReadOnlyList<IntervalMessage> history, bool isDone, double? before)
    {
        InputShares inputs = InputShares.Of(source, ends.Values);
        inputs = inputs with { Told = [.. inputs.Told.Select(i => i with { Name = KeyLabel.Of(i.Name, source.Robot, source.Opponent) })] };
        AnswerCard card = OddsCard.Of(source.Robot, source.Opponent, tally, inputs, null, "");
        double[] ground = [.. ends.Values.Where(e => !e.HasFailed).Select(e => e.GroundGained)];
        hub.Send(
            "odds",
            new OddsMessage
            {
                Number = job.Number, Matches = tally.Matches, Win = tally.Wins, Lose = tally.Losses, Stalemate = tally.Stalemates, Low = tally.WinInterval.Low, High = tally.WinInterval.High,
                Sentence = card.Answer, Sure = Clauses.Sentence(card.Sure), Next = Clauses.Sentence(card.Next), History = history, Done = isDone, BeforeShare = before,
                Histogram = Histogram(ground), Doubts = [.. inputs.Told.Take(3).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i.Name}: {100.0 * i.Share.Value:0} %"))],
                Ms = Math.Round(Stopwatch.GetElapsedTime(job.Since).TotalMilliseconds, 1),
            },
            WireContext.Default.OddsMessage);
    }

    // once for each design that is compared with
    private double? Before(BehindJob job, CancellationToken cancel)
    {
        if (job.Before is not { } design)
        {
            return null;
        }

        string text = string.Concat(design.Texts.Values.Select(t => t.Text));
        if (_before?.Text != text && DrawableScenario.Open(design.Shown, design.Options).Scenario is { } scenario)
        {
            var source = new FileMatchSource(scenario, new ContestKey(Seed, scenario.Label));
            var ends = new SortedDictionary<long, MatchEnd>();
            Fill(new BatchMatchRunner(source.Middle), source, 0, Most, ends, cancel);
            Tally tally = Tally.Of(ends.Values);
            _before = (text, tally.Share(tally.Wins));
        }

        return _before?.Text == text ? _before.Value.Share : null;
    }

    private static HistogramMessage Histogram(double[] values)
    {
        (double low, double high) = values.Length == 0 ? (0.0, 1.0) : (values.Min(), values.Max());
        high = high > low ? high : low + 1e-3;
        if (low < 0.0 && high > 0.0)
        {
            // no stretch has winners and losers
            double step = (high - low) / (Bins - 1);
            low = -step * Math.Ceiling(-low / step);
            high = low + (step * Bins);
        }

        int[] counts = new int[Bins];
        foreach (double value in values)
        {
            counts[Math.Clamp((int)((value - low) / (high - low) * Bins), 0, Bins - 1)]++;
        }

        return new HistogramMessage(low, high, counts);
    }
}
