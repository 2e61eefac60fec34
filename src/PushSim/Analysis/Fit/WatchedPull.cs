using PushSim.Surroundings;

namespace PushSim.Analysis.Fit;

/// <summary>A pull as it was found while the cell was listened to.</summary>
/// <param name="Trace">The slack before it, the pull, the slack after it.</param>
/// <param name="Pull">Its parts and forces; null where there is none.</param>
/// <param name="Flaw">Why it is to be done again.</param>
/// <param name="Share">What the flaw amounts to, as a share of the force: the change while it slides [1]; NaN where nothing does.</param>
/// <param name="ZeroMoved">Change of the slack reading from before it to after it [N]; NaN where one of them was not seen.</param>
public sealed record WatchedPull(ForceTrace Trace, FoundPull? Pull, PullFlaw Flaw, double Share, double ZeroMoved)
{
    /// <summary>Greatest force of the stretch, without tare where there is no pull [N].</summary>
    public double Greatest => Pull?.HighestReading ?? Trace.Force.DefaultIfEmpty(0.0).Max();

    /// <summary>Greatest force of a good pull whose peak stands out [N]; null of others.</summary>
    public double? Peak => Flaw == PullFlaw.None && Pull is { Quality: not BreakawayQuality.NoPeak } found ? found.HighestReading : null;
}
