using PushSim.Analysis.Compare;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>A recording beside the chatter that a run foretells, in plain words.</summary>
public static class SoundWords
{
    // A tone this near a frequency is told as the same [1]: rates and tyres differ by as much.
    private const double Near = 0.12;

    /// <summary>How they compare: "agrees", "differs", "no buzz heard".</summary>
    /// <param name="peaks">Tones of the recording.</param>
    /// <param name="foretold">Chatter of the run; null for none [Hz].</param>
    public static string Key(IReadOnlyList<SoundPeak> peaks, double? foretold) => peaks.Count == 0 ? foretold is null ? "agrees" : "no buzz heard" : foretold is double f && Tone(peaks, f) is not null ? "agrees" : "differs";

    /// <summary>The answer in a sentence.</summary>
    public static string Verdict(string robot, IReadOnlyList<SoundPeak> peaks, double? foretold)
    {
        string heard = peaks.Count == 0 ? "no buzz is heard" : Text($"a buzz of {peaks[0].Frequency:0} Hz is heard");
        string said = foretold is double f ? Text($"the run foretells chatter at {f:0} Hz") : "the run foretells none";
        string how = Key(peaks, foretold) switch
        {
            "agrees" when foretold is double g && Tone(peaks, g) is { } tone && tone != peaks[0] => Text($"; a tone of {tone.Frequency:0} Hz agrees"),
            "agrees" => "; they agree",
            "differs" => "; they differ",
            _ => "",
        };
        return $"{robot}: {heard}, {said}{how}.";
    }

    /// <summary>The tones.</summary>
    public static AnswerTable Table(IReadOnlyList<SoundPeak> peaks, IReadOnlyList<(string Wheel, double Frequency)> wheels)
    {
        AnswerTable table = new AnswerTable("Tones heard").AddNumberColumn("Hz").AddNumberColumn("width [Hz]").AddNumberColumn("above its surroundings [dB]").AddNumberColumn("multiples heard");
        foreach (SoundPeak p in peaks)
        {
            table.AddRow(Text($"{p.Frequency:0.0}"), Text($"{p.Width:0.0}"), Text($"{p.Level:0}"), Text($"{p.Harmonics}"));
        }

        return table.AddRemarks(wheels.Select(w => Text($"{w.Wheel}: chatters at {w.Frequency:0} Hz in the run.")))
            .AddRemark("A recording takes half a second of the buzzing turn at 4000 Hz or more; ten seconds tell faint tones. Motors and gears sing, too: record one turn with the wheels in the air.", isAside: true);
    }

    // the loudest tone at a frequency or its double, in which the force swings
    private static SoundPeak? Tone(IReadOnlyList<SoundPeak> peaks, double frequency) => peaks.FirstOrDefault(p => Math.Abs((p.Frequency / frequency) - 1.0) < Near || Math.Abs((p.Frequency / frequency / 2.0) - 1.0) < Near);
}
