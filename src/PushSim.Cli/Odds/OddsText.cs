using PushSim.Cli.Matches;
using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Odds;

/// <summary>Odds as text for a person.</summary>
internal static class OddsText
{
    public static void Write(TextWriter output, OddsResult r, IReadOnlyList<string> files, bool isDetailed) => new CommandAnswer(Card(r), r.Verdict)
    {
        Tables = Tables(r), Warnings = r.Warnings, Notes = r.Inputs.Told.Count == 0 && r.Tally.Matches > 0 ? [OddsWords.TooFew(r.Tally)] : [], Asides = [Computation(r, r.MatchesPerSecond)], Files = files,
    }.Write(output, isDetailed);

    public static AnswerCard Card(OddsResult r) => OddsCard.Of(r.Robot, r.Opponent, r.Tally, r.Told, r.Pairs, r.Compared);

    /// <summary>The tables, for screen and page.</summary>
    public static IReadOnlyList<AnswerTable> Tables(OddsResult r) =>
    [
        .. r.Others.Count == 0 ? Array.Empty<AnswerTable>() : [OddsTables.Designs([(r.Own.Label, r.Tally), .. r.Others.Select(o => (o.Label, o.Tally))], r.Comparisons)],
        .. OddsTables.Of(r.Robot, r.Opponent, r.Tally, r.Told, [.. r.Effects.Select(e => e with { Key = r.Label(e.Key) })], r.Start, r.Pairs, r.Throttles), .. r.Learned is LearnedOdds learned ? LearnWords.Tables(learned) : [], Drawn(r),
    ];

    public static string Computation(OddsResult r, double? rate = null) => OddsWords.Computation(r.Seed, r.Contest, rate, r.Effects.Count > 0, r.Tally.Matches);

    private static AnswerTable Drawn(OddsResult r)
    {
        IReadOnlyList<TolerancedValue> values = r.Own.Values;
        AnswerTable table = new AnswerTable("Drawn") { IsFolded = true }.AddColumn("Value").AddNumberColumn("Middle").AddNumberColumn("Tolerance").AddColumn("Unit").AddColumn("Spread").AddColumn("From");
        foreach (TolerancedValue v in values)
        {
            string part = v.Part.Length == 0 ? "" : ", " + v.Part;
            (double scale, string unit) = UsualTolerances.Read(v);
            table.AddRow(r.Label(v.Key) + part, PlainNumber.Of(scale * v.Middle, 4), ToleranceText.Of(scale * v.Middle, scale * v.Tolerance, v.Spread, 3), unit, v.Spread.ToString().ToLowerInvariant(), v.IsOfClass ? "class" : v.IsOfShelf ? "shelf" : "file");
        }

        return values.Any(v => v.IsOfClass) ? table.AddRemark("class: usual for its kind, taken because no tolerance is stated; \"exact\" behind a value says that it has none", isAside: true) : table;
    }
}
