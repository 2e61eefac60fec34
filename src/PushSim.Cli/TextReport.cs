using System.Globalization;
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

    private static IAnsiConsole Console(TextWriter output)
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

    private static Table AnswerTable(RunResult result)
    {
        RunAnswers a = result.Answers;
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("Answer").AddColumn(new TableColumn("Value").RightAligned()).AddColumn("Unit");
        Row("pull, breakaway peak", a.PullBreakaway, "N", "0.00");
        Row("pull, steady", a.PullPlateau, "N", "0.00");
        Row("top speed", a.TopSpeed, "m/s", "0.00");
        Row("time to 90 % of it", a.TimeTo90PercentSpeed, "s", "0.000");
        Row("stopping distance", a.StopDistance, "m", "0.000");
        Row("yaw rate", a.YawRate, "rad/s", "0.00");
        Row("effective track ratio", a.EffectiveTrackRatio, "1", "0.000");
        Row("scrub moment", a.ScrubMoment, "N m", "0.000");
        Row("chatter", a.Chatter, "Hz", "0");
        Row("tyre wear, all wheels", a.Wear * 1e9, "mm³", "0.000");
        Row("furthest from the start", a.Travel, "m", "0.0000");
        Row("peak battery current", a.PeakBatteryCurrent, "A", "0.0");
        Row("lowest battery voltage", a.LowestBatteryVoltage, "V", "0.00");
        Row("hottest winding", a.PeakWindingTemperature, "°C", "0");
        Row("charge used", a.ChargeUsed / 3.6, "mA h", "0.00");
        return table;

        void Row(string name, double? value, string unit, string format)
        {
            if (value is { } number)
            {
                table.AddRow(name, number.ToString(format, CultureInfo.InvariantCulture), unit);
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
