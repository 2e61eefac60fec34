using PushSim.Analysis.FitBySimulation;

namespace PushSim.Words.Fits;

/// <summary>What a fit by simulation says, in plain words.</summary>
public static class SimulationFitWords
{
    /// <summary>Why a tyre has no fit by simulation.</summary>
    public const string NotFollowed = "no pull slides, or the scenario's run with this tyre fails";

    // Words, unit as printed (empty for a ratio) and what kind of test tells it, by the parameter's key.
    private static readonly Dictionary<string, (string Words, string Unit, string Advice)> s_parameters = new()
    {
        ["static_friction"] = ("breakaway friction", "", "pull until it lets go, slowly enough for the cell"),
        ["kinetic_friction"] = ("sliding friction", "", "go on pulling after it lets go, to speeds well above the slip speed"),
        ["slip_speed_m_per_s"] = ("slip speed", "m/s", "let it slide at several speeds, slow and fast"),
        ["body_stiffness_n_per_m"] = ("tyre body stiffness", "N/m", "use a stiff tether, and a cell that is read often on the ramp"),
        ["body_damping_n_s_per_m"] = ("tyre body damping", "N s/m", "it shows only in the shaking after it lets go: read the cell hundreds of times a second, unfiltered"),
    };

    /// <summary>Name of a parameter.</summary>
    public static string Of(TestParameter parameter) => s_parameters[parameter.Key].Words;

    /// <summary>Its unit; empty for a ratio.</summary>
    public static string Unit(TestParameter parameter) => s_parameters[parameter.Key].Unit;

    /// <summary>Why nothing of a fit is to be believed; empty if it is.</summary>
    public static string Of(FitDoubt doubt) => doubt switch
    {
        FitDoubt.NotFollowed => "the simulated test does not follow the log",
        FitDoubt.FirstMoments => "the simulated test follows the first moments of the sliding only",
        FitDoubt.Disagreeing => "searches from different starts do not agree",
        _ => "",
    };

    /// <summary>Why a parameter is not told; empty if it is.</summary>
    public static string WhyNot(SimulationFit fit, FittedParameter p)
    {
        (string words, _, string advice) = s_parameters[p.Parameter.Key];
        return p.Why switch
        {
            UntoldCause.Doubt => Of(fit.Doubt),
            UntoldCause.AnySmaller => $"any {words} towards nothing does as well; {advice}",
            UntoldCause.AnyLarger => $"any {words} towards the largest looked at does as well; {advice}",
            UntoldCause.NotAtRest => "the search did not come to rest",
            UntoldCause.Together => $"told only together with {Of(p.With!)}: a change of one is made up by the other; {advice}",
            UntoldCause.Faint => $"the force hardly changes with it; {advice}",
            _ => "",
        };
    }

    /// <summary>How the simulated fits ended, as one more sentence of a verdict; empty if none was asked for.</summary>
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
            string[] told = [.. fit.Parameters.Where(p => p.IsTold).Select(p => Of(p.Parameter))];
            return told.Length == fit.Parameters.Count ? $"all {told.Length} quantities"
                : told.Length > 0 ? $"{told.Length} of {fit.Parameters.Count} quantities ({string.Join(", ", told)})"
                : $"nothing ({(fit.Doubt != FitDoubt.None ? Of(fit.Doubt) : "no quantity shows in this test by itself")})";
        }
    }

    /// <summary>What to know before believing a fit, in sentences.</summary>
    public static IEnumerable<string> Warnings(SimulationFit fit)
    {
        if (fit.IsPoorlyFollowed)
        {
            string how = fit.IsNowhere ? "no run of the simulated test lasts through a pull of the log"
                : Text($"the simulated test follows the log to {fit.Misfit:0.000} N only, where the cell's noise is {fit.Noise:0.000} N");
            yield return how + ": are robot, tether, ramp of the throttle and manoeuvre those of the test?";
        }

        if (fit.Followed < 1.0)
        {
            yield return Text($"only the first {100.0 * fit.Followed:0} % of the sliding could be followed, and was used: later the log or the simulated test chatters, and its phase is chance");
        }

        if (fit.Agreeing == 1)
        {
            yield return $"only one of {fit.Starts} searches came to this result: there may be a better one";
        }

        if (fit.HasFewPulls)
        {
            yield return $"{(fit.Pulls.Count == 1 ? "one pull" : "two pulls")} only: the intervals hold the cell's noise, not the scatter from pull to pull";
        }
    }
}
