using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Cli.Matches;
using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Odds;

/// <summary>Odds as a JSON document.</summary>
internal static class OddsJson
{
    public static string Of(OddsResult r) => CommandJson.Write(w =>
    {
        CommandJson.WriteHead(w, "odds", r.Verdict, r.Warnings);
        w.WriteString("robot", r.Robot);
        w.WriteString("opponent", r.Opponent);
        WriteTally(w, r.Tally);
        w.WriteNumber("seed", r.Seed);
        w.WriteString("contest", r.Contest);
        CommandJson.WriteNumber(w, "matches_per_second", r.MatchesPerSecond);
        w.WriteBoolean("interrupted", r.IsInterrupted);
        w.WriteString("interval", "counting error of the simulation, 95 %: Wilson score, of differences Tango score, over Latin blocks of 32 draws");
        CommandJson.WriteRows(w, "decided", r.Tally.Decisions, x =>
        {
            (Decision d, long count) = x;
            w.WriteString("winner", d.Winner switch { 0 => r.Robot, 1 => r.Opponent, _ => "stalemate" });
            w.WriteString("ending", d.Ending.ToString().ToLowerInvariant());
            w.WriteString("robot_held_by", d.Limit is BindingKind own ? BindingTable.Key(own) : null);
            w.WriteString("opponent_held_by", d.OpponentLimit is BindingKind other ? BindingTable.Key(other) : null);
            w.WriteNumber("matches", count);
        });
        CommandJson.WriteRows(w, "inputs_that_matter", r.Inputs.Told, i =>
        {
            w.WriteString("input", i.Name);
            WriteShare(w, i.Share);
            w.WriteStartObject("of_winning");
            WriteShare(w, i.OfWinning);
            w.WriteEndObject();
        });
        w.WriteNumber("inputs_not_told_apart_from_first", r.Inputs.Tied);
        w.WriteStartObject("together_or_not_told");
        WriteShare(w, r.Inputs.Rest);
        w.WriteEndObject();
        CommandJson.WriteRows(w, "effects_with_others", r.Effects, e =>
        {
            w.WriteString("input", e.Key);
            WriteShare(w, new Interval(e.Share, e.Bounds.Low, e.Bounds.High));
            w.WriteStartObject("of_winning");
            WriteShare(w, e.OfWinning);
            w.WriteEndObject();
        });
        if (r.Pairs is PairOdds pairs)
        {
            WritePairs(w, pairs, r.Tally);
        }

        if (r.Learned is LearnedOdds learned)
        {
            WriteLearned(w, learned);
        }

        if (r.Start is not null)
        {
            StartJson.Write(w, r.Start);
        }

        ThrottleJson.Write(w, "best_throttle", r.Throttles[0]);
        ThrottleJson.Write(w, "opponent_best_throttle", r.Throttles[1]);
        WriteDrawn(w, r.Own.Values);
        CommandJson.WriteRows(w, "failed", r.Tally.FirstFailed, failed =>
        {
            w.WriteNumber("match", failed.Number);
            w.WriteString("cause", MatchWords.Cause(failed));
        });
        CommandJson.WriteRows(w, "variants", r.Others.Zip(r.Comparisons), o =>
        {
            w.WriteString("name", o.First.Label);
            WriteTally(w, o.First.Tally);
            w.WriteNumber("win_share_difference", o.Second.Difference);
            w.WriteNumber("win_share_difference_low", o.Second.Bounds.Low);
            w.WriteNumber("win_share_difference_high", o.Second.Bounds.High);
        });
    });

    private static void WriteShare(Utf8JsonWriter w, Interval share)
    {
        w.WriteNumber("variance_share", share.Value);
        w.WriteNumber("variance_share_low", share.Low);
        w.WriteNumber("variance_share_high", share.High);
    }

    private static void WriteDrawn(Utf8JsonWriter w, IReadOnlyList<TolerancedValue> values)
    {
        CommandJson.WriteRows(w, "drawn", values, v =>
        {
            w.WriteString("key", v.Key);
            w.WriteString("part", v.Part);
            w.WriteNumber("middle", v.Middle);
            w.WriteNumber("tolerance", v.Tolerance);
            w.WriteString("unit", v.Unit);
            w.WriteString("spread", v.Spread.ToString().ToLowerInvariant());
            w.WriteBoolean("class_tolerance", v.IsOfClass);
            w.WriteBoolean("shelf_tolerance", v.IsOfShelf);
        });
    }

    private static void WriteLearned(Utf8JsonWriter w, LearnedOdds l)
    {
        w.WriteStartObject("learned");
        w.WriteNumber("real_matches", l.Results.Matches);
        w.WriteNumber("real_wins", l.Results.Wins);
        w.WriteNumber("pairs", l.Pairs);
        w.WriteNumber("effective_pairs", l.EffectivePairs);
        w.WriteNumber("win_share_before", l.Before);
        w.WriteNumber("win_share", l.Share.Value);
        w.WriteNumber("win_share_low", l.Share.Low);
        w.WriteNumber("win_share_high", l.Share.High);
        if (l.Results.Past is PastPredictions past)
        {
            w.WriteNumber("brier_score", past.Brier);
            w.WriteNumber("brier_score_expected", past.Expected);
        }

        w.WriteEndObject();
        CommandJson.WriteRows(w, "learned_values", l.Values, v =>
        {
            w.WriteString("value", v.Name);
            w.WriteNumber("mean_before", v.Mean);
            w.WriteNumber("deviation_before", v.Deviation);
            w.WriteNumber("mean_after", v.After);
            w.WriteNumber("deviation_after", v.DeviationAfter);
        });
    }

    private static void WritePairs(Utf8JsonWriter w, PairOdds pairs, Tally tally)
    {
        w.WriteStartObject("pairs");
        w.WriteNumber("pairs", pairs.Pairs.Count);
        w.WriteNumber("matches_each", pairs.Tries);
        w.WriteNumber("win_all", pairs.Always);
        w.WriteNumber("win_none", pairs.Never);
        w.WriteNumber("unknown_once_share", pairs.UnknownShare);
        w.WriteEndObject();
        CommandJson.WriteRows(w, "best_of", PairWords.Bouts.Where(n => n <= pairs.Tries), n =>
        {
            Interval share = pairs.BestOf(n, tally);
            w.WriteNumber("matches", n);
            w.WriteNumber("win_share", share.Value);
            w.WriteNumber("win_share_low", share.Low);
            w.WriteNumber("win_share_high", share.High);
        });
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
        w.WriteNumber("draws_worth", t.Worth);
        w.WriteNumber("matches", t.Matches);
        w.WriteNumber("failed_matches", t.Failed);
    }
}
