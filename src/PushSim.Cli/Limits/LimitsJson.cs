using PushSim.Analysis.Limits;
using PushSim.Binding;
using PushSim.Words.Designs;
using PushSim.Words.Limits;

namespace PushSim.Cli.Limits;

/// <summary>The limits as one JSON document.</summary>
internal static class LimitsJson
{
    public static string Of(IReadOnlyList<ComparedDesign> designs, RunResult? run) => CommandJson.Write(writer =>
    {
        CommandJson.WriteHead(writer, "limits", LimitsText.Verdict(designs), LimitsText.Warnings(designs));
        Write(writer, designs[0].Limits!);
        CommandJson.WriteRows(writer, "variants", designs.Skip(1), d =>
        {
            writer.WriteString("name", d.Label);
            writer.WriteString("verdict", LimitVerdict.Of(d.Limits!));
            CommandJson.WriteTexts(writer, "warnings", LimitWarnings.Of(d.Limits!));
            Write(writer, d.Limits!);
        });
        WriteRunBindings(writer, run);
    });

    // All that the limits of one design say
    private static void Write(Utf8JsonWriter writer, LimitResult r)
    {
        writer.WriteString("scenario", r.Scenario.Name);
        writer.WriteString("robot", r.Scenario.Robot.Name);
        Number(writer, "throttle_ratio", r.Now.Condition.Throttle);
        Number(writer, "hook_height_m", r.Hook.Height);
        WriteState(writer, r.Now);
        Number(writer, "push_per_gram_n", r.Now.Pull / (1000.0 * r.Scenario.Robot.Chassis.Mass));
        Number(writer, "shove_push_n", r.OwnPush);
        Number(writer, "opponent_push_n", r.OpponentPush);
        foreach (LimitOutput output in Enum.GetValues<LimitOutput>().Where(o => o != LimitOutput.Pull))
        {
            Number(writer, LimitWords.Key(output), r.Outputs.TryGetValue(output, out double value) ? value : null);
        }

        WriteGains(writer, r);
        CommandJson.WriteRows(writer, "states", r.States, s =>
        {
            writer.WriteString("name", LimitWords.Of(s.Kind));
            Number(writer, "winding_temperature_degc", s.Condition.WindingTemperature);
            Number(writer, "charge_ratio", s.Condition.Charge);
            WriteState(writer, s);
        });
        WriteWheels(writer, r);
        WriteCurve(writer, "curve", r.Total);
        CommandJson.WriteRows(writer, "axles", r.Axles, a =>
        {
            writer.WriteString("name", LimitWords.Of(a));
            WriteCurve(writer, "curve", a.Curve);
        });
        WriteRatio(writer, r.Ratio);
        ThrottleJson.Write(writer, "best_throttle", r.BestThrottle);
        WriteWirings(writer, r);
        WriteMatch(writer, r.Match);
    }

    private static void WriteState(Utf8JsonWriter writer, LimitState s)
    {
        Number(writer, "motor_force_n", s.MotorForce);
        Number(writer, "traction_force_n", s.TractionPeak);
        Number(writer, "traction_peak_force_n", s.TractionPeak);
        Number(writer, "traction_sliding_force_n", s.TractionSliding);
        writer.WriteString("binding", BindingTable.PartKey(s.Binding));
        CommandJson.WriteRows(writer, "bound_by", s.Bound, b =>
        {
            writer.WriteString("limit", BindingTable.Key(b.Kind));
            Number(writer, "gain_percent", b.GainPercent);
        });
        writer.WriteBoolean("held_by_series_wiring", s.Bound.Any(b => b.Kind == BindingKind.Series));
        Number(writer, "crossing_speed_m_per_s", s.CrossingSpeed);
        Number(writer, "margin_n", s.MotorForce - s.TractionPeak);
        Number(writer, "margin_ratio", s.MotorForce / s.TractionPeak);
        writer.WriteString("pull_status", s.Status switch { PullStatus.Found => "found", PullStatus.RearsUp => "rears up", _ => "not found" });
        Number(writer, "pull_n", s.Pull);
        Number(writer, "rears_up_at_n", s.RearsUpAt);
        Number(writer, "top_speed_m_per_s", s.TopSpeed);
        Number(writer, "stall_voltage_v", s.StallVoltage);
        Number(writer, "stall_current_a", s.StallCurrent);
    }

    private static void WriteGains(Utf8JsonWriter writer, LimitResult r) => CommandJson.WriteRows(writer, "gains", r.Gains, g =>
    {
        writer.WriteString("input", LimitWords.Key(g.Input));
        writer.WriteString("output", LimitWords.Key(g.Output));
        Number(writer, "base", g.Base);
        Number(writer, "changed", g.Changed);
        Number(writer, "change_percent", g.ChangePercent);
        Number(writer, "slope_per_unit_factor", g.Slope);
        Number(writer, "slope_percent", g.SlopePercent);
    });

