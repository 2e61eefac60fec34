using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Words.Fits;

namespace PushSim.Cli.Bench;

/// <summary>What a bench heard as a JSON document.</summary>
internal static class BenchJson
{
    public static string Of(BenchResult result) => JsonReport.Write(w =>
    {
        WatchedPull[] pulls = [.. result.Pulls.Select(p => p.Pull)];
        JsonReport.WriteHead(w, "bench", result.Verdict, result.Warnings);
        Interval? sliding = BenchWords.Sliding(pulls);
        Interval? peaks = BenchWords.Peaks(pulls);
        JsonReport.WriteNumber(w, "sliding_force_n", sliding?.Value);
        JsonReport.WriteNumber(w, "sliding_force_low_n", sliding?.Low);
        JsonReport.WriteNumber(w, "sliding_force_high_n", sliding?.High);
        JsonReport.WriteNumber(w, "peak_force_n", peaks?.Value);
        JsonReport.WriteNumber(w, "peak_force_low_n", peaks?.Low);
        JsonReport.WriteNumber(w, "peak_force_high_n", peaks?.High);
        w.WriteNumber("readings", result.Readings);
        w.WriteNumber("stray_lines", result.Strays);
        JsonReport.WriteNumber(w, "listened_s", result.Seconds);
        JsonReport.WriteRows(w, "gaps", result.Gaps, g =>
        {
            JsonReport.WriteNumber(w, "from_s", g.From);
            JsonReport.WriteNumber(w, "to_s", g.To);
        });
        JsonReport.WriteRows(w, "pulls", result.Pulls.Select((p, i) => (i + 1, p.Time, p.Pull)), row =>
        {
            (int number, double time, WatchedPull pull) = row;
            w.WriteNumber("pull", number);
            JsonReport.WriteNumber(w, "time_s", time);
            w.WriteString("flaw", BenchWords.Word(pull.Flaw));
            JsonReport.WriteNumber(w, "peak_force_n", pull.Peak);
            JsonReport.WriteNumber(w, "sliding_force_n", pull.Flaw == PullFlaw.None ? pull.Pull?.Plateau?.Value : null);
            JsonReport.WriteNumber(w, "sliding_force_low_n", pull.Flaw == PullFlaw.None ? pull.Pull?.Plateau?.Low : null);
            JsonReport.WriteNumber(w, "sliding_force_high_n", pull.Flaw == PullFlaw.None ? pull.Pull?.Plateau?.High : null);
            JsonReport.WriteNumber(w, "slack_change_n", pull.ZeroMoved);
        });
        w.WriteNumber("noted_pulls", result.Noted);
        w.WriteString("notebook", result.Notebook);
        w.WriteString("log", result.Log);
    });
}
