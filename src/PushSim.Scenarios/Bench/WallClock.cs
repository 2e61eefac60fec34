namespace PushSim.Scenarios.Bench;

/// <summary>The time of day, by which a bench dates its log and its readings. No result of the engine knows it.</summary>
public static class WallClock
{
    /// <summary>Now, local time.</summary>
    public static DateTime Now => DateTime.Now;
}
