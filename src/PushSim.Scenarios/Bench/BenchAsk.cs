namespace PushSim.Scenarios.Bench;

/// <summary>What a bench waits for.</summary>
public enum BenchAsk
{
    /// <summary>For lines that it understands.</summary>
    Lines,

    /// <summary>For a quiet second with nothing on the cell.</summary>
    Slack,

    /// <summary>For the known mass.</summary>
    PutOn,

    /// <summary>For its being taken off again.</summary>
    TakeOff,

    /// <summary>For pulls.</summary>
    Pulls,
}
