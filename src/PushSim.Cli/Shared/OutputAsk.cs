namespace PushSim.Cli.Shared;

/// <summary>For which files a command opens its folder.</summary>
/// <param name="Kind">Which answer they are; a run shown again is a run.</param>
/// <param name="Name">Name of the folder in pushsim-out where none is given.</param>
/// <param name="Sources">The files that were asked about: the same ones always have the same folder.</param>
/// <param name="Error">Where waits and kept files are told.</param>
/// <param name="Cancel">Ends a wait.</param>
internal sealed record OutputAsk(string Kind, string Name, IReadOnlyList<string> Sources, TextWriter Error, CancellationToken Cancel)
{
    /// <summary>Which piece of the work shares the folder with other processes; null: none does.</summary>
    public string? Piece { get; init; }

    /// <summary>Whether it is only looked into: nothing is made, and nobody waited for.</summary>
    public bool IsSeen { get; init; }
}
