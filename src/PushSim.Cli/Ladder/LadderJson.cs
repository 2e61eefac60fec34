namespace PushSim.Cli.Ladder;

/// <summary>A ladder as a JSON document.</summary>
internal static class LadderJson
{
    public static string Of(LadderResult r) => CommandJson.Write(w =>
    {
        CommandJson.WriteHead(w, "ladder", r.Verdict, r.Warnings);
        CommandJson.WriteRows(w, "ranking", r.Table.Ranking.Select((place, i) => (place, r.Table.Groups[i], r.Table.RankChances[i])), ranked =>
        {
            var (x, group, chance) = ranked;
            w.WriteString("robot", r.Robots[x.Robot]);
            w.WriteNumber("score", x.Score);
            CommandJson.WriteNumber(w, "score_low", x.Low);
            CommandJson.WriteNumber(w, "score_high", x.High);
            w.WriteNumber("group", group);
            w.WriteNumber("rank_chance", chance);
        });
        w.WriteString("score_method", LadderWords.Method);
        w.WriteString("setting", r.Setting);
        CommandJson.WriteTexts(w, "robots", r.Robots);
        CommandJson.WriteNumbers(w, "win_shares", r.Table.WinShares.Select(row => row.Select(s => s ?? double.NaN)));
        WritePairs(w, r);
        CommandJson.WriteRows(w, "cycles", r.Table.Cycles, c =>
        {
            CommandJson.WriteTexts(w, "robots", [r.Robots[c.First], r.Robots[c.Second], r.Robots[c.Third]]);
            w.WriteBoolean("sure", c.IsSure);
        });
        w.WriteNumber("matches", r.Matches);
        w.WriteNumber("failed_matches", r.FailedMatches);
        w.WriteNumber("seed", r.Seed);
        CommandJson.WriteNumber(w, "matches_per_second", r.MatchesPerSecond);
        w.WriteBoolean("interrupted", r.IsInterrupted);
    });

    private static void WritePairs(Utf8JsonWriter w, LadderResult r) => CommandJson.WriteRows(w, "pairs", r.Table.Pairs, p =>
    {
        Bounds i = p.WinInterval;
        w.WriteString("robot", r.Robots[p.First]);
        w.WriteString("opponent", r.Robots[p.Second]);
        w.WriteNumber("wins", p.Wins);
        w.WriteNumber("losses", p.Losses);
        w.WriteNumber("stalemates", p.Stalemates);
        w.WriteNumber("win_share_low", i.Low);
        w.WriteNumber("win_share_high", i.High);
    });
}
