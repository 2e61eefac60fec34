using PushSim.Analysis.Fit;
using PushSim.Tyres;
using PushSim.Words.Tables;

namespace PushSim.Words.Runs;

/// <summary>A run in tables for screen and page: answers, what limits the push, where the energy went.</summary>
public static class RunTables
{
    // Changes of the limit that are listed for each robot.
    private const int MostSpans = 8;

    // The table shows three digits [J].
    private const double LeastShownJoule = 5e-4;

    /// <summary>The tables, the answers first.</summary>
    /// <param name="result">The run.</param>
    public static IEnumerable<AnswerTable> Of(RunResult result) =>
        new[] { Answers(result), LimitTable(result), EnergyTable(result) }.Where(t => t.Rows.Count > 0);

    /// <summary>What the run cost and how well its energy balance closes.</summary>
    /// <param name="result">The run.</param>
    /// <param name="milliseconds">The time it took [ms].</param>
    public static string Computation(RunResult result, double milliseconds) => Text(
        $"{result.RhsEvaluations} evaluations in {result.Steps} steps, {milliseconds:0} ms; energy balance open by {result.EnergyResidualRatio:0.0e0} of what flowed");

    // One column of values a robot.
    private static AnswerTable Answers(RunResult result)
    {
        RunAnswers a = result.Answers;
        RunAnswers? b = result.Opponent?.Answers;
        AnswerTable table = new AnswerTable("Answer").AddColumn("Quantity");
        if (result.Opponent is OpponentRun opponent)
        {
            table.AddNumberColumn(result.Scenario.Robot.Name);
            table.AddNumberColumn(opponent.Robot.Name);
        }
        else
        {
            table.AddNumberColumn("Value");
        }

        table.AddColumn("Unit");
        IEnumerable<WheelSettings> wheels = [.. result.Scenario.Robot.Wheels, .. result.Scenario.Opponent?.Robot.Wheels ?? []];
        bool isWearWhole = wheels.All(w => w.Tyre.SpecificWear > 0.0);
        Row("ground gained", result.Shove?.GroundGained, -result.Shove?.GroundGained, "m", "0.000");
        Row("turned aside, left positive", result.Shove?.TurnedAside.First * 180.0 / Math.PI, result.Shove?.TurnedAside.Opponent * 180.0 / Math.PI, "deg", "0.0");
        Row(a.IsJerk ? "pull, first jerk" : "pull, breakaway peak", a.PullBreakaway, null, "N", "0.00");
        Row(a.IsBouncing ? "pull, mean while it bounces" : "pull, steady", a.PullPlateau, null, "N", "0.00");
        MeasuredOverlay? measured = MeasuredOverlay.Of(result);
        Row("measured, breakaway peak", measured?.Breakaway, null, "N", "0.00");
        Row("measured, steady", measured?.Plateau, null, "N", "0.00");
        Row("push, peak (rough)", a.PushPeak, null, "N", a.PushPeak >= 100.0 ? "0" : "0.0");
        Row("push, steady", a.PushPlateau, null, "N", "0.00");
        Row("top speed", a.TopSpeed, b?.TopSpeed, "m/s", "0.00");
        Row("time to 90 % of it", a.TimeTo90PercentSpeed, b?.TimeTo90PercentSpeed, "s", "0.000");
        Row("time for the first metre", a.TimeToOneMetre, b?.TimeToOneMetre, "s", "0.000");
        Row("stopping distance", a.StopDistance, b?.StopDistance, "m", "0.000");
        Row("yaw rate", a.YawRate, b?.YawRate, "rad/s", "0.00");
        Row("effective track ratio", a.EffectiveTrackRatio, b?.EffectiveTrackRatio, "", "0.000");
        Row("scrub moment", a.ScrubMoment, b?.ScrubMoment, "N m", "0.000");
        Row("chatter", a.Chatter, b?.Chatter, "Hz", "0");
        Row(isWearWhole ? "tyre wear, all wheels" : "tyre wear, where known", a.Wear * 1e9, b?.Wear * 1e9, "mm³", "0.000");
        Row("furthest from the start", a.Travel, b?.Travel, "m", a.Travel < 0.01 ? "0.0000" : "0.000");
        Row("peak battery current", a.PeakBatteryCurrent, b?.PeakBatteryCurrent, "A", "0.0");
        Row("lowest battery voltage", a.LowestBatteryVoltage, b?.LowestBatteryVoltage, "V", "0.00");
        Row("hottest winding", a.PeakWindingTemperature, b?.PeakWindingTemperature, "°C", "0");
        Row("charge used", a.ChargeUsed / 3.6, b?.ChargeUsed / 3.6, "mA h", "0.00");
        return table;

        void Row(string name, double? value, double? other, string unit, string format)
        {
            if (value is null && other is null)
            {
                return;
            }

            string first = value?.ToString(format, CultureInfo.InvariantCulture) ?? "";
            string second = other?.ToString(format, CultureInfo.InvariantCulture) ?? "";
            string[] cells = b is null ? [name, first, unit] : [name, first, second, unit];
            table.AddRow(cells);
        }
    }

    private static AnswerTable LimitTable(RunResult result)
    {
        AnswerTable table = new AnswerTable("What limits the push").AddColumn("Robot").AddNumberColumn("from").AddNumberColumn("to").AddColumn("Limit");
        Add(result.Scenario.Robot.Name, result.Limits);
        Add(result.Opponent?.Robot.Name ?? "", result.Opponent?.Limits ?? []);
        return table;

        void Add(string name, IReadOnlyList<BindingSpan> limits)
        {
            foreach (BindingSpan span in limits.Take(MostSpans))
            {
                table.AddRow(name, Text($"{span.From:0.00} s"), Text($"{span.To:0.00} s"), string.Join(", then ", span.Kinds.Select(BindingTable.Words)));
            }

            if (limits.Count > MostSpans)
            {
                table.AddRow(name, "", "", $"and {limits.Count - MostSpans} more changes");
            }
        }
    }

    private static AnswerTable EnergyTable(RunResult result)
    {
        double largest = result.Ledger.Count == 0 ? 0.0 : result.Ledger.Max(e => Math.Abs(e.Joule));
        AnswerTable table = new AnswerTable("Where the energy went").AddColumn("To or from").AddNumberColumn("Value").AddColumn("Unit");
        foreach (LedgerEntry entry in result.Ledger.Where(e => Math.Abs(e.Joule) >= Math.Max(LeastShownJoule, 1e-4 * largest)))
        {
            table.AddRow(RecordWords.Energy(entry.Key), entry.Joule.ToString("0.000", CultureInfo.InvariantCulture), "J");
        }

        return table;
    }
}