    private static void WriteWheels(Utf8JsonWriter writer, LimitResult r) => CommandJson.WriteRows(writer, "wheels", r.Wheels, w =>
    {
        writer.WriteString("name", w.Name);
        writer.WriteBoolean("driven", w.IsDriven);
        Number(writer, "load_n", w.Load);
        Number(writer, "rest_load_n", w.RestLoad);
        Number(writer, "motor_force_n", w.MotorForce);
        Number(writer, "traction_peak_force_n", w.PeakForce);
        Number(writer, "traction_sliding_force_n", w.SlidingForce);
        Number(writer, "force_n", w.Force);
        Number(writer, "surface_speed_m_per_s", w.SpinSpeed);
        writer.WriteString("binding", w.Binding is BindingKind kind ? BindingTable.Key(kind) : LimitTables.Unbound(r.Now, w));
    });

    private static void WriteWirings(Utf8JsonWriter writer, LimitResult r) => CommandJson.WriteRows(writer, "wiring", r.Wirings, c =>
    {
        writer.WriteString("wiring", LimitWords.Of(c.Wiring));
        writer.WriteString("case", LimitWords.Of(c.Case));
        writer.WriteString("wheel", c.Wheel);
        Number(writer, "pull_n", c.Pull);
        CommandJson.WriteRows(writer, "motors", c.Motors, m =>
        {
            writer.WriteString("drive", m.Drive);
            Number(writer, "current_a", m.Current);
            Number(writer, "power_w", m.Power);
            Number(writer, "power_share", m.PowerShare);
            Number(writer, "force_n", m.Force);
            Number(writer, "surface_speed_m_per_s", m.SurfaceSpeed);
        });
    });

    private static void WriteRunBindings(Utf8JsonWriter writer, RunResult? run) => CommandJson.WriteRows(writer, "run_binding", run?.Bindings ?? [], b =>
    {
        writer.WriteString("wheel", run!.Scenario.Robot.Wheels[b.Wheel].Name);
        Number(writer, "impulse_n_s", b.Impulse(run.Time[^1] - run.Time[0]));
        Shares(writer, "time_share", b.TimeShare);
        Shares(writer, "impulse_share", b.ImpulseShare);
    });

    private static void WriteCurve(Utf8JsonWriter writer, string key, ForceCurve curve)
    {
        writer.WriteStartObject(key);
        CommandJson.WriteNumbers(writer, "speed_m_per_s", curve.Speed);
        CommandJson.WriteNumbers(writer, "motor_force_n", curve.Motor);
        CommandJson.WriteNumbers(writer, "traction_peak_force_n", curve.Peak);
        CommandJson.WriteNumbers(writer, "traction_sliding_force_n", curve.Sliding);
        CommandJson.WriteTexts(writer, "binding", curve.Binding.Select(kind => BindingTable.PartKey(kind)));
        writer.WriteEndObject();
    }

    private static void WriteRatio(Utf8JsonWriter writer, RatioCurve? ratio)
    {
        if (ratio is null)
        {
            writer.WriteNull("ratio");
            return;
        }

        writer.WriteStartObject("ratio");
        Number(writer, "mean_ratio", ratio.MeanRatio);
        Number(writer, "best_factor_for_pull", ratio.BestForPull);
        Number(writer, "best_factor_for_dash", ratio.BestForDash);
        CommandJson.WriteNumbers(writer, "ratio_factor", [.. ratio.Points.Select(p => p.Factor)]);
        CommandJson.WriteNumbers(writer, "pull_n", [.. ratio.Points.Select(p => p.Pull)]);
        CommandJson.WriteNumbers(writer, "launch_time_s", [.. ratio.Points.Select(p => p.DashTime)]);
        CommandJson.WriteNumbers(writer, "top_speed_m_per_s", [.. ratio.Points.Select(p => p.TopSpeed)]);
        writer.WriteEndObject();
    }

    private static void WriteMatch(Utf8JsonWriter writer, DutyHeat m)
    {
        writer.WriteStartObject("match");
        Number(writer, "length_s", m.Pattern.Length);
        Number(writer, "push_s", m.Pattern.Push);
        Number(writer, "dash_s", m.Pattern.Dash);
        Number(writer, "turn_s", m.Pattern.Turn);
        Number(writer, "rest_s", m.Pattern.Rest);
        Number(writer, "peak_winding_temperature_degc", m.PeakWinding);
        Number(writer, "winding_room_k", m.WindingRoom);
        Number(writer, "winding_passes_limit_at_s", m.Overheating?.Time);
        Number(writer, "stall_time_to_limit_s", m.StallTimeToLimit);
        Number(writer, "fold_back_at_s", m.FoldBackAt);
        Number(writer, "least_limit_share", m.LeastLimitShare);
        Number(writer, "lowest_battery_voltage_v", m.LowestVoltage);
        Number(writer, "charge_used_a_s", m.ChargeUsed);
        Number(writer, "charge_share", m.ChargeShare);
        writer.WriteBoolean("runs_empty", m.RunsEmpty);
        writer.WriteEndObject();
    }

    private static void Shares(Utf8JsonWriter writer, string key, IReadOnlyList<double> shares)
    {
        writer.WriteStartObject(key);
        for (int k = 0; k < shares.Count; k++)
        {
            Number(writer, BindingTable.WheelKey((BindingKind)k), shares[k]);
        }

        writer.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter writer, string key, double? value) => CommandJson.WriteNumber(writer, key, value);
}
