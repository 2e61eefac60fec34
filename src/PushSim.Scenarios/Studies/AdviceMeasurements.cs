using PushSim.Analysis.Chance;
using PushSim.Analysis.Statistics;
using PushSim.Scenarios.Drawing;

namespace PushSim.Scenarios.Studies;

/// <summary>
/// Which measurement would tell most: the value of information of one input, as the standard deviation of the win share once the input is known. By the law of total variance that is
/// sqrt(S p (1 - p)), S the first-order share of the input in the variance of the win (<see cref="Sensitivity"/>), out of the matches that were drawn anyway. What the measurement itself leaves
/// unknown is taken off: S (1 - (after / before)^2). Times and leftovers are estimates of common practice.
/// </summary>
internal static class AdviceMeasurements
{
    // What a cause's name ends with, what is done about it, how long it takes [min], and half-width left as a share of the value [1].
    private static readonly (string[] Ends, string What, double Minutes, double Left)[] Ways =
    [
        (["static_friction", "kinetic_friction"], "pull {0} six times on a load cell", 12.0, 0.04),
        (["chassis.mass"], "weigh it", 1.0, 0.003),
        (["centre_of_mass.x", "centre_of_mass.y", "centre_of_mass.height", "centre_of_mass"], "find its centre of mass on two scales", 6.0, 0.05),
        (["resistance", "speed_constant", "torque_constant", "no_load_current", "output_speed", "output_stall_torque", "stall_current"], "measure {0} with a multimeter: stalled and free", 10.0, 0.03),
        (["gear_efficiency", "gear_ratio"], "lift a known weight by {0}", 8.0, 0.04),
        (["diameter"], "measure the wheels with a caliper", 1.0, 0.002),
        (["charge", "cut_off", "capacity"], "charge and log {0}", 30.0, 0.03),
        (["reaction_delay"], "film starts and count frames", 10.0, 0.3),
    ];

    // What may be learnt of an opponent, if its owner lets you.
    private static readonly (string[] Ends, string What, double Minutes, double Left)[] OfOpponents =
    [
        (["static_friction", "kinetic_friction"], "ask to pull {0} six times", 15.0, 0.04),
        (["chassis.mass"], "ask what {0} weighs", 2.0, 0.005),
        (["diameter"], "ask for the wheel diameter of {0}", 2.0, 0.02),
        (["gear_ratio", "gear_efficiency"], "film {0} at full speed", 5.0, 0.05),
    ];

    /// <summary>All that tell anything, the most per minute first; mean over the opponents.</summary>
    public static IReadOnlyList<(string What, Interval Narrows, double Minutes)> Of(IEnumerable<(FileMatchSource Source, IReadOnlyList<MatchEnd> Ends)> sides)
    {
        Dictionary<string, (double Squares, double Off, double Minutes)> told = new(StringComparer.Ordinal);
        int count = 0;
        foreach ((FileMatchSource source, IReadOnlyList<MatchEnd> ends) in sides)
        {
            count++;
            MatchEnd[] played = [.. ends.Where(e => !e.HasFailed)];
            double[] wins = [.. played.Select(e => e.Winner == 0 ? 1.0 : 0.0)];
            double p = wins.Length == 0 ? 0.0 : wins.Average();
            double[][] causes = [.. played.Select(e => source.CausesOf(e.Number))];
            double level = Sensitivity.NoiseLevel(played.Length, source.Causes.Count);
            double[] moves = new double[played.Length];
            for (int k = 0; k < source.Causes.Count; k++)
            {
                string name = source.Causes[k];
                bool isOthers = name.StartsWith("opponent.", StringComparison.Ordinal);
                (string[] Ends, string What, double Minutes, double Left) way = (isOthers ? OfOpponents : Ways).FirstOrDefault(w => w.Ends.Any(e => name.EndsWith(e, StringComparison.Ordinal) || name.StartsWith(e + " of every ", StringComparison.Ordinal)));
                if (way.What is null)
                {
                    continue;
                }

                double share = Sensitivity.FirstOrder([.. causes.Select(c => c[k])], wins, moves);
                DrawnQuantity? quantity = source.Quantities.FirstOrDefault(q => q.Factors.Any(f => f.Name == name));
                double before = quantity is null ? 1.0 : quantity.HalfWidth / Math.Max(1e-12, Math.Abs(quantity.Middle));
                double kept = Math.Clamp(1.0 - Math.Pow(way.Left / Math.Max(before, 1e-9), 2), 0.0, 1.0);
                if (share > level)
                {
                    string what = string.Format(CultureInfo.InvariantCulture, way.What, isOthers ? source.Opponent : Subject(name));
                    (double squares, double off, _) = told.GetValueOrDefault(what);
                    double factor = kept * p * (1.0 - p);
                    told[what] = (squares + (share * factor), double.Hypot(off, Sensitivity.Scatter(moves) * factor), way.Minutes);
                }
            }
        }

        double Root(double squares) => Math.Sqrt(Math.Max(0.0, squares) / Math.Max(1, count));
        return [.. told.Select(t => (t.Key, Narrows: new Interval(Root(t.Value.Squares), Root(t.Value.Squares - t.Value.Off), Root(t.Value.Squares + t.Value.Off)), t.Value.Minutes)).Where(t => t.Narrows.Value > 0.0).OrderByDescending(t => t.Narrows.Value / t.Minutes)];
    }

    // "tyre.soft.static_friction" is about tyre soft
    private static string Subject(string cause)
    {
        string[] path = cause.Split('.');
        int every = cause.IndexOf(" of every ", StringComparison.Ordinal);
        return every >= 0 ? cause[(every + 10)..] : path.Length >= 3 ? $"{path[^3]} {path[^2]}" : path.Length == 2 ? $"the {path[0]}" : cause;
    }
}
