namespace PushSim.Cli.Matches;

/// <summary>The three orders of starts as JSON: of one shove, and of drawn matches.</summary>
internal static class StartJson
{
    public static void Write(Utf8JsonWriter writer, StartStudy study, string robot, string opponent)
    {
        CommandJson.WriteRows(writer, "start_cases", study.Cases, c =>
        {
            writer.WriteString("case", Key(c.Order));
            writer.WriteString("winner", c.Ending is null ? null : c.Winner switch { 0 => robot, 1 => opponent, _ => "stalemate" });
            writer.WriteString("ending", c.Ending?.ToString().ToLowerInvariant());
            CommandJson.WriteNumber(writer, "ground_gained_m", c.Ending is null ? null : c.GroundGained);
            CommandJson.WriteNumber(writer, "ended_at_s", c.Ending is null ? null : c.EndTime);
        });
        WriteWorth(writer, study.Worth);
    }

    public static void Write(Utf8JsonWriter writer, StartOdds start)
    {
        CommandJson.WriteRows(writer, "start_cases", start.Shares, s =>
        {
            writer.WriteString("case", Key(s.Order));
            writer.WriteNumber("win_share", s.Tally.Share(s.Tally.Wins));
            writer.WriteNumber("win_share_low", s.Tally.WinInterval.Low);
            writer.WriteNumber("win_share_high", s.Tally.WinInterval.High);
            writer.WriteNumber("lose_share", s.Tally.Share(s.Tally.Losses));
            writer.WriteNumber("stalemate_share", s.Tally.Share(s.Tally.Stalemates));
            writer.WriteNumber("matches", s.Tally.Matches);
        });
        WriteWorth(writer, start.Worth);
    }

    private static string Key(StartOrder order) => order.ToString().ToLowerInvariant();

    private static void WriteWorth(Utf8JsonWriter writer, StartWorth worth)
    {
        writer.WriteStartObject("worth");
        CommandJson.WriteNumber(writer, "reaction_0_1_s_m", worth.Reaction);
        CommandJson.WriteNumber(writer, "grip_10_percent_m", worth.Grip);
        CommandJson.WriteNumber(writer, "mass_10_percent_m", worth.Mass);
        writer.WriteBoolean("without_line", worth.IsWithoutLine);
        writer.WriteEndObject();
    }
}
