using PushSim.Words.Answers;
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
    public static IEnumerable<AnswerTable> Of(RunResult result) =>
        new[] { Answers(result), LimitTable(result), HopTable(result), EnergyTable(result) }.Where(t => t.Rows.Count > 0);

    /// <summary>What the run cost and how well its energy balance closes.</summary>
    /// <param name="result">The run.</param>
    /// <param name="cost">What it cost.</param>
    /// <param name="isTimed">Whether times are told; without them the text is the same each time.</param>
    public static string Computation(RunResult result, RunCost cost, bool isTimed = true) => Text(
        $"{result.RhsEvaluations} evaluations in {result.Steps} steps{(isTimed ? Text($", {cost.SimulationMilliseconds:0} ms") : "")}; energy balance open by {result.EnergyResidualRatio:0.0e0} of what flowed")
        + (cost.TotalEvaluations > result.RhsEvaluations ? Text($"; with the closer look {cost.TotalEvaluations} evaluations{(isTimed ? Text($", {cost.TotalMilliseconds / 1e3:0.0} s") : "")}") : "");

    // One column of values a robot.
    private static AnswerTable Answers(RunResult result)
    {
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
        foreach (Answer answer in AnswerCatalogue.All.Where(a => !a.IsForScripts))
        {
            (double? first, double? second) = (answer.Of(result), answer.OfOpponent(result));
            if (first is not null || second is not null)
            {
                string[] values = result.Opponent is null ? [answer.Shown(first)] : [answer.Shown(first), answer.Shown(second)];
                table.AddRow([answer.WordsIn(result), .. values, answer.Unit]);
                if (answer is { Unit: "N", Key: not "push_peak_n" })
                {
                    // what a scale shows
                    table.AddRow(["  the same", .. (result.Opponent is null ? new[] { first } : [first, second]).Select(v => v is double f ? Phrase.Gram(f) : ""), "gf"]);
                }
            }
        }

        table = result.Start is { } start ? table.AddRemark(StartWords.Of(start, result.Scenario.Robot.Name, result.Opponent!.Robot.Name)) : table;
        table = result.Bump is { } bump ? table.AddRemark(RunWords.Bump(bump, result.Scenario.Contact.Restitution)) : table;
        string[] names = [result.Scenario.Robot.Name, result.Opponent?.Robot.Name ?? ""];
        return table.AddRemarks(result.Throttles.Select((t, k) => ThrottleWords.Best(t, names[k])).Where(t => t.Length > 0));
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

    private static AnswerTable HopTable(RunResult result)
    {
        AnswerTable table = new AnswerTable("Wheels that hop") { IsFolded = true }.AddColumn("Robot").AddColumn("Wheel").AddNumberColumn("off the floor since the touch").AddNumberColumn("times");
        Add(result.Scenario.Robot.Name, result.Hops);
        Add(result.Opponent?.Robot.Name ?? "", result.Opponent?.Hops);
        return table;

        void Add(string name, PushHops? hops)
        {
            foreach (WheelAir w in hops?.Wheel is null ? [] : hops.Wheels)
            {
                table.AddRow(name, w.Wheel, Text($"{100.0 * w.Share:0.0} %"), Text($"{w.LiftOffs}"));
            }
        }
    }

    private static AnswerTable EnergyTable(RunResult result)
    {
        double largest = result.Ledger.Count == 0 ? 0.0 : result.Ledger.Max(e => Math.Abs(e.Joule));
        AnswerTable table = new AnswerTable("Where the energy went") { IsFolded = true }.AddColumn("To or from").AddNumberColumn("Value").AddColumn("Unit");
        foreach (LedgerEntry entry in result.Ledger.Where(e => Math.Abs(e.Joule) >= Math.Max(LeastShownJoule, 1e-4 * largest)))
        {
            table.AddRow(EnergyWords.Of(entry.Key), entry.Joule.ToString("0.000", CultureInfo.InvariantCulture), "J");
        }

        return table;
    }
}
