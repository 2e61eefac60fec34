namespace PushSim.Cli.Ladder;

/// <summary>The pairs of a ladder as CSV.</summary>
internal static class LadderCsv
{
    public static void Write(Stream stream, LadderResult r) => CsvTable.Write(
        stream,
        ["robot", "opponent", "wins", "losses", "stalemates"],
        r.Table.Pairs.Select(p => (string[])[SafeCell.Of(r.Robots[p.First]), SafeCell.Of(r.Robots[p.Second]), CsvTable.Number(p.Wins), CsvTable.Number(p.Losses), CsvTable.Number(p.Stalemates)]));
}
