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
        return all == 0
            ? "map: no steady turn was found anywhere in it"
            : Text($"map: {100.0 * map.Found.Count(p => p.Growth > 0.0) / all:0} % of it chatters by itself; simulated points agree in {agree} of {made}");
    }
}
