using PushSim.Analysis.Chance;
using PushSim.Scenarios.Editing;
using PushSim.Words.Matches;
using PushSim.Workbench.Designs;

namespace PushSim.Workbench.Behind;

/// <summary>Strips of shares: the same drawn matches at each place, so that neighbours differ by the value and not by chance.</summary>
internal static class ShareStrips
{
    // Draws at each place: first one block, then one more [1].
    private static readonly int[] s_draws = [LatinBlock.Size, 2 * LatinBlock.Size];

    /// <summary>The strips as they come, coarse ones of all values first.</summary>
    public static IEnumerable<StripMessage> Of(BehindJob job, StripScene scene, IReadOnlyList<EditRow> rows, double? share, LaneRuns lanes, CancellationToken cancel)
    {
        var contest = new ContestKey(1, scene.Label);
        Dictionary<EditRow, Cell[]> cells = rows.ToDictionary(r => r, r => r.Places(StripMaker.Count).Select(x => new Cell(x)).ToArray());
        int from = 0;
        foreach (int to in s_draws)
        {
            foreach (EditRow row in rows)
            {
                Cell[] places = cells[row];
                int draws = to - from;
                int first = from;
                lanes.Run(places.Length * draws, n => scene.Drawn(row, places[n / draws].X, contest, first + (n % draws)), job.Read.Scenario!, (n, o) => places[n / draws].Add(o), cancel);
                yield return Message(job, row, places, share, to == s_draws[^1]);
            }

            from = to;
        }
    }

    private static StripMessage Message(BehindJob job, EditRow row, Cell[] places, double? share, bool isDone)
    {
        string key = StateMaker.KeyOf(row);
        double[] shares = [.. places.Select(p => p.Share)];
        double[] even = [.. Enumerable.Range(0, places.Length - 1).Where(i => shares[i] < 0.5 != shares[i + 1] < 0.5).Select(i => places[i].X + ((0.5 - shares[i]) / (shares[i + 1] - shares[i]) * (places[i + 1].X - places[i].X)))];
        double? near = even.Length == 0 ? null : even.MinBy(e => Math.Abs(e - row.Value!.Value));
        return new StripMessage
        {
            Number = job.Number, Key = key, Mode = "odds",
            Points = [.. places.Select(p => p.Point())],
            Flip = near is double x ? new FlipMessage(x, StripWords.Shown(x, row.Unit)) : null,
            Flips = even, Words = StripWords.OfShares(near, share, row.Unit), BeforeX = job.BeforeValues.TryGetValue(key, out double before) ? before : null, Done = isDone,
        };
    }

    private sealed class Cell(double x)
    {
        private int _wins;
        private int _all;

        public double X => x;

        public double Share => _all == 0 ? 0.0 : (double)_wins / _all;

        public void Add(in MatchOutcome o)
        {
            if (o.Status != RunStatus.Failed)
            {
                _all++;
                _wins += o.Winner == 0 ? 1 : 0;
            }
        }

        public StripPoint Point()
        {
            Bounds bounds = _all == 0 ? new Bounds(0.0, 1.0) : ShareInterval.Wilson(_wins, _all);
            return new StripPoint(Math.Round(x, 6), Math.Round((2.0 * Share) - 1.0, 3), _all == 0 ? "failed" : Share >= 0.5 ? "win" : "lose", Math.Round(Share, 4), Math.Round(bounds.Low, 4), Math.Round(bounds.High, 4), string.Create(CultureInfo.InvariantCulture, $"{100.0 * Share:0} of 100"));
        }
    }
}
