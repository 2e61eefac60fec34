namespace PushSim.Words.Runs;

/// <summary>Words for the marks of a plot.</summary>
public static class RecordWords
{
    /// <summary>What a mark of a plot is.</summary>
    public static string Mark(MarkKind kind) => kind switch
    {
        MarkKind.Near => "90 % of top speed",
        MarkKind.TopSpeed => "top speed",
        MarkKind.Touch => "first touch",
        MarkKind.Command => "command",
        MarkKind.Standstill => "standstill",
        MarkKind.Breakaway => "breakaway",
        MarkKind.Jerk => "jerk",
        MarkKind.Settled => "settled",
        _ => "plateau",
    };
}
