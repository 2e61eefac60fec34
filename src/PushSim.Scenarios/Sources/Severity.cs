namespace PushSim.Scenarios.Sources;

/// <summary>How bad a complaint about a file is.</summary>
public enum Severity
{
    /// <summary>The file cannot be used.</summary>
    Error,

    /// <summary>The file can be used, but something in it is likely not meant.</summary>
    Warning,
}
