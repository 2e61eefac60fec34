using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Analysis.Statistics;
using PushSim.Words.Fits;

namespace PushSim.Cli.Fit;

/// <summary>A fit as a JSON document.</summary>
internal static class FitJson
{
    public static string Of(FitResult outcome) => JsonReport.Write(writer =>
    {
        JsonReport.WriteHead(writer, "fit", FitText.Verdict(outcome), [.. FitText.Warnings(outcome.Fits).Select(w => w.Whose + w.Warning), .. outcome.Notes]);
        JsonReport.WriteNumber(writer, "motor_force_n", outcome.Stall?.Force);
        JsonReport.WriteRows(writer, "tyres", outcome.Fits, fit =>
            WriteTyre(writer, fit, outcome.Simulated.Select(s => s.Tyre == fit.Name ? s.Fit : null).FirstOrDefault(s => s is not null), outcome.Simulated.Count > 0));
        if (outcome.Comparison is TyreComparison compared)
        {
            ComparisonJson.Write(writer, compared);
        }

        if (outcome.Meaning is MeaningResult meaning)
        {
            MeaningJson.Write(writer, meaning);
        }
    });

    private static void WriteTyre(Utf8JsonWriter writer, TyreFit fit, SimulationFit? simulated, bool isSimulated)
    {
        writer.WriteString("name", fit.Name);
        WriteInterval(writer, "static_friction", fit.StaticFriction);
        writer.WriteBoolean("static_friction_is_lower_bound", fit.IsStaticLowerBound);
        WriteInterval(writer, "kinetic_friction", fit.KineticFriction);
        writer.WriteBoolean("kinetic_friction_is_lower_bound", fit.Limit.IsLowerBound);
        writer.WriteString("limited_by", PullWords.Key(fit.Limit));
        writer.WriteString("limited_by_reason", PullWords.Reason(fit.Limit));
        writer.WriteBoolean("inconsistent_with_robot", fit.Limit.IsInconsistent);
        JsonReport.WriteNumber(writer, "share_of_motor_force", fit.Limit.Ratio);
        writer.WriteNumber("pulls", fit.Pulls);
        JsonReport.WriteNumber(writer, "load_n", fit.Load);
        JsonReport.WriteNumber(writer, "load_exponent", fit.LoadExponent?.Value);
        JsonReport.WriteNumber(writer, "load_exponent_low", fit.LoadExponent?.Low);
        JsonReport.WriteNumber(writer, "load_exponent_high", fit.LoadExponent?.High);
        JsonReport.WriteNumbers(writer, "frictions", fit.Frictions);
        JsonReport.WriteNumbers(writer, "forces_n", fit.Forces);
        if (isSimulated)
        {
            writer.WriteString("static_friction_by", By(fit.IsStaticSimulated));
            writer.WriteString("kinetic_friction_by", By(fit.IsKineticSimulated));
            SimulationJson.Write(writer, simulated);
        }
    }

    private static string By(bool isSimulated) => isSimulated ? "simulated test" : "pulls";

    private static void WriteInterval(Utf8JsonWriter writer, string key, Interval? i)
    {
        JsonReport.WriteNumber(writer, key, i?.Value);
        JsonReport.WriteNumber(writer, key + "_low", i?.Low);
        JsonReport.WriteNumber(writer, key + "_high", i?.High);
    }
}
