namespace PushSim.Scenarios.Bench;

/// <summary>What a bench waits for, in words.</summary>
public static class BenchAskWords
{
    /// <summary>"ready: pull".</summary>
    /// <param name="ask">What it waits for.</param>
    /// <param name="known">The known mass in words.</param>
    public static string Of(BenchAsk ask, string known = "the known mass") => ask switch
    {
        BenchAsk.Slack => "waiting for a quiet second to tare",
        BenchAsk.PutOn => $"put {known} on the cell",
        BenchAsk.TakeOff => "take it off again",
        BenchAsk.Pulls => "ready: pull",
        _ => "waiting for lines",
    };
}
