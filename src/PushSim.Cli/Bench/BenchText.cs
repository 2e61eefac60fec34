using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Words.Fits;

namespace PushSim.Cli.Bench;

/// <summary>The card at the end of a bench.</summary>
internal static class BenchText
{
    public static void Write(TextWriter output, BenchRequest request, BenchResult result)
    {
        WatchedPull[] pulls = [.. result.Pulls.Select(p => p.Pull)];
        List<CardNumber> numbers = [];
        Add("sliding force", BenchWords.Sliding(pulls));
        Add("peak force", BenchWords.Peaks(pulls));
        string[] again = [.. pulls.Where(p => p.Flaw != PullFlaw.None).GroupBy(p => p.Flaw).Select(g => $"{g.Count()} {BenchWords.Word(g.Key)}")];
        string log = result.Log is null ? "" : GarageFolder.Shown(result.Log);
        string[]? load = request.Robot is { } robot ? ["--robot", CommandLine.File(robot)] : request.Load is double newton ? ["--load", FormattableString.Invariant($"{newton:0.##} N")] : null;
        bool hasLog = log.Length > 0 && result.Readings > 0;
        var card = new AnswerCard(result.Verdict)
        {
            Facts = string.Join(" ", new[]
            {
                FormattableString.Invariant($"{result.Readings} readings in {Time(result.Seconds)}{(result.Strays > 0 ? $", {result.Strays} stray {(result.Strays == 1 ? "line" : "lines")}" : "")}."),
                again.Length > 0 ? $"To do again: {string.Join(", ", again)}." : "",
                result.Gaps.Count > 0 ? $"{result.Gaps.Count} {(result.Gaps.Count == 1 ? "gap" : "gaps")} of {Time(result.Gaps.Sum(g => g.To - g.From))} in all." : "",
                result.Noted > 0 ? $"{result.Noted} {(result.Noted == 1 ? "pull" : "pulls")} noted in {GarageFolder.Shown(result.Notebook!)}." : "",
            }.Where(t => t.Length > 0)),
            HasPage = false,
            Numbers = numbers,
            Sure = numbers.Count > 0 && numbers[0].Note.Length > 0 ? "the interval holds the mean of such pulls in 95 of 100 benches, from their scatter; calibration and day come on top." : numbers.Count > 0 ? "one pull shows no scatter: pull six times." : "",
            Next = hasLog && load is null ? "put what lies on the tested tyres on a scale, and fit the log with --load." : "",
            Suggestions = hasLog && load is not null ? [new Suggestion("Friction", CommandLine.Of("fit", [CommandLine.File(log), .. load], request.Output.Garage))] : [],
        };
        new ScreenReport(card, result.Verdict) { Warnings = result.Warnings, Files = log.Length > 0 ? [log] : [], Tables = [Table(result)] }.Write(output, request.Output.Details);

        void Add(string label, Interval? force)
        {
            if (force is { } f)
            {
                numbers.Add(new CardNumber(label, FormattableString.Invariant($"{f.Value:0.000} N"), ForceWords.Scale(f.Value), f.IsBounded ? FormattableString.Invariant($"{f.Low:0.000} to {f.High:0.000} N") : ""));
            }
        }
    }

    private static AnswerTable Table(BenchResult result)
    {
        AnswerTable table = new AnswerTable("Pulls").AddNumberColumn("pull").AddNumberColumn("at, s").AddNumberColumn("peak, N").AddNumberColumn("sliding, N").AddNumberColumn("± N").AddColumn("again");
        for (int i = 0; i < result.Pulls.Count; i++)
        {
            (double time, WatchedPull pull) = result.Pulls[i];
            Interval? sliding = pull.Flaw == PullFlaw.None ? pull.Pull?.Plateau : null;
            table.AddRow(FormattableString.Invariant($"{i + 1}"), FormattableString.Invariant($"{time:0.0}"), Number(pull.Peak), Number(sliding?.Value), Number(0.5 * (sliding?.High - sliding?.Low)), BenchWords.Word(pull.Flaw));
        }

        return table;
    }

    private static string Number(double? value) => value is double v ? v.ToString("0.000", CultureInfo.InvariantCulture) : "";

    private static string Time(double seconds) => seconds < 90.0 ? FormattableString.Invariant($"{seconds:0} s") : FormattableString.Invariant($"{seconds / 60.0:0} min");
}
