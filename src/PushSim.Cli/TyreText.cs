using System.Globalization;
using PushSim.Analysis.Wear;
using Spectre.Console;

namespace PushSim.Cli;

/// <summary>The tyres' part of a report on the screen.</summary>
internal static class TyreText
{
    private const int MostRuns = 12;

    // Beyond this a comparison with straight driving says nothing [m].
    private const double FarthestMetres = 1e5;

    public static void Write(IAnsiConsole console, TyreAnswers answers)
    {
        if (answers.Wear is WearReport wear)
        {
            WriteWear(console, wear);
        }

        if (answers.Grip is GripSeries grip)
        {
            WriteGrip(console, grip);
        }

        if (answers.Ranking.Count > 0)
        {
            WriteRanking(console, answers.Ranking);
        }
    }

    private static void WriteWear(IAnsiConsole console, WearReport report)
    {
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("Wear of").AddColumn("in")
            .AddColumn(new TableColumn("Volume [[mm³]]").RightAligned()).AddColumn(new TableColumn("Mass [[mg]]").RightAligned()).AddColumn(new TableColumn("Tread depth [[µm]]").RightAligned());
        string match = FormattableString.Invariant($"a match, {report.MatchTime:0.#} s of this");
        foreach (WheelWear w in report.Wheels)
        {
            (string Span, double? Volume)[] rows =
            [
                ("a turn", w.PerTurn), ("a minute", w.PerMinute), (match, w.PerMatch),
                ("a metre straight", w.PerStraightMetre), ("the same, at most", w.MostPerStraightMetre),
            ];
            string name = PlainText.Of(w.Wheel);
            foreach ((string span, double? volume) in rows.Where(r => r.Volume is not null))
            {
                table.AddRow(Markup.Escape(name), span, Figure(1e9 * volume), Figure(1e6 * w.Mass(volume)), Figure(1e6 * w.Depth(volume)));
                name = "";
            }
        }

        console.Write(table);
        console.MarkupLine(Markup.Escape(Summary(report)));
        console.MarkupLine("[dim]" + Markup.Escape(WearReport.Limits) + "[/]");
    }

    /// <summary>How uneven it is, and what a turn is worth in straight metres.</summary>
    public static string Summary(WearReport report)
    {
        if (report.Unevenness is not double uneven)
        {
            return "wear: nothing wears once the manoeuvre is settled.";
        }

        WheelWear worst = report.Wheels.MaxBy(w => w.VolumeRate)!;
        string text = FormattableString.Invariant($"wear: {worst.Wheel} wears most, {uneven:0.00} times the mean of all wheels");
        double? most = report.Wheels.Sum(w => w.MostPerStraightMetre);
        double metres = (report.PerTurn / most) ?? 0.0;
        return metres is > 0.0 and < FarthestMetres ? text + FormattableString.Invariant($"; a turn costs as much as at least {Figure(metres)} m straight ahead.") : text + ".";
    }

    private static void WriteGrip(IAnsiConsole console, GripSeries grip)
    {
        Table table = new Table().Border(TableBorder.Minimal).AddColumn(new TableColumn("After run").RightAligned())
            .AddColumn(new TableColumn("Grip of all").RightAligned()).AddColumn(new TableColumn("of each wheel").RightAligned()).AddColumn("");
        foreach (GripAfterRun r in grip.Runs.Take(MostRuns + 1))
        {
            table.AddRow(r.Run.ToString(CultureInfo.InvariantCulture), Percent(r.Grip), string.Join(", ", r.WheelGrip.Select(Percent)), r.IsCleaned ? "cleaned" : "");
        }

        console.Write(table);
        if (grip.Runs.Count > MostRuns + 1)
        {
            console.MarkupLine($"and {grip.Runs.Count - MostRuns - 1} more rows; all are in the picture and in --json");
        }

        console.MarkupLine(Markup.Escape(Summary(grip)));
        console.MarkupLine("[dim]" + Markup.Escape(GripSeries.Limits) + "[/]");
    }

    /// <summary>How many runs the grip lasts.</summary>
    public static string Summary(GripSeries grip) => grip.RunsUntilLoss is int run
        ? $"dust: grip has fallen by {Percent(grip.GripLoss)} after {run} {(run == 1 ? "run" : "runs")}."
        : $"dust: grip has not fallen by {Percent(grip.GripLoss)} within {grip.Runs[^1].Run} runs; it is {Percent(grip.Runs[^1].Grip)} of the clean tyre's.";

    private static void WriteRanking(IAnsiConsole console, IReadOnlyList<RankedTyre> ranking)
    {
        bool hasGrip = ranking.Any(r => r.Grip is not null);
        Table table = new Table().Border(TableBorder.Minimal).AddColumn("Tyre material, least worn tread first");
        foreach (string head in new[] { "Tread\n[[µm/match]]", "Lost\n[[mg/match]]", "Sliding\nfriction" })
        {
            table.AddColumn(new TableColumn(head).RightAligned());
        }

        if (hasGrip)
        {
            table.AddColumn(new TableColumn("after the\nruns").RightAligned());
        }

        table.AddColumn(new TableColumn("Buzz\n[[Hz]]").RightAligned());
        foreach (RankedTyre r in ranking.Where(r => r.Reason.Length == 0))
        {
            List<string> cells = [Markup.Escape(r.Name), Figure(1e6 * r.DepthPerMatch), Figure(1e6 * r.MassPerMatch), Figure(r.CleanFriction)];
            if (hasGrip)
            {
                cells.Add(Figure(r.Grip?.Runs[^1].Friction ?? r.CleanFriction));
            }

            cells.Add(r.Answers?.Chatter is double hz ? hz.ToString("0", CultureInfo.InvariantCulture) : "");
            table.AddRow([.. cells]);
        }

        console.Write(table);
        foreach (RankedTyre r in ranking.Where(r => r.Reason.Length > 0))
        {
            console.MarkupLine("left out: " + Markup.Escape(PlainText.Of($"{r.Name}: {r.Reason}")));
        }

        console.MarkupLine("[dim]" + Markup.Escape(WearReport.Limits) + "[/]");
    }

    private static string Percent(double share) => FormattableString.Invariant($"{100.0 * share:0.#} %");

    // Three digits, never an exponent.
    private static string Figure(double? value)
    {
        if (value is not double v || !double.IsFinite(v))
        {
            return "-";
        }

        int decimals = v == 0.0 ? 0 : Math.Clamp(2 - (int)Math.Floor(Math.Log10(Math.Abs(v))), 0, 7);
        return v.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
