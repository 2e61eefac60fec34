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
        string load = request.Load is null && request.Robot is null ? " --load \"... gf\"" : request.Robot is { } robot ? $" --robot {Clauses.Argument(robot)}" : FormattableString.Invariant($" --load \"{request.Load:0.##} N\"");
        var card = new AnswerCard(result.Verdict)
        {
            Facts = string.Join(" ", new[]
            {
                FormattableString.Invariant($"{result.Readings} readings in {Time(result.Seconds)}{(result.Strays > 0 ? $", {result.Strays} stray {(result.Strays == 1 ? "line" : "lines")}" : "")}."),
                again.Length > 0 ? $"To do again: {string.Join(", ", again)}." : "",
                result.Gaps.Count > 0 ? $"{result.Gaps.Count} {(result.Gaps.Count == 1 ? "gap" : "gaps")} of {Time(result.Gaps.Sum(g => g.To - g.From))} in all." : "",
                result.Noted > 0 ? $"{result.Noted} {(result.Noted == 1 ? "pull" : "pulls")} noted in {GarageFolder.Shown(result.Notebook!)}." : "",
            }.Where(t => t.Length > 0)),
            Numbers = numbers,
            Sure = numbers.Count > 0 && numbers[0].Note.Length > 0 ? "the interval holds the mean of such pulls in 95 of 100 benches, from their own scatter." : numbers.Count > 0 ? "one pull shows no scatter: pull six times." : "",
            Next = log.Length > 0 && result.Readings > 0 ? $"pushsim fit {Clauses.Argument(log)}{load}" : "",
        };
        new ScreenReport(card, result.Verdict) { Warnings = result.Warnings, Files = log.Length > 0 ? [log] : [] }.Write(output, isDetailed: false);

        void Add(string label, Interval? force)
        {
            if (force is { } f)
            {
                numbers.Add(new CardNumber(label, FormattableString.Invariant($"{f.Value:0.00} N"), ForceWords.Scale(f.Value), f.IsBounded ? FormattableString.Invariant($"{f.Low:0.00} to {f.High:0.00} N") : ""));
            }
        }
    }

    private static string Time(double seconds) => seconds < 90.0 ? FormattableString.Invariant($"{seconds:0} s") : FormattableString.Invariant($"{seconds / 60.0:0} min");
}
