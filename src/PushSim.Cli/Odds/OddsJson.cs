using System.Text.Json;
using PushSim.Analysis.Chance;
using PushSim.Binding;
using PushSim.Cli.Shared;
using PushSim.Scenarios.Reading;
using PushSim.Words.Matches;
using PushSim.Words.Terms;

namespace PushSim.Cli.Odds;

/// <summary>Odds as a JSON document.</summary>
internal static class OddsJson
{
    private const int MostFailed = 20;

    public static string Of(OddsResult r) => JsonReport.Write(w =>
    {
        JsonReport.WriteHead(w, "odds", r.Verdict, r.Warnings);
        w.WriteString("robot", r.Robot);
        w.WriteString("opponent", r.Opponent);
        WriteTally(w, r.Tally);
        w.WriteNumber("seed", r.Seed);
        JsonReport.WriteNumber(w, "matches_per_second", r.MatchesPerSecond);
        w.WriteBoolean("interrupted", r.IsInterrupted);
        w.WriteString("interval", "Wilson score, 95 %; of differences Tango score, 95 %");
        w.WriteStartArray("decided");
        foreach ((Decision d, long count) in r.Tally.Decisions)
        {
            w.WriteStartObject();
            w.WriteString("winner", d.Winner switch { 0 => r.Robot, 1 => r.Opponent, _ => "stalemate" });
            w.WriteString("ending", d.Ending.ToString().ToLowerInvariant());
            w.WriteString("robot_held_by", d.Limit is BindingKind own ? BindingTable.Key(own) : null);
            w.WriteString("opponent_held_by", d.OpponentLimit is BindingKind other ? BindingTable.Key(other) : null);
            w.WriteNumber("matches", count);
            w.WriteEndObject();
        }

        w.WriteEndArray();
        w.WriteStartArray("inputs_that_matter");
        foreach ((string name, double share) in r.Inputs)
        {
            w.WriteStartObject();
            w.WriteString("input", name);
            w.WriteNumber("variance_share", share);
            w.WriteEndObject();
        }

        w.WriteEndArray();
        w.WriteStartArray("effects_with_others");
        foreach (InputEffect e in r.Effects)
        {
            w.WriteStartObject();
            w.WriteString("input", e.Key);
            w.WriteNumber("variance_share", e.Share);
            w.WriteNumber("variance_share_low", e.Bounds.Low);
            w.WriteNumber("variance_share_high", e.Bounds.High);
            w.WriteEndObject();
        }

        w.WriteEndArray();
        WriteDrawn(w, r.Values);
        w.WriteStartArray("failed");
        foreach (MatchEnd failed in r.Failed.Take(MostFailed))
        {
            w.WriteStartObject();
            w.WriteNumber("match", failed.Number);
            w.WriteString("cause", MatchWords.Cause(failed));
            w.WriteEndObject();
        }

        w.WriteEndArray();
        if (r.Comparison is Comparison c)
        {
            w.WriteStartObject("against");
            w.WriteString("scenario", r.OtherName);
            WriteTally(w, r.Other!);
            w.WriteNumber("win_share_difference", c.Difference);
            w.WriteNumber("win_share_difference_low", c.Bounds.Low);
            w.WriteNumber("win_share_difference_high", c.Bounds.High);
            w.WriteEndObject();
        }
    });

    internal static void WriteDrawn(Utf8JsonWriter w, IReadOnlyList<TolerancedValue> values)
    {
        w.WriteStartArray("drawn");
        foreach (TolerancedValue v in values)
        {
            w.WriteStartObject();
            w.WriteString("key", v.Key);
            w.WriteString("part", v.Part);
            w.WriteNumber("middle", v.Middle);
            w.WriteNumber("tolerance", v.Tolerance);
            w.WriteString("unit", v.Unit);
            w.WriteString("spread", v.Spread.ToString().ToLowerInvariant());
            w.WriteBoolean("class_tolerance", v.IsOfClass);
            w.WriteBoolean("shelf_tolerance", v.IsOfShelf);
            w.WriteEndObject();
        }

        w.WriteEndArray();
    }

    private static void WriteTally(Utf8JsonWriter w, Tally t)
    {
        Bounds win = t.WinInterval;
        Bounds lead = t.LeadInterval;
        w.WriteNumber("win_share", t.Share(t.Wins));
        w.WriteNumber("win_share_low", win.Low);
        w.WriteNumber("win_share_high", win.High);
        w.WriteNumber("lose_share", t.Share(t.Losses));
        w.WriteNumber("stalemate_share", t.Share(t.Stalemates));
        w.WriteNumber("lead", t.Share(t.Wins) - t.Share(t.Losses));
        w.WriteNumber("lead_low", lead.Low);
        w.WriteNumber("lead_high", lead.High);
        w.WriteNumber("matches", t.Matches);
        w.WriteNumber("failed_matches", t.Failed);
    }
}
