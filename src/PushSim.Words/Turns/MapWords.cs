using PushSim.Analysis.Turning;

namespace PushSim.Words.Turns;

/// <summary>A stability map in words.</summary>
public static class MapWords
{
    /// <summary>How much of it chatters, and how far simulated points agree.</summary>
    /// <param name="map">The map.</param>
    public static string Of(StabilityMap map)
    {
        int all = map.Found.Count();
        (int agree, int made) = map.Agreement;
        string Share(ChatterKind kind) => Text($"{100.0 * map.Found.Count(p => p.Chatter == kind) / all:0} %");
        string cut = map.LeftOut == 0 ? "" : Text($"; {map.LeftOut} points are left out, which would take too much work: --closer takes the time");
        return all == 0
            ? "map: no steady turn was found anywhere in it" + cut
            : $"map: {Share(ChatterKind.Buzzes)} of it chatters, {Share(ChatterKind.Close)} is close to it; simulated points agree in {agree} of {made}{cut}";
    }
}
