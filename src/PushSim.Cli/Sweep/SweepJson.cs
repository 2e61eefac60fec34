using PushSim.Analysis.Sweep;
using PushSim.Words.Sweeps;

namespace PushSim.Cli.Sweep;

/// <summary>A sweep as a JSON document.</summary>
internal static class SweepJson
{
    public static string Of(SweepRequest request, SweepResult r) => CommandJson.Write(w =>
    {
        CommandJson.WriteHead(w, "sweep", r.Verdict, r.Warnings);
        CommandJson.WriteRows(w, "inputs", request.Inputs, input =>
        {
            w.WriteString("key", input.Key);
            w.WriteString("unit", input.Unit);
            CommandJson.WriteTexts(w, "values", input.Texts);
        });
        CommandJson.WriteRows(w, "points", r.Table.Points, point =>
        {
            w.WriteStartArray("at");
            for (int i = 0; i < point.Place.Length; i++)
            {
                w.WriteStringValue(request.Inputs[i].Texts[point.Place[i]]);
            }

            w.WriteEndArray();
            for (int k = 0; k < r.Table.Columns.Count; k++)
            {
                CommandJson.WriteNumber(w, r.Table.Columns[k].Key, r.Table.Value(point, k));
            }

            if (point.Odds is Tally t)
            {
                w.WriteNumber("win_share_low", t.WinInterval.Low);
                w.WriteNumber("win_share_high", t.WinInterval.High);
                w.WriteNumber("matches", t.Matches);
                w.WriteNumber("failed_matches", t.Failed);
            }
        });
        CommandJson.WriteRows(w, "optima", r.Table.Columns.Select((c, k) => (c, k)).Where(c => c.c.Best is not null), x =>
        {
            (SweepColumn c, int k) = x;
            w.WriteString("quantity", c.Key);
            w.WriteString("best", c.IsHighestBest ? "highest" : "lowest");
            CommandJson.WriteNumber(w, "value", r.Table.Value(r.Table.Points[c.Best!.Value], k));
            w.WriteString("at", c.Alone is int alone ? SweepWords.At(request.Inputs, r.Table.Points[alone]) : null);
            CommandJson.WriteTexts(w, "tied", c.Ties.Select(t => SweepWords.At(request.Inputs, r.Table.Points[t])));
            CommandJson.WriteNumber(w, "within_5_percent_from", c.Flatness?.Low);
            CommandJson.WriteNumber(w, "within_5_percent_to", c.Flatness?.High);
            w.WriteNumber("points_within_5_percent", c.GoodPoints.Count);
        });
        w.WriteNumber("seed", request.Plan.Seed);
        w.WriteBoolean("interrupted", r.IsInterrupted);
    });
}
