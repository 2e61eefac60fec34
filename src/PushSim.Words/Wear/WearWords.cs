using PushSim.Analysis.Wear;

namespace PushSim.Words.Wear;

/// <summary>What wear and dust numbers cannot do; belongs beside them wherever they are shown.</summary>
public static class WearWords
{
    /// <summary>Of wear.</summary>
    public const string Limits =
        "Wear numbers rank, they do not forecast: they carry the drum test of ISO 4649 (fresh grade-60 abrasive, 10 N) over to your board by "
        + "one factor for how abrasive it is, set by car tyres on dry roads and good to a factor of 5; the standard itself infers no service life from it. Left out: heat, edges, tearing of knobs, dust between tread and board.";

    // Dry roads, car tyres at small slip, 14 sites: median, least and most (Cenek and others, 1997, as tabled in rivm-syso/tyre-friction-abrasion-emission) [mm^3/kJ].
    private const double Roads = 2.15, LeastOfRoads = 1.6, MostOfRoads = 9.9;

    /// <summary>Wear per work of friction, beside what roads do, and how to find one's own; empty where nothing slid.</summary>
    public static IReadOnlyList<string> PerWork(WearResult report)
    {
        double work = report.Wheels.Sum(w => w.FrictionWork), volume = report.Wheels.Sum(w => w.Volume);
        if (!(work > 0.0) || !(volume > 0.0))
        {
            return [];
        }

        double perKilojoule = 1e12 * volume / work;
        return
        [
            BesideRoads(perKilojoule) + " The floor's abrasiveness is good to a factor of 5.",
            "To find your own: weigh the tyres, let the robot turn on the spot for some minutes, weigh again; pushsim fit takes a table of before, after and time with --robot and this file.",
        ];
    }

    /// <summary>Wear per work beside what dry roads do.</summary>
    /// <param name="perKilojoule">Wear [mm^3/kJ].</param>
    public static string BesideRoads(double perKilojoule) =>
        Text($"wear: {PlainNumber.Of(perKilojoule, 2)} mm³ for each kilojoule of scrub, {PlainNumber.Of(perKilojoule / Roads, 2)} times the {Roads} that dry roads take from car tyres (14 sites, {LeastOfRoads} to {MostOfRoads}).");

    /// <summary>Of grip over many runs.</summary>
    public const string GripLimits =
        "Dust numbers are estimates: no table holds small tyres on dusty painted board. The board's dust is taken as the same in every run, and tread picks it up by sliding only.";
}
