using PushSim.Analysis.Fit;
using PushSim.Words.Fits;

namespace PushSim.Cli.Fit;

/// <summary>Several tyres compared, in the JSON document of a fit.</summary>
internal static class TyreComparisonJson
{
    public static void Write(Utf8JsonWriter w, TyreComparison c)
    {
        w.WriteStartObject("comparison");
        w.WriteNumber("family_level_ratio", TyreComparison.Level);
        w.WriteBoolean("in_blocks", c.IsInBlocks);
        CommandJson.WriteRows(w, "pairs", c.Pairs, p =>
        {
            w.WriteString("first", p.First);
            w.WriteString("second", p.Second);
            CommandJson.WriteNumber(w, "difference", p.Test.Difference.Value);
            CommandJson.WriteNumber(w, "difference_low", p.Difference.Low);
            CommandJson.WriteNumber(w, "difference_high", p.Difference.High);
            CommandJson.WriteNumber(w, "difference_low_all_pairs", p.Together.Low);
            CommandJson.WriteNumber(w, "difference_high_all_pairs", p.Together.High);
            CommandJson.WriteNumber(w, "p", p.Test.P);
            CommandJson.WriteNumber(w, "p_adjusted", p.Adjusted);
            w.WriteBoolean("told_apart", p.IsToldApart);
            Count(w, "pulls_to_see_it", p.PullsToSee);
        });
        CommandJson.WriteRows(w, "left_out", c.LeftOut, t =>
        {
            w.WriteString("tyre", t.Tyre);
            w.WriteString("reason", PullWords.Of(t.Reason));
        });
        CommandJson.WriteRows(w, "odd_pulls", c.Odd, o =>
        {
            w.WriteString("tyre", o.Tyre);
            w.WriteNumber("pull", o.Pull);
            w.WriteNumber("friction", o.Friction);
            w.WriteNumber("deviations", o.Test.G);
            w.WriteNumber("deviations_limit", o.Test.Critical);
        });
        CommandJson.WriteRows(w, "trends", c.Trends, t =>
        {
            w.WriteString("tyre", t.Tyre.Length > 0 ? t.Tyre : null);
            w.WriteNumber("slope_ratio_per_pull", t.Test.Slope);
            w.WriteNumber("p", t.Test.P);
            w.WriteNumber("p_adjusted", t.Adjusted);
            w.WriteBoolean("seen", t.IsSeen);
            Count(w, "step_after_pull", t.StepAfter ?? 0);
        });
        if (c.IsInTurn is bool inTurn)
        {
            w.WriteBoolean("pulled_tyre_after_tyre", inTurn);
        }

        CommandJson.WriteNumber(w, "spread", c.Spread);
        CommandJson.WriteNumber(w, "spread_ratio", c.RelativeSpread);
        CommandJson.WriteNumber(w, "difference_that_matters", c.Difference);
        Count(w, "pulls_for_difference", c.PullsForDifference);
        w.WriteEndObject();
    }

    private static void Count(Utf8JsonWriter w, string key, int n)
    {
        if (n is > 0 and < int.MaxValue)
        {
            w.WriteNumber(key, n);
        }
        else
        {
            w.WriteNull(key);
        }
    }
}
