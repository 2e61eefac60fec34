namespace PushSim.Cli.Sweep;

/// <summary>The points of a sweep as CSV.</summary>
internal static class SweepCsv
{
    public static void Write(Stream stream, SweepRequest request, SweepResult r)
    {
        string[] odds = request.Odds > 0 ? ["win_share_low", "win_share_high", "matches"] : [];
        CsvTable.Write(
            stream,
            [.. request.Inputs.Select(i => i.Key).Concat(r.Table.Columns.Select(c => c.Key)).Select(SafeCell.Of), .. odds],
            r.Table.Points.Select(p => (string[])[

                // a negative number is no formula
                .. request.Inputs.Select((input, i) => input.Numbers is null ? SafeCell.Of(input.Texts[p.Place[i]]) : input.Texts[p.Place[i]]),
                .. r.Table.Columns.Select((_, k) => CsvTable.Number(r.Table.Value(p, k))),
                .. request.Odds > 0 ? [CsvTable.Number(p.Odds?.WinInterval.Low), CsvTable.Number(p.Odds?.WinInterval.High), p.Odds?.Matches.ToString(CultureInfo.InvariantCulture) ?? ""] : Array.Empty<string>()]));
    }
}
