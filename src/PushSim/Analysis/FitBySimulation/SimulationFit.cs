using PushSim.Analysis.Statistics;
using PushSim.Tyres;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>One parameter after the fit.</summary>
/// <param name="Parameter">Which.</param>
/// <param name="Value">Value with its 95 % interval [the parameter's unit]; the interval of one that is not told is only how far it may be off.</param>
/// <param name="IsTold">Whether this test tells it: within a factor of two either way, inside the range looked at.</param>
/// <param name="Why">Why it is not told, in words; empty if it is.</param>
public sealed record FittedParameter(TestParameter Parameter, Interval Value, bool IsTold, string Why);

/// <summary>A pull with the simulated force over it.</summary>
/// <param name="Time">Times on the log's clock [s].</param>
/// <param name="Measured">Force less the tare [N].</param>
/// <param name="Simulated">Force of the fitted tyre, on the same clock [N].</param>
public sealed record FollowedPull(double[] Time, double[] Measured, double[] Simulated);

/// <summary>A tyre fitted by running the test in the engine.</summary>
public sealed record SimulationFit
{
    /// <summary>The parameters, in the order of <see cref="TestParameter.All"/>.</summary>
    public required IReadOnlyList<FittedParameter> Parameters { get; init; }

    /// <summary>The tyre with what the test tells; the rest as the robot file has it.</summary>
    public required TyreSettings Tyre { get; init; }

    /// <summary>The pulls, measured and simulated.</summary>
    public required IReadOnlyList<FollowedPull> Pulls { get; init; }

    /// <summary>Root mean square of measured less simulated force [N].</summary>
    public required double Misfit { get; init; }

    /// <summary>Whether that is no difference of forces but of runs that failed or ended too soon.</summary>
    public bool IsNowhere => Misfit > 0.01 * TestModel.Nowhere;

    /// <summary>Standard deviation of the cell's noise and steps, from where the force is steady [N].</summary>
    public required double Noise { get; init; }

    /// <summary>Share of the sliding that the simulated test follows, and that was used [1].</summary>
    public required double Followed { get; init; }

    /// <summary>Why nothing of it is to be believed; empty if it is.</summary>
    public required string Doubt { get; init; }

    /// <summary>Searches from different starts [1].</summary>
    public required int Starts { get; init; }

    /// <summary>Searches that came to the same misfit [1].</summary>
    public required int Agreeing { get; init; }

    /// <summary>Runs of the engine [1].</summary>
    public required int Runs { get; init; }

    /// <summary>What to know about it, in sentences.</summary>
    public IReadOnlyList<string> Warnings
    {
        get
        {
            List<string> said = [];
            if (Misfit > SimulationFitter.PoorlyFollowed * Noise)
            {
                string how = IsNowhere ? "no run of the simulated test lasts through a pull of the log"
                    : FormattableString.Invariant($"the simulated test follows the log to {Misfit:0.000} N only, where the cell's noise is {Noise:0.000} N");
                said.Add(how + ": are robot, tether, ramp of the throttle and manoeuvre those of the test?");
            }

            if (Followed < 1.0)
            {
                said.Add(FormattableString.Invariant($"only the first {100.0 * Followed:0} % of the sliding could be followed, and was used: later the log or the simulated test chatters, and its phase is chance"));
            }

            if (Agreeing == 1)
            {
                said.Add($"only one of {Starts} searches came to this result: there may be a better one");
            }

            if (Pulls.Count < SimulationFitter.FewestPulls)
            {
                said.Add($"{(Pulls.Count == 1 ? "one pull" : "two pulls")} only: the intervals hold the cell's noise, not the scatter from pull to pull");
            }

            return said;
        }
    }
}
