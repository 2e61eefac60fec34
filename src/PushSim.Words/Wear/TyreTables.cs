using PushSim.Analysis.Wear;
using PushSim.Words.Runs;
using PushSim.Words.Tables;

namespace PushSim.Words.Wear;

/// <summary>What a run says about its tyres, in tables for screen and page.</summary>
public static class TyreTables
{
    private const int MostRuns = 12;

    // Beyond this a comparison with straight driving says nothing [m].
    private const double FarthestMetres = 1e5;

    // Beyond this the figure itself says nothing, since next to nothing slides straight ahead [m].
    private const double LongWay = 100.0;

    /// <summary>Wear of each wheel.</summary>
    public static AnswerTable Of(WearResult report)
    {
        AnswerTable table = new AnswerTable("Wear of").AddColumn("Wheel").AddColumn("in").AddNumberColumn("Volume [mm³]").AddNumberColumn("Mass [mg]").AddNumberColumn("Tread depth [µm]");
        string match = Text($"a match, {report.MatchTime:0.#} s of this");
        foreach (WheelWear w in report.Wheels)
        {
            (string Span, double? Volume)[] rows =
            [
                ("a turn", w.PerTurn), ("a minute", w.PerMinute), (match, w.PerMatch),
                ("a metre straight", w.PerStraightMetre), ("the same, at most", w.MostPerStraightMetre),
            ];
            foreach ((string span, double? volume) in rows.Where(r => r.Volume is not null))
            {
                table.AddRow(w.Wheel, span, Figure(1e9 * volume), Figure(1e6 * w.Mass(volume)), Figure(1e6 * w.Depth(volume)));
            }
        }

        return table.AddRemarks(WearWords.PerWork(report)).AddRemark(Summary(report)).AddRemark(WearWords.Limits, isAside: true);
    }

    /// <summary>How uneven it is, and what a turn is worth in straight metres.</summary>
    public static string Summary(WearResult report)
    {
        if (report.Unevenness is not double uneven)
        {
            return "wear: nothing wears once the manoeuvre is settled.";
        }

        WheelWear worst = report.Wheels.MaxBy(w => w.VolumeRate)!;
        string text = Text($"wear: {worst.Wheel} wears most, {uneven:0.00} times the mean of {(report.UnknownWheels.Count == 0 ? "all wheels" : $"those whose tyres have a wear number (not {string.Join(", ", report.UnknownWheels)})")}");
        double? most = report.Wheels.Sum(w => w.MostPerStraightMetre);
        double metres = (report.PerTurn / most) ?? 0.0;
        return metres is > 0.0 and < FarthestMetres ? text + Text($"; a turn costs {(metres > LongWay ? $"more than {LongWay:0}" : $"as much as at least {Figure(metres)}")} m straight ahead.") : text + ".";
    }

    /// <summary>Grip over many runs.</summary>
    public static AnswerTable Of(GripSeries grip)
    {
        AnswerTable table = new AnswerTable("After run").AddNumberColumn("Run").AddNumberColumn("Grip of all").AddNumberColumn("of each wheel").AddColumn("Tread");
        foreach (GripAfterRun r in grip.Runs.Take(MostRuns + 1))
        {
            table.AddRow(r.Run.ToString(CultureInfo.InvariantCulture), Percent(r.Grip), string.Join(", ", r.WheelGrip.Select(Percent)), r.IsCleaned ? "cleaned" : "");
        }

        if (grip.Runs.Count > MostRuns + 1)
        {
            table.AddRemark($"and {grip.Runs.Count - MostRuns - 1} more rows; all are in the picture and in --json");
        }

        return table.AddRemark(Summary(grip)).AddRemark(WearWords.GripLimits, isAside: true);
    }

    /// <summary>How many runs the grip lasts.</summary>
    public static string Summary(GripSeries grip) => grip.RunsUntilLoss is int run
        ? $"dust: grip has fallen by {Percent(grip.GripLoss)} after {run} {(run == 1 ? "run" : "runs")}."
        : $"dust: grip has not fallen by {Percent(grip.GripLoss)} within {grip.Runs[^1].Run} runs; it is {Percent(grip.Runs[^1].Grip)} of the clean tyre's.";

    /// <summary>Grip of the materials over runs without wiping; null where of none it is known.</summary>
    public static AnswerTable? GripOf(IReadOnlyList<RankedTyre> ranking) => GripWords.Table([.. ranking.Where(r => r.Stop is null).Select(r => (r.Name, r.Life))]);

    /// <summary>Materials, the least worn tread first.</summary>
    public static AnswerTable Of(IReadOnlyList<RankedTyre> ranking)
    {
        AnswerTable table = new AnswerTable("Tyre material, least worn tread first").AddColumn("Material")
            .AddNumberColumn("Tread [µm/match]").AddNumberColumn("Lost [mg/match]").AddNumberColumn("Sliding friction").AddNumberColumn("Buzz [Hz]");
        foreach (RankedTyre r in ranking.Where(r => r.Stop is null))
        {
            table.AddRow(r.Name, Figure(1e6 * r.DepthPerMatch), Figure(1e6 * r.MassPerMatch), Figure(r.CleanFriction), ChatterWords.Cell(r.Chatter));
        }

        if (ranking.All(r => r.Life is null))
        {
            table.AddRemark("Grip over runs is not known: the floor has no dust (floor.dust), or no tyre has a fouling distance.", isAside: true);
        }

        if (ranking.Any(r => r.IsCut))
        {
            table.AddRemark($"too much work to look closer at {string.Join(", ", ranking.Where(r => r.IsCut).Select(r => r.Name))}: chatter or grip over runs is left out there; --closer takes the time");
        }

        table.AddRemarks(ranking.Where(r => r.Stop is not null).Select(r => $"left out: {r.Name}: {RunWords.Cause(r.Stop)}"));

        return table;
    }

    /// <summary>Which material wears least, which grips most, in a sentence; empty where none could be run.</summary>
    public static string Summary(IReadOnlyList<RankedTyre> ranking)
    {
        RankedTyre[] ran = [.. ranking.Where(r => r.Stop is null)];
        RankedTyre? least = ran.Where(r => r.DepthPerMatch is not null).MinBy(r => r.DepthPerMatch);
        RankedTyre? most = ran.Where(r => r.CleanFriction is not null).MaxBy(r => r.CleanFriction);
        string[] told =
        [
            .. least is null ? Array.Empty<string>() : [$"{least.Name} wears least ({Figure(1e6 * least.DepthPerMatch)} µm a match)"],
            .. most is null ? Array.Empty<string>() : [$"{most.Name} grips most ({Figure(most.CleanFriction)})"],
        ];
        return told.Length == 0 ? "" : $"Of {ran.Length} materials {string.Join(", ", told)}.";
    }

    private static string Percent(double share) => Text($"{100.0 * share:0.#} %");

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
