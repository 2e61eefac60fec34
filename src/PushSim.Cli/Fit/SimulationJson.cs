using PushSim.Analysis.FitBySimulation;
using PushSim.Words.Fits;

namespace PushSim.Cli.Fit;

/// <summary>A tyre fitted by simulating its test, in the JSON document of a fit.</summary>
internal static class SimulationJson
{
    public static void Write(Utf8JsonWriter w, SimulationFit? fit)
    {
        if (fit is null)
        {
            w.WriteNull("simulated");
            return;
        }

        w.WriteStartObject("simulated");
        JsonReport.WriteRows(w, "quantities", fit.Parameters, p =>
        {
            w.WriteString("name", p.Parameter.Key);
            w.WriteBoolean("told", p.IsTold);
            JsonReport.WriteNumber(w, "value", p.Value.Value);
            JsonReport.WriteNumber(w, "low", p.Value.Low);
            JsonReport.WriteNumber(w, "high", p.Value.High);
            w.WriteString("why_not", p.IsTold ? null : SimulationWords.WhyNot(fit, p));
        });
        JsonReport.WriteNumber(w, "misfit_n", fit.IsNowhere ? null : fit.Misfit);
        JsonReport.WriteNumber(w, "cell_noise_n", fit.Noise);
        JsonReport.WriteNumber(w, "followed_ratio", fit.Followed);
        w.WriteNumber("pulls", fit.Pulls.Count);
        w.WriteNumber("searches", fit.Starts);
        w.WriteNumber("searches_agreeing", fit.Agreeing);
        w.WriteNumber("runs", fit.Runs);
        JsonReport.WriteTexts(w, "warnings", SimulationWords.Warnings(fit));
        w.WriteEndObject();
    }
}
