using PushSim.Analysis.FitBySimulation;
using PushSim.Words.Fits;

namespace PushSim.Cli.Fit;

/// <summary>A tyre fitted by simulating its test, in the JSON document of a fit.</summary>
internal static class SimulationFitJson
{
    public static void Write(Utf8JsonWriter w, SimulationFit? fit)
    {
        if (fit is null)
        {
            w.WriteNull("simulated");
            return;
        }

        w.WriteStartObject("simulated");
        CommandJson.WriteRows(w, "quantities", fit.Parameters, p =>
        {
            w.WriteString("name", p.Parameter.Key);
            w.WriteBoolean("told", p.IsTold);
            CommandJson.WriteNumber(w, "value", p.Value.Value);
            CommandJson.WriteNumber(w, "low", p.Value.Low);
            CommandJson.WriteNumber(w, "high", p.Value.High);
            w.WriteString("why_not", p.IsTold ? null : SimulationFitWords.WhyNot(fit, p));
        });
        CommandJson.WriteNumber(w, "misfit_n", fit.IsNowhere ? null : fit.Misfit);
        CommandJson.WriteNumber(w, "cell_noise_n", fit.Noise);
        CommandJson.WriteNumber(w, "followed_ratio", fit.Followed);
        w.WriteNumber("pulls", fit.Pulls.Count);
        w.WriteNumber("searches", fit.Starts);
        w.WriteNumber("searches_agreeing", fit.Agreeing);
        w.WriteNumber("runs", fit.Runs);
        CommandJson.WriteTexts(w, "warnings", SimulationFitWords.Warnings(fit));
        w.WriteEndObject();
    }
}
