using PushSim.Analysis.FitBySimulation;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>Tyres fitted by simulating their test, for screen and page.</summary>
public static class SimulationFitTables
{
    /// <summary>What a simulated test tells of a tyre.</summary>
    /// <param name="tyre">The tyre.</param>
    /// <param name="fit">Its fit; null where there is none.</param>
    public static AnswerTable Table(string tyre, SimulationFit? fit)
    {
        AnswerTable table = new($"{tyre}: what the simulated test tells");
        if (fit is null)
        {
            return table.AddRemark($"{tyre}: not fitted by simulation: {SimulationFitWords.NotFollowed}");
        }

        // frictions that it tells are the tyre's, in the table of all tyres
        FittedParameter[] others = [.. fit.Parameters.Where(p => !p.Parameter.IsFriction)];
        if (others.Any(p => p.IsTold))
        {
            AddQuantities(table, others);
        }
        else if (!fit.Parameters.Any(p => p.IsTold))
        {
            table.AddRemark($"{tyre}: the simulated test tells nothing{(fit.Doubt == FitDoubt.None ? "" : ": " + SimulationFitWords.Of(fit.Doubt))}");
        }

        table.AddRemarks(fit.Parameters.Where(p => !p.IsTold && fit.Doubt == FitDoubt.None).Select(p => $"this test cannot tell the {SimulationFitWords.Of(p.Parameter)}: {SimulationFitWords.WhyNot(fit, p)}"));
        table.AddRemarks(SimulationFitWords.Warnings(fit).Select(warning => "warning: " + warning));

        return table.AddRemark(
            Text($"{Plural(fit.Pulls.Count, "pull")}, misfit {(fit.IsNowhere ? "none to tell" : Text($"{fit.Misfit:0.000} N"))}, cell noise {fit.Noise:0.000} N; {fit.Agreeing} of {fit.Starts} searches agree; {fit.Runs} runs. Robot, floor and tether are taken as the scenario gives them."),
            isAside: true);
    }

    private static string Number(double value) => value >= 1000.0 ? value.ToString("0", CultureInfo.InvariantCulture) : PlainNumber.Of(value, 4);

    private static void AddQuantities(AnswerTable table, FittedParameter[] parameters)
    {
        table.AddColumn("Quantity").AddNumberColumn("Value").AddNumberColumn("95 %").AddColumn("Unit").AddColumn("Told");
        foreach (FittedParameter p in parameters)
        {
            table.AddRow(SimulationFitWords.Of(p.Parameter), p.IsTold ? Number(p.Value.Value) : "", p.IsTold ? $"{Number(p.Value.Low)} to {Number(p.Value.High)}" : "", SimulationFitWords.Unit(p.Parameter), p.IsTold ? "yes" : "no");
        }
    }
}
