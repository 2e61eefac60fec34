using PushSim.Analysis.Fit;
using PushSim.Analysis.FitBySimulation;
using PushSim.Analysis.Statistics;
using PushSim.Words.Fits;

namespace PushSim.Cli.Fit;

/// <summary>A fit as a JSON document.</summary>
internal static class FitJson
{
    public static string Of(FitResult outcome) => CommandJson.Write(writer =>
    {
        CommandJson.WriteHead(writer, "fit", FitText.Verdict(outcome), [.. FitText.Warnings(outcome.Fits).Select(w => w.Whose + w.Warning), .. outcome.Notes]);
        CommandJson.WriteNumber(writer, "motor_force_n", outcome.Stall?.Force);
        CommandJson.WriteRows(writer, "tyres", outcome.Fits, fit =>
            WriteTyre(writer, fit, outcome.Simulated.Select(s => s.Tyre == fit.Name ? s.Fit : null).FirstOrDefault(s => s is not null), outcome.Simulated.Count > 0));
        if (outcome.Comparison is TyreComparison compared)
        {
            TyreComparisonJson.Write(writer, compared);
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
        writer.WriteBoolean("kinetic_friction_is_lower_bound", fit.Cause.IsLowerBound);
        writer.WriteString("limited_by", PullWords.Key(fit.Cause));
        writer.WriteString("limited_by_reason", PullWords.Reason(fit.Cause));
        writer.WriteBoolean("inconsistent_with_robot", fit.Cause.IsInconsistent);
        CommandJson.WriteNumber(writer, "share_of_motor_force", fit.Cause.Ratio);
        writer.WriteNumber("pulls", fit.Pulls);
        CommandJson.WriteNumber(writer, "load_n", fit.Load);
        CommandJson.WriteNumber(writer, "load_exponent", fit.LoadExponent?.Value);
        CommandJson.WriteNumber(writer, "load_exponent_low", fit.LoadExponent?.Low);
        CommandJson.WriteNumber(writer, "load_exponent_high", fit.LoadExponent?.High);
        CommandJson.WriteNumbers(writer, "frictions", fit.Frictions);
        CommandJson.WriteNumbers(writer, "forces_n", fit.Forces);
        if (isSimulated)
        {
            writer.WriteString("static_friction_by", By(fit.IsStaticSimulated));
            writer.WriteString("kinetic_friction_by", By(fit.IsKineticSimulated));
            SimulationFitJson.Write(writer, simulated);
        }
    }

    private static string By(bool isSimulated) => isSimulated ? "simulated test" : "pulls";

    private static void WriteInterval(Utf8JsonWriter writer, string key, Interval? i)
    {
        CommandJson.WriteNumber(writer, key, i?.Value);
        CommandJson.WriteNumber(writer, key + "_low", i?.Low);
        CommandJson.WriteNumber(writer, key + "_high", i?.High);
    }
}
