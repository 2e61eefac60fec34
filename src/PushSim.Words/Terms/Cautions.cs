namespace PushSim.Words.Terms;

/// <summary>Short cautions, once per answer.</summary>
public static class Cautions
{
    /// <summary>Of predictions.</summary>
    public const string OfPredictions =
        "Predictions are estimates. A pull or shove test stores energy: keep clear of taut tethers, wheels off the floor until ready. "
        + "Lithium batteries and stalled motors burn: charge and stop as their makers say. Weapons removed or locked. "
        + "Follow the event's and local rules.";

    /// <summary>In one line of a terminal, wherever something pulls or heats.</summary>
    public const string Short = "Mind: taut tethers, stalled motors and lithium packs harm; lock weapons.";

    /// <summary>Of fits.</summary>
    public const string OfFits =
        "A fit is an estimate for this floor, dust and load. A pull test stores energy: keep clear of taut tethers, wheels off the floor until ready. "
        + "Stalled motors and lithium batteries burn: keep pulls short. Weapons removed or locked.";
}
