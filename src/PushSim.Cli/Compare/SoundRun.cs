using PushSim.Analysis;
using PushSim.Analysis.Compare;
using PushSim.Scenarios;
using PushSim.Scenarios.Logs;
using PushSim.Words.Fits;

namespace PushSim.Cli.Compare;

/// <summary>The work of `compare` where the log is a recording: its tones beside the chatter that the run foretells.</summary>
internal sealed class SoundRun(CompareRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
{
    public int Run()
    {
        WaveFile? wave = WaveFile.Read(request.Log, out string fault, out bool cannotRead);
        if (wave is null)
        {
            error.WriteLine("pushsim: error: " + PlainText.Of(fault));
            return cannotRead ? ExitCode.CannotReadOrWrite : ExitCode.WrongInput;
        }

        ReadResult read = ScenarioReader.Read(request.File, request.Read);
        int? wrong = ProblemWriter.Tell(error, read.Problems, read.CannotRead);
        if (wrong is not null || read.Scenario is null)
        {
            return wrong ?? Complaint.OfCommandLine(error, $"{request.File} is a robot file: compare takes a scenario, which names the robot and its turn", "compare");
        }

        int from = (int)Math.Clamp((request.From ?? 0.0) * wave.Rate, 0.0, wave.Samples.Length), to = (int)Math.Clamp((request.To ?? wave.Length) * wave.Rate, 0.0, wave.Samples.Length);
        if (wave.Rate < SoundSpectrum.LeastRate || to - from < SoundSpectrum.LeastLength * wave.Rate)
        {
            return Complaint.OfCommandLine(error, FormattableString.Invariant($"the recording has {Math.Max(0, to - from) / wave.Rate:0.##} s at {wave.Rate:0} Hz: half a second at 4000 Hz or more is needed"), "compare");
        }

        RunResult run = CloserLook.Review(Simulator.Run(read.Scenario, cancel), new WorkBudget(CloserLook.UsualWork, cancel));
        IReadOnlyList<SoundPeak> peaks = SoundSpectrum.Peaks(wave.Samples[from..to], wave.Rate);
        double? foretold = run.Chatter.Frequency;
        (string, double)[] wheels = [.. (run.Turning?.Wheels ?? []).Where(w => w.Frequency is not null).Select(w => (w.Wheel, w.Frequency!.Value))];
        string verdict = SoundWords.Verdict(read.Scenario.Robot.Name, peaks, foretold);
        request.Output.Print(output, () => Json(verdict, run, peaks, foretold, wheels), PlainText.Of(verdict), () => new ScreenReport(new AnswerCard(verdict) { Robots = [read.Scenario.Robot.Name] }, verdict)
        {
            Tables = [SoundWords.Table(peaks, wheels)], Warnings = RunWords.Warnings(run), Asides = [.. EstimateText.Lines(read)], Suggestions = EstimateText.Suggestions(read, Asked.Of(request.File, request.Read)),
        }.Write(output, request.Output.Details));
        return run.Status == RunStatus.Failed ? Complaint.OfRun(error, RunWords.Cause(run.Stop)) : ExitCode.Done;
    }

    private static string Json(string verdict, RunResult run, IReadOnlyList<SoundPeak> peaks, double? foretold, (string Wheel, double Frequency)[] wheels) => JsonReport.Write(writer =>
    {
        JsonReport.WriteHead(writer, "compare", verdict, RunWords.Warnings(run));
        writer.WriteString("scenario", run.Scenario.Name);
        writer.WriteString("sound", SoundWords.Key(peaks, foretold));
        JsonReport.WriteNumber(writer, "chatter_hz", foretold);
        JsonReport.WriteRows(writer, "tones", peaks, p =>
        {
            JsonReport.WriteNumber(writer, "frequency_hz", p.Frequency);
            JsonReport.WriteNumber(writer, "width_hz", p.Width);
            JsonReport.WriteNumber(writer, "level_db", p.Level);
            writer.WriteNumber("harmonics", p.Harmonics);
        });
        JsonReport.WriteRows(writer, "wheels", wheels, w =>
        {
            writer.WriteString("wheel", w.Wheel);
            JsonReport.WriteNumber(writer, "chatter_hz", w.Frequency);
        });
    });
}
