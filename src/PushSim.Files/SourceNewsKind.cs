namespace PushSim.Files;

/// <summary>What happened to a source.</summary>
public enum SourceNewsKind
{
    /// <summary>Bytes came.</summary>
    Bytes,

    /// <summary>It is open.</summary>
    Plugged,

    /// <summary>It is gone, and waited for.</summary>
    Unplugged,

    /// <summary>It could not be opened at the start.</summary>
    Refused,

    /// <summary>Nothing more comes.</summary>
    Ended,
}
