using PushSim.Binding;
using PushSim.Cli.Matches;
using PushSim.Words.Answers;
using PushSim.Words.Designs;
using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>A run as a JSON document.</summary>
internal static class RunJson
{
    public static string Of(RunResult result, RunCost cost, TyreAnswers? tyres = null, TurnMap? map = null, IReadOnlyList<ComparedDesign>? designs = null) => CommandJson.Write(writer =>
    {
        CommandJson.WriteHead(writer, "run", RunText.Verdict(result, designs), RunText.Warnings(result, designs));
        CommandJson.WriteNumber(writer, "simulation_ms", cost.SimulationMilliseconds);
        writer.WriteNumber("total_rhs_evaluations", cost.TotalEvaluations);
        WriteAnswers(writer, result);
        CommandJson.WriteRows(writer, "variants", (designs ?? []).Skip(1), d =>
        {
            writer.WriteString("name", d.Label);
            writer.WriteString("verdict", RunWords.Verdict(d.Run!));
            CommandJson.WriteTexts(writer, "warnings", RunText.Of(d.Run!));
            WriteAnswers(writer, d.Run!);
        });

        if (tyres is not null)
        {
            TyreJson.Write(writer, tyres);
        }

        if (result.Turning is not null)
        {
            TurnJson.Write(writer, result.Turning, TurnExplanation.Of(result.Turning, result));
        }

        if (map is not null)
        {
            TurnMapJson.Write(writer, map);
        }

        writer.WriteStartObject("energy");
        foreach (LedgerEntry entry in result.Ledger)
        {
            CommandJson.WriteNumber(writer, entry.Key, entry.Joule);
        }

        writer.WriteEndObject();
    });

    // What every run answers, the first one's at the top and each other design's in its own block
    private static void WriteAnswers(Utf8JsonWriter writer, RunResult result)
    {
        writer.WriteString("scenario", result.Scenario.Name);
        writer.WriteString("status", result.Status.ToString().ToLowerInvariant());
        WriteShove(writer, result);
        if (result.Start is not null)
        {
            StartJson.Write(writer, result.Start, result.Scenario.Robot.Name, result.Scenario.Opponent!.Robot.Name);
        }

        if (result.Bump is { } bump)
        {
            writer.WriteStartObject("bump");
            CommandJson.WriteNumber(writer, "closing_speed_m_per_s", bump.ClosingSpeed);
            CommandJson.WriteNumber(writer, "momentum_n_s", bump.Momentum);
            CommandJson.WriteNumber(writer, "energy_lost_j", bump.EnergyLost);
            CommandJson.WriteNumber(writer, "restitution", bump.Restitution);
            CommandJson.WriteNumber(writer, "ground_share", bump.GroundShare);
            writer.WriteEndObject();
        }

        if (result.Throttles is [var own, var others])
        {
            ThrottleJson.Write(writer, "best_throttle", own);
            ThrottleJson.Write(writer, "opponent_best_throttle", others);
        }

        if (result.Drawn is DrawnSet drawn)
        {
            writer.WriteStartObject("drawn");
            writer.WriteNumber("matches", drawn.Matches);
            writer.WriteNumber("wins", drawn.Wins);
            writer.WriteNumber("losses", drawn.Losses);
            writer.WriteNumber("stalemates", drawn.Stalemates);
            writer.WriteEndObject();
        }

        writer.WriteString("limited_by", BindingTable.PartKey(result.Answers.LimitedBy));
        foreach (Answer answer in AnswerCatalogue.All)
        {
            CommandJson.WriteNumber(writer, answer.Key, answer.Of(result));
        }

        if (result.Coasting is { } coasting)
        {
            writer.WriteStartObject("coasting_between_pulses");
            foreach (Answer answer in AnswerCatalogue.Asked(result.Scenario))
            {
                CommandJson.WriteNumber(writer, answer.Key, answer.Of(coasting));
            }

            writer.WriteEndObject();
        }

        ChatterJson.Write(writer, result.Chatter);
        if (result.Look is { } look)
        {
            CommandJson.WriteTexts(writer, "closer_look_left_out", look.LeftOut.Select(LookWords.Key));
        }

        WriteHops(writer, result.Hops);
        WriteLimits(writer, "limits", result.Limits);
        if (result.Opponent is OpponentRun opponent)
        {
            WriteOpponent(writer, result, opponent);
        }
    }

    private static void WriteShove(Utf8JsonWriter writer, RunResult result)
    {
        ShoveOutcome? shove = result.Shove;
        writer.WriteString("winner", shove is null ? null : shove.Winner switch
        {
            0 => result.Scenario.Robot.Name,
            1 => result.Scenario.Opponent!.Robot.Name,
            _ => "stalemate",
        });
        if (shove?.TooCloseToCall is bool close)
        {
            writer.WriteBoolean("too_close_to_call", close);
            writer.WriteString("too_close_reason", RunWords.TooClose(result));
        }
        else
        {
            writer.WriteNull("too_close_to_call");
        }

        if (shove is not null)
        {
            writer.WriteString("ending", shove.Ending.ToString().ToLowerInvariant());
        }
    }

    private static void WriteLimits(Utf8JsonWriter writer, string key, IReadOnlyList<BindingSpan> limits)
    {
        writer.WriteStartArray(key);
        foreach (BindingSpan span in limits)
        {
            writer.WriteStartObject();
            CommandJson.WriteNumber(writer, "from_s", span.From);
            CommandJson.WriteNumber(writer, "to_s", span.To);
            writer.WriteString("limit", BindingTable.Key(span.Kinds[0]));
            writer.WriteStartArray("limits");
            foreach (BindingKind kind in span.Kinds)
            {
                writer.WriteStringValue(BindingTable.Key(kind));
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteHops(Utf8JsonWriter writer, PushHops? hops)
    {
        if (hops is null)
        {
            return;
        }

        writer.WriteString("hop_wheel", hops.Wheel);
        CommandJson.WriteRows(writer, "wheels_since_touch", hops.Wheels, w =>
        {
            writer.WriteString("wheel", w.Wheel);
            CommandJson.WriteNumber(writer, "air_share", w.Share);
            writer.WriteNumber("lift_offs", w.LiftOffs);
        });
    }

    private static void WriteOpponent(Utf8JsonWriter writer, RunResult result, OpponentRun opponent)
    {
        writer.WriteStartObject("opponent");
        writer.WriteString("name", opponent.Robot.Name);
        writer.WriteString("limited_by", BindingTable.PartKey(opponent.Answers.LimitedBy));
        foreach (Answer answer in AnswerCatalogue.All.Where(a => a.IsToldOfOpponent))
        {
            CommandJson.WriteNumber(writer, answer.Key, answer.OfOpponent(result));
        }

        ChatterJson.Write(writer, ChatterVerdict.OfRun(result.Status, opponent.Answers));
        WriteHops(writer, opponent.Hops);
        WriteLimits(writer, "limits", opponent.Limits);
        writer.WriteEndObject();
    }
}
