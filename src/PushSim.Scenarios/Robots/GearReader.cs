using PushSim.Powertrain;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Robots;

/// <summary>The gear efficiency of a drive or motor: as given, else by its stages.</summary>
internal static class GearReader
{
    // Estimate, see the note [1].
    private const double PointsPerStage = 0.05;

    /// <summary>The efficiency; null if nothing is said of it, NaN if what is said is wrong.</summary>
    public static double? Efficiency(Section s, string owner)
    {
        double? given = s.Number("gear_efficiency");
        int kind = s.Choice("gear_kind");
        int stages = s.Whole("gear_stages", 0);
        if (s.Has("gear_stages") != s.Has("gear_kind"))
        {
            (string has, string lacks, string example) = s.Has("gear_stages") ? ("gear_stages", "gear_kind", "\"spur\"") : ("gear_kind", "gear_stages", "3");
            s.Context.Error(s.PlaceOf(has), $"{owner} has \"{has}\" but no \"{lacks}\"", $"add {lacks} = {example}, or give gear_efficiency = \"75 %\" instead");
            return double.NaN;
        }

        if (given is not null || kind < 0 || stages < 1)
        {
            return given ?? (s.Has("gear_stages") ? double.NaN : null);
        }

        var gear = (GearKind)kind;
        double eta = GearStages.Efficiency(gear, stages);
        s.Context.Note(FormattableString.Invariant(
            $"{owner}: gear efficiency {100.0 * eta:G3} %, estimated from {stages} {Words(gear)} {(stages == 1 ? "stage" : "stages")} at {100.0 * GearStages.PerStage(gear):G3} % each ({Source(gear)})"), "about 5 points a stage, estimate: it rises with load");
        return eta;
    }

    /// <summary>How far the efficiency that a table gives may be off, and whether that is stated; of one estimated by its stages a few points each.</summary>
    public static (double HalfWidth, bool IsStated)? Doubt(Section s) => s.Doubt("gear_efficiency") ?? (s.Has("gear_stages") ? (PointsPerStage * s.Known("gear_stages"), true) : null);

    private static string Words(GearKind kind) => kind switch { GearKind.Spur => "spur", GearKind.Planetary => "planetary", _ => "worm" };

    private static string Source(GearKind kind) => kind switch
    {
        GearKind.Spur => "10 % loss per engagement, Machine Design 2002",
        GearKind.Planetary => "usual of small boxes, a maker's page",
        _ => "common practice, no source",
    };
}
