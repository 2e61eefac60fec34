namespace PushSim.Cli.Tests.Faults;

/// <summary>What happens at an act on the disk.</summary>
public enum FaultKind
{
    /// <summary>The act fails, once.</summary>
    Fails,

    /// <summary>The disk is full from here on: nothing is made or written any more, but renamed and removed.</summary>
    Full,

    /// <summary>Half of the bytes arrive, then the act fails.</summary>
    Short,

    /// <summary>The process ends here: nothing more happens.</summary>
    Killed,

    /// <summary>Somebody puts a link to a precious file or folder where the act will be.</summary>
    Link,

    /// <summary>Somebody puts a pipe there.</summary>
    Pipe,

    /// <summary>The user changes a result or adds a file.</summary>
    User,

    /// <summary>A second command on the same folder begins and ends here.</summary>
    Second,
}
