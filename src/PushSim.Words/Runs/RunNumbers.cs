using PushSim.Words.Answers;
using PushSim.Words.Tables;

namespace PushSim.Words.Runs;

/// <summary>The numbers of a run's card: what is asked, then what is usual for its manoeuvre, then the rest of the catalogue.</summary>
internal static class RunNumbers
{
    private static readonly Dictionary<ManoeuvreFamily, string[]> s_usual = new()
    {
        [ManoeuvreFamily.Pull] = ["pull_plateau_n", "pull_breakaway_n", "peak_battery_current_a", "peak_winding_temperature_degc"],
        [ManoeuvreFamily.Push] = ["push_plateau_n", "peak_battery_current_a", "peak_winding_temperature_degc", "lowest_battery_voltage_v"],
        [ManoeuvreFamily.Drive] = ["time_to_1_m_s", "top_speed_m_per_s", "time_to_90_percent_speed_s", "peak_battery_current_a"],
        [ManoeuvreFamily.Stop] = ["stop_distance_m", "top_speed_m_per_s", "peak_battery_current_a"],
        [ManoeuvreFamily.Turn] = ["turn_current_a", "wear_mm3_per_kj", "wear_mm3", AnswerCatalogue.ChatterKey, "yaw_rate_rad_per_s", "effective_track_ratio", "peak_battery_current_a"],
        [ManoeuvreFamily.Hold] = ["travel_m", "lowest_battery_voltage_v"],
    };

    /// <summary>All of them, the most important first.</summary>
    public static IEnumerable<CardNumber> Of(RunResult run)
    {
        if (run.Status == RunStatus.Failed)
        {
            return [];
        }

        IEnumerable<CardNumber> first = run.Shove is { } shove ? OfShove(run, shove) : GripShare.Of(run) is { } grip ? [new CardNumber("grip in use", Text($"{100.0 * grip.Share:0} %"), "", $"at {grip.Wheel}, which slides first")] : [];
        string[] keys = [.. run.Scenario.Ask, .. s_usual[run.Scenario.Manoeuvre.Traits.Family], .. AnswerCatalogue.All.Where(a => !a.IsForScripts && a.Key is not ("ground_gained_m" or "push_peak_n" or "turned_aside_rad" or "travel_m")).Select(a => a.Key)];
        IEnumerable<string> rest = keys.Distinct().Where(k => run.Shove is null || k is not ("push_plateau_n" or "ground_gained_m"));
        return [.. first, .. rest.Select(k => AnswerCatalogue.Named(k)).OfType<Answer>().Select(a => Of(run, a)).OfType<CardNumber>()];
    }

    private static IEnumerable<CardNumber> OfShove(RunResult run, ShoveOutcome o)
    {
        string[] names = [run.Scenario.Robot.Name, run.Opponent!.Robot.Name];
        if (run.Answers.PushPlateau is double push)
        {
            yield return new CardNumber("push between them", Text($"{push:0.0} N"), ForceWords.Scale(push), "steady, once they touch");
        }

        if (o is { Winner: >= 0, GivesGroundAt: double at } && o.Ending != ShoveEnding.Tips)
        {
            yield return new CardNumber($"{names[1 - o.Winner]} slides back at", Text($"{o.GroundSpeed:0.00} m/s"), "", Text($"from {at:0.00} s on"));
        }

        if (o.FirstContact is not null)
        {
            yield return new CardNumber("ground given", Text($"{Math.Abs(o.GroundGained):0.000} m"), "", Text($"when it ends, at {o.EndTime:0.00} s"));
        }
    }

    private static CardNumber? Of(RunResult run, Answer a)
    {
        (double? own, double? other) = (a.Of(run), a.OfOpponent(run));
        if (own is not double v)
        {
            return a.Key == AnswerCatalogue.ChatterKey && run.Scenario.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn ? new CardNumber("chatter", ChatterWords.Word(run.Chatter), "", "") : null;
        }

        string peak = a.PeakOf is not null ? PeakWords.Beside(a, run.Scenario.Robot, run.Answers) : "";
        string beside = peak.Length > 0 ? "" : a.Unit == "N" ? ForceWords.Scale(v) : a.Key == "yaw_rate_rad_per_s" ? Text($"{v * 180.0 / Math.PI:0} deg/s") : "";
        string theirs = run.Opponent is { } o && other is double w ? $"{o.Robot.Name}: {a.Shown(w)} {a.Unit}".TrimEnd() : "";
        return new CardNumber(a.WordsIn(run), $"{a.Shown(v)} {a.Unit}".TrimEnd(), beside, string.Join("; ", new[] { peak, theirs }.Where(n => n.Length > 0)));
    }
}
