using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Words.Fits;

namespace PushSim.Cli.Bench;

/// <summary>What a bench heard as a JSON document.</summary>
internal static class BenchJson
{
    public static string Of(BenchResult result) => CommandJson.Write(w =>
    {
        WatchedPull[] pulls = [.. result.Pulls.Select(p => p.Pull)];
        CommandJson.WriteHead(w, "bench", result.Verdict, result.Warnings);
        Interval? sliding = BenchWords.Sliding(pulls);
        Interval? peaks = BenchWords.Peaks(pulls);
        CommandJson.WriteNumber(w, "sliding_force_n", sliding?.Value);
        CommandJson.WriteNumber(w, "sliding_force_low_n", sliding?.Low);
        CommandJson.WriteNumber(w, "sliding_force_high_n", sliding?.High);
        CommandJson.WriteNumber(w, "peak_force_n", peaks?.Value);
        CommandJson.WriteNumber(w, "peak_force_low_n", peaks?.Low);
        CommandJson.WriteNumber(w, "peak_force_high_n", peaks?.High);
        w.WriteNumber("readings", result.Readings);
        w.WriteNumber("stray_lines", result.Strays);
        CommandJson.WriteNumber(w, "listened_s", result.Seconds);
        CommandJson.WriteRows(w, "gaps", result.Gaps, g =>
        {
            CommandJson.WriteNumber(w, "from_s", g.From);
            CommandJson.WriteNumber(w, "to_s", g.To);
        });
        CommandJson.WriteRows(w, "pulls", result.Pulls.Select((p, i) => (i + 1, p.Time, p.Pull)), row =>
        {
            (int number, double time, WatchedPull pull) = row;
            w.WriteNumber("pull", number);
            CommandJson.WriteNumber(w, "time_s", time);
            w.WriteString("flaw", BenchWords.Word(pull.Flaw));
            CommandJson.WriteNumber(w, "peak_force_n", pull.Peak);
            CommandJson.WriteNumber(w, "sliding_force_n", pull.Flaw == PullFlaw.None ? pull.Pull?.Plateau?.Value : null);
            CommandJson.WriteNumber(w, "sliding_force_low_n", pull.Flaw == PullFlaw.None ? pull.Pull?.Plateau?.Low : null);
            CommandJson.WriteNumber(w, "sliding_force_high_n", pull.Flaw == PullFlaw.None ? pull.Pull?.Plateau?.High : null);
            CommandJson.WriteNumber(w, "slack_change_n", pull.ZeroMoved);
        });
        w.WriteNumber("noted_pulls", result.Noted);
        w.WriteString("notebook", result.Notebook);
        w.WriteString("log", result.Log);
    });
}
