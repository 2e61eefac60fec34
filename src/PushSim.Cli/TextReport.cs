using System.Globalization;
using PushSim.Analysis;
using PushSim.Simulation;
using Spectre.Console;

namespace PushSim.Cli;

/// <summary>A run as text for a person: verdict first, then numbers, energy, warnings, cautions, files.</summary>
internal static class TextReport
{
    /// <summary>Short cautions, once per report.</summary>
    public const string Cautions =
        "Predictions are estimates. A pull or shove test stores energy: keep clear of taut tethers, wheels off the floor until ready. "
        + "Lithium batteries and stalled motors burn: charge and stop as their makers say. Weapons removed or locked. "
        + "Follow the event's and local rules.";

    private const int PlainWidth = 100;

    // Changes of the limit that are listed for each robot.
    private const int MostSpans = 8;

    // The table shows three digits [J].
    private const double LeastShownJoule = 5e-4;

    public static void Write(TextWriter output, RunResult result, double milliseconds, IReadOnlyList<string> notes, IReadOnlyList<string> files)
    {
        IAnsiConsole console = Console(output);
        if (result.Scenario.Question.Length > 0)
        {
            console.MarkupLine("[dim]" + Markup.Escape(PlainText.Of(result.Scenario.Question)) + "[/]");
        }

        console.MarkupLine("[bold]" + Markup.Escape(PlainText.Of(result.Verdict)) + "[/]");
        console.WriteLine();
        console.Write(AnswerTable(result));
        if (result.Limits.Count > 0)
        {
            console.Write(LimitTable(result));
        }

        Table energy = EnergyTable(result);
        if (energy.Rows.Count > 0)
        {
            console.Write(energy);
        }

        foreach (string warning in result.Warnings)
        {
            console.MarkupLine("warning: " + Markup.Escape(PlainText.Of(warning)));
        }

        foreach (string note in notes)
        {
            console.MarkupLine("[dim]estimate: " + Markup.Escape(PlainText.Of(note)) + "[/]");
        }

        console.MarkupLine("[dim]" + Markup.Escape(Invariant(
            $"{result.RhsEvaluations} evaluations in {result.Steps} steps, {milliseconds:0} ms; energy balance open by {result.EnergyResidualRatio:0.0e0} of what flowed")) + "[/]");
        console.MarkupLine("[dim]" + Markup.Escape(Cautions) + "[/]");
        foreach (string file in files)
        {
            // straight to the writer: a path must not be wrapped
            output.WriteLine("wrote " + file);
        }
    }

    internal static IAnsiConsole Console(TextWriter output)
    {
        bool isTerminal = ReferenceEquals(output, System.Console.Out) && !System.Console.IsOutputRedirected;
        bool hasColour = isTerminal && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = hasColour ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = hasColour ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Out = new AnsiConsoleOutput(output),
            Interactive = InteractionSupport.No,
        });
        if (!isTerminal)
        {
            console.Profile.Width = PlainWidth;
        }

        return console;
    }

    // One column of values a robot.
    private static Table AnswerTable(RunResult result)
    {
        RunAnswers a = result.Answers;
        RunAnswers? b = result.Opponent?.Answers;
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("Answer");
        if (result.Opponent is OpponentRun opponent)
        {
            table.AddColumn(new TableColumn(Markup.Escape(PlainText.Of(result.Scenario.Robot.Name))).RightAligned());
            table.AddColumn(new TableColumn(Markup.Escape(PlainText.Of(opponent.Robot.Name))).RightAligned());
        }
        else
        {
            table.AddColumn(new TableColumn("Value").RightAligned());
        }

        table.AddColumn("Unit");
        Row("ground gained", result.Shove?.GroundGained, -result.Shove?.GroundGained, "m", "0.000");
        Row("turned aside, left positive", result.Shove?.TurnedAside.First * 180.0 / Math.PI, result.Shove?.TurnedAside.Opponent * 180.0 / Math.PI, "deg", "0.0");
        Row("pull, breakaway peak", a.PullBreakaway, null, "N", "0.00");
        Row("pull, steady", a.PullPlateau, null, "N", "0.00");
        Row("push, peak", a.PushPeak, null, "N", "0.00");
        Row("push, steady", a.PushPlateau, null, "N", "0.00");
        Row("top speed", a.TopSpeed, b?.TopSpeed, "m/s", "0.00");
        Row("time to 90 % of it", a.TimeTo90PercentSpeed, b?.TimeTo90PercentSpeed, "s", "0.000");
        Row("stopping distance", a.StopDistance, b?.StopDistance, "m", "0.000");
        Row("yaw rate", a.YawRate, b?.YawRate, "rad/s", "0.00");
        Row("effective track ratio", a.EffectiveTrackRatio, b?.EffectiveTrackRatio, "1", "0.000");
        Row("scrub moment", a.ScrubMoment, b?.ScrubMoment, "N m", "0.000");
        Row("chatter", a.Chatter, b?.Chatter, "Hz", "0");
        Row("tyre wear, all wheels", a.Wear * 1e9, b?.Wear * 1e9, "mm³", "0.000");
        Row("furthest from the start", a.Travel, b?.Travel, "m", "0.0000");
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

    private static Table LimitTable(RunResult result)
    {
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("What limits the push").AddColumn(new TableColumn("from").RightAligned()).AddColumn(new TableColumn("to").RightAligned()).AddColumn("Limit");
        Add(result.Scenario.Robot.Name, result.Limits);
        Add(result.Opponent?.Robot.Name ?? "", result.Opponent?.Limits ?? []);
        return table;

        void Add(string name, IReadOnlyList<LimitSpan> limits)
        {
            foreach (LimitSpan span in limits.Take(MostSpans))
            {
                table.AddRow(Markup.Escape(PlainText.Of(name)), Invariant($"{span.From:0.00} s"), Invariant($"{span.To:0.00} s"), Verdict.Words(span.Limit));
            }

            if (limits.Count > MostSpans)
            {
                table.AddRow(Markup.Escape(PlainText.Of(name)), "", "", $"and {limits.Count - MostSpans} more changes");
            }
        }
    }

    private static Table EnergyTable(RunResult result)
    {
        double largest = result.Ledger.Count == 0 ? 0.0 : result.Ledger.Max(e => Math.Abs(e.Joule));
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("Where the energy went").AddColumn(new TableColumn("Value").RightAligned()).AddColumn("Unit");
        foreach (LedgerEntry entry in result.Ledger.Where(e => Math.Abs(e.Joule) >= Math.Max(LeastShownJoule, 1e-4 * largest)))
        {
            table.AddRow(Markup.Escape(entry.Label), entry.Joule.ToString("0.000", CultureInfo.InvariantCulture), "J");
        }

        return table;
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
