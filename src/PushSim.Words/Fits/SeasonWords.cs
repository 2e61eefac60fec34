using PushSim.Analysis.Season;
using PushSim.Analysis.Statistics;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>What a season of pulls tells, in words, as a card and in tables.</summary>
public static class SeasonWords
{
    /// <summary>How the fit was made.</summary>
    public const string Method = "Logarithms of friction by restricted maximum likelihood: a mean for each tyre and state of the floor, a slope over the load where loads differ, days as a random effect, scatter pooled; 95 % intervals by Student with Satterthwaite's degrees of freedom.";

    // Pulls after which a card tells what is left of a fading series [1].
    private const double Usual = 10.0;

    /// <summary>The answer, a sentence or two.</summary>
    /// <param name="fit">The season.</param>
    /// <param name="isSliding">Whether it is of sliding forces.</param>
    public static string Verdict(SeasonFit fit, bool isSliding)
    {
        SeasonGroup best = Ranked(fit)[0];
        return $"{Name(best)} {(isSliding ? "grips best sliding" : "holds best")}: {Headline(best)}.{Ahead(fit)}";
    }

    // The best against the next one on the days that both share; empty where these are too few
    private static string Ahead(SeasonFit fit)
    {
        SeasonGroup[] ranked = Ranked(fit);
        return ranked.Length < 2 || SeasonPair.Of(ranked[0], ranked[1]) is not { } pair ? ""
            : Text($" On the {pair.Days} days of both it grips {Percent(pair.Ratio.Value)} than {Name(pair.Second)} ({Percent(pair.Ratio.Low)} to {Percent(pair.Ratio.High)}){(pair.IsToldApart ? "" : ": not told apart")}.");
    }

    /// <summary>The card.</summary>
    /// <param name="fit">The season.</param>
    /// <param name="isSliding">Whether it is of sliding forces.</param>
    /// <param name="robots">What changed about robots, in sentences without end.</param>
    public static AnswerCard Of(SeasonFit fit, bool isSliding, IReadOnlyList<string> robots)
    {
        SeasonGroup[] ranked = Ranked(fit);
        SeasonGroup? thin = ranked.OrderBy(g => g.Days).ThenBy(g => g.Pulls).FirstOrDefault(g => g.Days < 3);
        return new AnswerCard(Verdict(fit, isSliding))
        {
            Facts = Changed(fit, robots),
            Numbers = [.. ranked.Take(AnswerCard.MostNumbers).Select(g => new CardNumber(Name(g), Text($"{g.Friction.Value:0.000}"), g.Fading is { } f ? "fresh, " + Left(g, f) : isSliding ? "sliding" : "lets go", IntervalWords.Of(g.Friction)))],
            Sure = Sure(fit),
            Next = thin is null ? "" : $"pull {Name(thin)} on {(thin.Days == 1 ? "another day or two" : "another day")}: it was pulled on {thin.Days} so far.",
            IsCautioned = false,
        };
    }

    /// <summary>What changed since last time, in one sentence.</summary>
    /// <param name="fit">The season.</param>
    /// <param name="robots">What changed about robots, in sentences without end.</param>
    public static string Changed(SeasonFit fit, IReadOnlyList<string> robots)
    {
        IReadOnlyList<SeasonChange> changes = SeasonChange.Of(fit);
        if (changes.Count == 0 || changes[0].Day == 0 || changes.All(c => c.IsNew))
        {
            return robots.Count > 0 ? "Since last time: " + string.Join(", ", robots) + "." : "";
        }

        List<string> parts = [.. robots];
        parts.AddRange(changes.Where(c => c.IsSeen).OrderByDescending(c => Math.Abs(Math.Log(c.Ratio.Value))).Take(3).Select(c => Text($"{Name(c.Group)} grips {Percent(c.Ratio.Value)} ({Percent(c.Ratio.Low)} to {Percent(c.Ratio.High)})")));
        parts.AddRange(changes.Where(c => c.IsNew).Take(2).Select(c => $"{Name(c.Group)} is new"));
        int same = changes.Count(c => !c.IsNew && !c.IsSeen);
        if (same > 0)
        {
            parts.Add(changes.Any(c => c.IsSeen) || parts.Count > 0 ? $"{(same == 1 ? "one" : same.ToString(CultureInfo.InvariantCulture))} as before" : "all as before, within what days differ");
        }

        return $"What changed on {Date(changes[0].Day)}: {string.Join(", ", parts)}.";
    }

