using PushSim.Analysis.FitBySimulation;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>Tyres fitted by simulating their test, for screen and page.</summary>
public static class SimulationTables
{
    /// <summary>Why a tyre has no fit by simulation.</summary>
    public const string NotFollowed = "no pull slides, or the scenario's run with this tyre fails";

    /// <summary>What a simulated test tells of a tyre.</summary>
    /// <param name="tyre">The tyre.</param>
    /// <param name="fit">Its fit; null where there is none.</param>
    public static AnswerTable Table(string tyre, SimulationFit? fit)
    {
        AnswerTable table = new($"{tyre}: what the simulated test tells");
        if (fit is null)
        {
            return table.AddRemark($"{tyre}: not fitted by simulation: {NotFollowed}");
        }

        if (fit.Parameters.Any(p => p.IsTold))
        {
            AddQuantities(table, fit);
        }
        else
        {
            table.AddRemark($"{tyre}: the simulated test tells nothing{(fit.Doubt == FitDoubt.None ? "" : ": " + SimulationWords.Of(fit.Doubt))}");
        }

        foreach (FittedParameter p in fit.Parameters.Where(p => !p.IsTold && fit.Doubt == FitDoubt.None))
        {
            table.AddRemark($"this test cannot tell the {SimulationWords.Of(p.Parameter)}: {SimulationWords.WhyNot(fit, p)}");
        }

        foreach (string warning in SimulationWords.Warnings(fit))
        {
            table.AddRemark("warning: " + warning);
        }

        return table.AddRemark(
            Text($"{Plural(fit.Pulls.Count, "pull")}, misfit {(fit.IsNowhere ? "none to tell" : Text($"{fit.Misfit:0.000} N"))}, cell noise {fit.Noise:0.000} N; {fit.Agreeing} of {fit.Starts} searches agree; {fit.Runs} runs. Robot, floor and tether are taken as the scenario gives them."),
            isAside: true);
    }

    /// <summary>How the simulated fits ended, as one more sentence of a verdict; empty if none was asked for.</summary>
    /// <param name="fits">Each tyre with its fit.</param>
    public static string Verdict(IReadOnlyList<(string Tyre, SimulationFit? Fit)> fits)
    {
        if (fits.Count == 0)
        {
            return "";
        }

        string[] each = [.. fits.Select(f => f.Fit is null ? $"nothing ({NotFollowed})" : Told(f.Fit))];
        return " The simulated test tells " + (each.Distinct().Count() == 1 ? each[0] : string.Join(", ", fits.Select((f, k) => $"of {f.Tyre} {each[k]}"))) + ".";

        static string Told(SimulationFit fit)
        {
            string[] told = [.. fit.Parameters.Where(p => p.IsTold).Select(p => SimulationWords.Of(p.Parameter))];
            return told.Length == fit.Parameters.Count ? $"all {told.Length} quantities"
                : told.Length > 0 ? $"{told.Length} of {fit.Parameters.Count} quantities ({string.Join(", ", told)})"
                : $"nothing ({(fit.Doubt != FitDoubt.None ? SimulationWords.Of(fit.Doubt) : "no quantity shows in this test by itself")})";
        }
    }

    private static string Number(double value) => value >= 1000.0 ? value.ToString("0", CultureInfo.InvariantCulture) : PlainNumber.Of(value, 4);

    private static void AddQuantities(AnswerTable table, SimulationFit fit)
    {
        table.AddColumn("Quantity").AddNumberColumn("Value").AddNumberColumn("95 %").AddColumn("Unit").AddColumn("Told");
        foreach (FittedParameter p in fit.Parameters)
        {
            table.AddRow(SimulationWords.Of(p.Parameter), p.IsTold ? Number(p.Value.Value) : "", p.IsTold ? $"{Number(p.Value.Low)} to {Number(p.Value.High)}" : "", SimulationWords.Unit(p.Parameter), p.IsTold ? "yes" : "no");
        }
    }
}