    /// <summary>All groups in a table.</summary>
    /// <param name="fit">The season.</param>
    /// <param name="caption">What it is of.</param>
    public static AnswerTable Table(SeasonFit fit, string caption)
    {
        AnswerTable table = new AnswerTable(caption).AddColumn("tyre").AddColumn("floor").AddNumberColumn("friction").AddNumberColumn("95 % interval").AddNumberColumn("load").AddNumberColumn("pulls").AddNumberColumn("days").AddColumn("fading");
        foreach (SeasonGroup g in Ranked(fit))
        {
            table.AddRow(g.Tyre, g.State, Text($"{g.Friction.Value:0.000}"), IntervalWords.Of(g.Friction), Text($"{g.Load:0.0} N"), g.Pulls.ToString(CultureInfo.InvariantCulture), g.Days.ToString(CultureInfo.InvariantCulture), g.Fading is { } f ? Left(g, f) : "");
        }

        foreach (SeasonGroup g in fit.Groups.Where(g => g.Fading is not null))
        {
            Fading f = g.Fading!;
            table.AddRemark(Text($"{Name(g)} fades over {f.Scale.Value:0.#} {Unit(f)} ({IntervalWords.Of(f.Scale, "0.#")}) to {100.0 * f.Fouled.Value:0} % of the fresh value ({IntervalWords.Of(new Interval(f.Fouled.Value * 100.0, f.Fouled.Low * 100.0, f.Fouled.High * 100.0), "0")} %)."));
        }

        foreach ((string tyre, Interval p) in fit.LoadExponents.Where(e => e.Value.Low > 0.0 || e.Value.High < 0.0))
        {
            table.AddRemark(Text($"{tyre}: friction goes as load to the power {-p.Value:0.00} ({IntervalWords.Of(new Interval(-p.Value, -p.High, -p.Low), "0.00")})."));
        }

        return table.AddRemark(Sure(fit)).AddRemark(Method, isAside: true);
    }

    /// <summary>A day's number as a date; empty if no date was written.</summary>
    /// <param name="day">The day [1].</param>
    public static string Date(int day) => day > 0 ? DateOnly.FromDayNumber(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "";

    /// <summary>Tyre and state.</summary>
    public static string Name(SeasonGroup g) => g.State.Length == 0 ? g.Tyre : $"{g.Tyre}, {g.State}";

    // a fading series by its fresh value and what is left
    private static string Headline(SeasonGroup g) => g.Fading is { } f
        ? Text($"{g.Friction.Value:0.00} fresh ({IntervalWords.Of(g.Friction, "0.00")}), {Left(g, f)}")
        : Text($"{g.Friction.Value:0.00} ({IntervalWords.Of(g.Friction, "0.00")})");

    private static string Left(SeasonGroup g, Fading f)
    {
        double n = Math.Min(f.Longest, Usual);
        return Text($"{g.Friction.Value * f.Left(n):0.00} after {n:0.#} {Unit(f)}");
    }

    private static string Unit(Fading f) => f.IsInMetres ? "m" : "pulls";

    private static SeasonGroup[] Ranked(SeasonFit fit) => [.. fit.Groups.OrderByDescending(g => g.Friction.Value)];

    private static string Sure(SeasonFit fit) => double.IsNaN(fit.DaySpread)
        ? Text($"Pulls of one day differ by {100.0 * fit.Scatter:0.#} %. How much days differ is not known from one day: these intervals do not hold it.")
        : Text($"Pulls of one day differ by {100.0 * fit.Scatter:0.#} %, days by {100.0 * fit.DaySpread:0.#} %.");

    private static string Percent(double ratio) => Text($"{Math.Abs(100.0 * (ratio - 1.0)):0} % {(ratio < 1.0 ? "less" : "more")}");
}
